package org.dentary.jaw;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** Reads jaw readings, designations and the queue of jaws. */
@ApplicationScoped
class JawReadingQueries {
    /** A row of the table, codes as text. */
    record Row(
            String id,
            String kit,
            Instant readAt,
            String examiner,
            String method,
            String observation,
            String keyClass,
            String ageClass,
            String certainty,
            Boolean disputed,
            String contradictions,
            Boolean needsSecondReader,
            Boolean blind,
            String side,
            String jawState,
            String whereabouts,
            String note,
            String ruleSetVersion,
            String receivedBy,
            Instant receivedAt) {}

    /** A designation's row, its reading as text. */
    record DesignationRow(String kit, String reading, String ageClass, String reason, String byActor, Instant at) {}

    private static final String COLUMNS = """
            select cast(id as text), kit, read_at, examiner, method, observation, key_class, age_class, certainty, disputed,
                   contradictions, needs_second_reader, blind, side, jaw_state, whereabouts, note, rule_set_version, received_by,
                   received_at
              from jaw_reading
            """;
    private static final String OF_KIT = COLUMNS + " where kit = :kit order by received_at, id";
    private static final String BY_ID = COLUMNS + " where id = :id";
    private static final String DESIGNATIONS = """
            select kit, cast(reading as text), age_class, reason, by_actor, at from designated_age where kit = :kit order by id
            """;
    private static final String QUEUE = """
            with said as (
              select r.kit,
                     count(distinct r.examiner) filter (where r.method like 'TOOTH%') as readers,
                     count(distinct r.age_class) filter (where r.age_class <> 'UNKNOWN'
                           and r.method not in ('BODY_FEATURES', 'REPORTED_BY_HUNTER')) as classes,
                     bool_or(r.disputed) as disputed,
                     bool_or(r.contradictions <> '[]' and not r.disputed) as questioned,
                     bool_or(r.needs_second_reader) as asked,
                     min(r.received_at) as first_at, max(r.received_at) as last_at
                from jaw_reading r group by r.kit),
            task as (
              select a.kit, a.season, a.station, a.died_on, a.jaw_status, coalesce(s.readers, 0) as readers,
                     case when s.kit is null or s.readers = 0 and s.classes < 2
                               then case when a.jaw_status <> 'NOT_EXAMINED' then 'READ' end
                          when s.classes > 1 or s.readers > 1 and s.classes = 0 then 'DECIDE'
                          when s.readers = 1 and (s.disputed or s.questioned or s.asked or drawn.so) then 'READ_AGAIN'
                     end as task,
                     case when s.kit is null then a.recorded_at when s.classes > 1 or s.readers > 1 then s.last_at
                          else s.first_at end as since,
                     concat_ws(' ', case when s.disputed then 'CONTRADICTS_ITSELF' end,
                               case when s.questioned then 'QUESTIONED' end, case when s.asked then 'SECOND_READER_ASKED' end,
                               case when s.classes > 1 then 'READERS_DIFFER' end, case when drawn.so then 'DRAWN' end) as why
                from animal a
                left join said s on s.kit = a.kit
                cross join lateral (
                  select cast(cast('x' || substr(md5(a.kit), 1, 7) as bit(28)) as int) < 268435456 * cast(:share as float8)
                         as so) drawn
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
    private static final String READ_BY = "select count(*) from jaw_reading where kit = :kit and examiner = :examiner";

    private final EntityManager entities;
    private final ObjectMapper json;

    JawReadingQueries(EntityManager entities, ObjectMapper json) {
        this.entities = entities;
        this.json = json;
    }

    @SuppressWarnings("unchecked")
    List<JawReadingView> ofKit(String kit) {
        List<Row> rows = entities.createNativeQuery(OF_KIT, Row.class)
                .setParameter("kit", kit)
                .getResultList();
        return rows.stream().map(this::view).toList();
    }

    @SuppressWarnings("unchecked")
    List<JawReadingView> byId(UUID id) {
        List<Row> rows = entities.createNativeQuery(BY_ID, Row.class)
                .setParameter("id", id)
                .getResultList();
        return rows.stream().map(this::view).toList();
    }

    @SuppressWarnings("unchecked")
    List<DesignationView> designations(String kit) {
        List<DesignationRow> rows = entities.createNativeQuery(DESIGNATIONS, DesignationRow.class)
                .setParameter("kit", kit)
                .getResultList();
        return rows.stream()
                .map(row -> new DesignationView(
                        row.kit(),
                        row.reading() == null ? null : UUID.fromString(row.reading()),
                        row.ageClass(),
                        row.reason(),
                        row.byActor(),
                        row.at()))
                .toList();
    }

    /**
     * Jaws with something to do, longest waiting first.
     *
     * @param station null: every station
     * @param task null: every task
     * @param kit null: every kit
     * @param share share of jaws drawn for a second reading, in [0, 1]
     */
    @SuppressWarnings("unchecked")
    List<JawTask> queue(String station, String task, String kit, BigDecimal share, int limit) {
        return entities.createNativeQuery(QUEUE, JawTask.class)
                .setParameter("station", station)
                .setParameter("task", task)
                .setParameter("kit", kit)
                .setParameter("share", share.doubleValue())
                .setParameter("limit", limit)
                .getResultList();
    }

    boolean hasRead(String kit, String examiner) {
        return ((Number) entities.createNativeQuery(READ_BY)
                                .setParameter("kit", kit)
                                .setParameter("examiner", examiner)
                                .getSingleResult())
                        .intValue()
                > 0;
    }

    private JawReadingView view(Row row) {
        try {
            return new JawReadingView(
                    UUID.fromString(row.id()),
                    row.kit(),
                    row.readAt(),
                    row.examiner(),
                    AgeingMethod.valueOf(row.method()),
                    json.readTree(row.observation()),
                    row.keyClass() == null ? null : KeyClass.valueOf(row.keyClass()),
                    AgeClass.valueOf(row.ageClass()),
                    Certainty.valueOf(row.certainty()),
                    row.disputed(),
                    json.readValue(row.contradictions(), new TypeReference<List<JawAnswer.Contradiction>>() {}),
                    row.needsSecondReader(),
                    row.blind(),
                    row.side(),
                    row.jawState(),
                    row.whereabouts(),
                    row.note(),
                    row.ruleSetVersion(),
                    row.receivedBy(),
                    row.receivedAt());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a reading is not what was written", e);
        }
    }
}
