package org.dentary.jaw.queue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;

/** Reads what waits. */
@ApplicationScoped
class JawQueueQueries {
    /** An animal whose age is designated waits for nothing; referred, questioned and drawn jaws wait for a second reader. */
    private static final String QUEUE = """
            with said as (
              select r.kit,
                     count(distinct r.examiner) filter (where r.method like 'TOOTH%') as readers,
                     count(distinct r.age_class) filter (where r.age_class <> 'UNKNOWN'
                           and r.method not in ('BODY_FEATURES', 'REPORTED_BY_HUNTER')) as classes,
                     bool_or(r.disputed) as disputed,
                     bool_or(r.contradictions <> '[]' and not r.disputed) as questioned,
                     bool_or(r.needs_second_reader) as asked, bool_or(r.drawn) as drawn,
                     min(r.received_at) as first_at, max(r.received_at) as last_at
                from jaw_reading r group by r.kit),
            task as (
              select a.kit, a.season, a.station, a.died_on, a.jaw_status, coalesce(s.readers, 0) as readers,
                     case when s.kit is null or s.readers = 0 and s.classes < 2
                               then case when a.jaw_status <> 'NOT_EXAMINED' then 'READ' end
                          when s.classes > 1 or s.readers > 1 and s.classes = 0 then 'DECIDE'
                          when s.readers = 1 and (s.disputed or s.questioned or s.asked or s.drawn) then 'READ_AGAIN'
                     end as task,
                     case when s.kit is null then a.recorded_at when s.classes > 1 or s.readers > 1 then s.last_at
                          else s.first_at end as since,
                     concat_ws(' ', case when s.disputed then 'CONTRADICTS_ITSELF' end,
                               case when s.questioned then 'QUESTIONED' end, case when s.asked then 'SECOND_READER_ASKED' end,
                               case when s.classes > 1 then 'READERS_DIFFER' end, case when s.drawn then 'DRAWN' end) as why
                from animal a
                left join said s on s.kit = a.kit
               where not a.entered_in_error and a.same_as is null
                 and not exists (select 1 from designated_age d where d.kit = a.kit)
                 and (cast(:station as text) is null or a.station = :station)
                 and (cast(:kit as text) is null or a.kit = :kit))
            select kit, task, since, season, station, died_on, jaw_status, cast(readers as int), why,
                   (select cast(p.id as text) from jaw_photo p where p.kit = task.kit and p.erased_at is null
                     order by p.added_at desc, p.id limit 1) as photo
              from task where task is not null and (cast(:task as text) is null or task = :task)
             order by since, kit limit :limit
            """;

    private final EntityManager entities;

    JawQueueQueries(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * Jaws with something to do, longest waiting first.
     *
     * @param station null: every station
     * @param task null: every task
     * @param kit null: every kit
     */
    @SuppressWarnings("unchecked")
    List<JawTask> queue(String station, String task, String kit, int limit) {
        return entities.createNativeQuery(QUEUE, JawTask.class)
                .setParameter("station", station)
                .setParameter("task", task)
                .setParameter("kit", kit)
                .setParameter("limit", limit)
                .getResultList();
    }
}
