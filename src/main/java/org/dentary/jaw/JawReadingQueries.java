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
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.Certainty;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.KeyClass;

/** Reads jaw readings and designations. */
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
            Boolean countsAlone,
            Boolean drawn,
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
                   contradictions, needs_second_reader, counts_alone, drawn, blind, side, jaw_state, whereabouts, note, rule_set_version, received_by,
                   received_at
              from jaw_reading
            """;
    private static final String OF_KIT = COLUMNS + " where kit = :kit order by received_at, id";
    private static final String BY_ID = COLUMNS + " where id = :id";
    private static final String DESIGNATIONS = """
            select kit, cast(reading as text), age_class, reason, by_actor, at from designated_age where kit = :kit order by id
            """;
    private static final String PRACTICED = """
            select count(*) from practice_round
             where person = :person and rule_set_version = :rules and finished_at is not null and jaws >= :jaws
               and right_answers >= :share * jaws
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

    boolean hasRead(String kit, String examiner) {
        return ((Number) entities.createNativeQuery(READ_BY)
                                .setParameter("kit", kit)
                                .setParameter("examiner", examiner)
                                .getSingleResult())
                        .intValue()
                > 0;
    }

    /**
     * Whether the person has finished a round of practice under these rules with such a score.
     *
     * @param jaws fewest jaws of the round
     * @param share least share of them classed rightly, in [0, 1]
     */
    boolean hasPracticed(String person, String rules, int jaws, BigDecimal share) {
        return ((Number) entities.createNativeQuery(PRACTICED)
                                .setParameter("person", person)
                                .setParameter("rules", rules)
                                .setParameter("jaws", jaws)
                                .setParameter("share", share)
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
                    row.countsAlone(),
                    row.drawn(),
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
