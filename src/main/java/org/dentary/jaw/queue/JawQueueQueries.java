package org.dentary.jaw.queue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.List;
import java.util.Optional;

/** Reads what waits. */
@ApplicationScoped
class JawQueueQueries {
    /** An animal whose age is designated waits for nothing; referred, questioned and drawn jaws wait for a second reader. */
    private static final String TASKS = """
            with said as (
              select r.kit,
                     count(distinct r.examiner) filter (where r.method like 'TOOTH%%') as readers,
                     count(distinct r.age_class) filter (where r.age_class <> 'UNKNOWN'
                           and r.method not in ('BODY_FEATURES', 'REPORTED_BY_HUNTER')) as classes,
                     bool_or(r.disputed) as disputed,
                     bool_or(r.contradictions <> '[]' and not r.disputed) as questioned,
                     bool_or(r.needs_second_reader) as asked, bool_or(r.drawn) as drawn,
                     bool_or(r.needs_second_reader and r.certainty = 'PROBABLE' and r.contradictions = '[]') as probable,
                     (array_agg(r.whereabouts order by r.received_at desc)
                       filter (where r.whereabouts is not null))[1] as whereabouts,
                     min(r.received_at) as first_at, max(r.received_at) as last_at
                from jaw_reading r where %s group by r.kit),
            task as (
              select a.kit, a.season, a.station, a.died_on, a.jaw_status, s.whereabouts,
                     coalesce(s.readers, 0) as readers,
                     s.probable and not (s.disputed or s.questioned or s.drawn) as probable,
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
                 and %s)
            """;

    private static final String COLUMNS = """
            select kit, task, since, season, station, died_on, jaw_status, whereabouts, cast(readers as int), why,
                   (select cast(p.id as text) from jaw_photo p where p.kit = t.kit and p.erased_at is null
                     order by p.added_at desc, p.id limit 1) as photo
              from %s t where t.task is not null
            """;
    private static final String AT_STATION = "(cast(:station as text) is null or a.station = :station)";
    /** What waits longest of each task: jaws to decide are few and would stand behind thousands to be read. */
    private static final String QUEUE = TASKS.formatted("true", AT_STATION) + """
            , placed as (
              select x.*, row_number() over (partition by x.task order by x.since, x.kit) as place
                from task x where cast(:task as text) is null or x.task = :task)
            """ + COLUMNS.formatted("placed") + """
               and t.place <= coalesce(cast(:most as bigint), t.place) order by since, kit
            """;
    /** Asked with every story of an animal, so that it looks at that animal's readings alone. */
    private static final String OF_KIT = TASKS.formatted("r.kit = :kit", "a.kit = :kit") + COLUMNS.formatted("task");

    private static final String SIZES = TASKS.formatted("true", AT_STATION) + """
            select task, cast(count(*) as int), cast(count(*) filter (where probable) as int)
              from task where task is not null group by task order by task
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
     * @param most of each task
     */
    @SuppressWarnings("unchecked")
    List<JawTask> queue(String station, String task, int most) {
        return waiting(station, task, most).getResultList();
    }

    /** All of them, for a stream of {@link JawTask}s. */
    Query all(String station) {
        return waiting(station, null, null);
    }

    private Query waiting(String station, String task, Integer most) {
        return entities.createNativeQuery(QUEUE, JawTask.class)
                .setParameter("station", station)
                .setParameter("task", task)
                .setParameter("most", most);
    }

    /** What is to be done about this animal's jaw; empty where nothing is. */
    @SuppressWarnings("unchecked")
    Optional<JawTask> task(String kit) {
        return entities.createNativeQuery(OF_KIT, JawTask.class).setParameter("kit", kit).getResultList().stream()
                .findFirst();
    }

    /**
     * How many jaws wait for each task; a task for which none waits is left out.
     *
     * @param station null: every station
     */
    @SuppressWarnings("unchecked")
    List<QueueSize> sizes(String station) {
        return entities.createNativeQuery(SIZES, QueueSize.class)
                .setParameter("station", station)
                .getResultList();
    }
}
