package org.dentary.jaw;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.UUID;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.key.Severity;

/** Appends readings and designations; neither is ever changed. */
@ApplicationScoped
class JawReadingWrites {
    private static final String READING = """
            insert into jaw_reading (id, kit, read_at, examiner, method, observation, key_class, age_class, certainty, disputed,
                   contradictions, needs_second_reader, counts_alone, drawn, blind, side, jaw_state, whereabouts, note, rule_set_version, received_by,
                   received_at)
            values (:id, :kit, :readAt, :examiner, :method, :observation, cast(:keyClass as text), :ageClass, :certainty,
                   :disputed, :contradictions, :second, :alone, :drawn, :blind, cast(:side as text), cast(:state as text),
                   cast(:whereabouts as text), cast(:note as text), :rules, :actor, :now)
            """;
    private static final String DESIGNATION = """
            insert into designated_age (kit, reading, age_class, reason, by_actor, at)
            values (:kit, cast(:reading as uuid), :ageClass, :reason, :actor, :now)
            """;

    /**
     * On what terms a reading was given.
     *
     * @param blind without sight of an earlier one
     * @param drawn the jaw was drawn by lot for a second reading, with this one
     * @param countsAlone the plan lets this person's class stand without a second reader
     */
    record Terms(boolean blind, boolean drawn, boolean countsAlone) {}

    private final EntityManager entities;
    private final ObjectMapper json;

    JawReadingWrites(EntityManager entities, ObjectMapper json) {
        this.entities = entities;
        this.json = json;
    }

    void append(String kit, ReadJaw given, String examiner, JawAnswer answer, Terms terms, String actor, Instant now) {
        boolean refused =
                answer.contradictions().stream().anyMatch(contradiction -> contradiction.severity() == Severity.REFUSE);
        entities.createNativeQuery(READING)
                .setParameter("id", given.id())
                .setParameter("kit", kit)
                .setParameter("readAt", given.readAt().toInstant())
                .setParameter("examiner", examiner)
                .setParameter("method", given.methodOrDefault().name())
                .setParameter("observation", text(given))
                .setParameter(
                        "keyClass",
                        answer.keyClass() == null ? null : answer.keyClass().name())
                .setParameter("ageClass", answer.ageClass().name())
                .setParameter("certainty", answer.certainty().name())
                .setParameter("disputed", refused)
                .setParameter("contradictions", text(answer.contradictions()))
                .setParameter("second", answer.needsSecondReader() || !terms.countsAlone())
                .setParameter("alone", terms.countsAlone())
                .setParameter("drawn", terms.drawn())
                .setParameter("blind", terms.blind())
                .setParameter("side", name(given.side()))
                .setParameter("state", name(given.jawState()))
                .setParameter("whereabouts", name(given.whereabouts()))
                .setParameter("note", given.note())
                .setParameter("rules", JawKey.RULE_SET_VERSION)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }

    void designate(String kit, UUID reading, AgeClass ageClass, String reason, String actor, Instant now) {
        entities.createNativeQuery(DESIGNATION)
                .setParameter("kit", kit)
                .setParameter("reading", reading == null ? null : reading.toString())
                .setParameter("ageClass", ageClass.name())
                .setParameter("reason", reason)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }

    private static String name(Enum<?> value) {
        return value == null ? null : value.name();
    }

    private String text(Object value) {
        try {
            return json.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a reading is plain values and can be written", e);
        }
    }
}
