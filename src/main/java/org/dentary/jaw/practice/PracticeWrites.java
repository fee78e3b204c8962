package org.dentary.jaw.practice;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** Writes rounds of practice and the reference panel. */
@ApplicationScoped
class PracticeWrites {
    /** A jaw put into a round. */
    record Put(String jaw, String kind, String rightClass) {}

    private static final String BEGIN = """
            insert into practice_round (id, person, season, rule_set_version, jaws, begun_at)
            values (:id, :person, cast(:season as text), :rules, :jaws, :now)
            """;
    private static final String PUT = """
            insert into practice_jaw (round, position, jaw, kind, right_class)
            select :round, u.position, u.jaw, u.kind, u.right_class
              from unnest(cast(:jaws as text[]), cast(:kinds as text[]), cast(:classes as text[]))
                   with ordinality as u(jaw, kind, right_class, position)
            """;
    private static final String ANSWER = """
            update practice_jaw set given_class = :given, given_at = :now
             where round = :round and position = :position and given_class is null
            """;
    private static final String FINISH = """
            update practice_round r set finished_at = :now, right_answers =
                   (select count(*) from practice_jaw j where j.round = r.id and j.given_class = j.right_class)
             where r.id = :round and r.finished_at is null
               and not exists (select 1 from practice_jaw j where j.round = r.id and j.given_class is null)
            """;
    private static final String LOCK = "select 1 from practice_round where id = :round for update";
    private static final String ADD = """
            insert into reference_jaw (id, kit, kind, age_class, observation, source, added_by, added_at)
            values (:id, :kit, :kind, :ageClass, cast(:observation as text), :source, :actor, :now)
            """;
    private static final String RETIRE = """
            update reference_jaw set retired_by = :actor, retired_at = :now, retired_reason = :reason
             where id = :id and retired_at is null
            """;

    private final EntityManager entities;

    PracticeWrites(EntityManager entities) {
        this.entities = entities;
    }

    void begin(UUID id, String person, String season, String rules, List<Put> jaws, Instant now) {
        entities.createNativeQuery(BEGIN)
                .setParameter("id", id)
                .setParameter("person", person)
                .setParameter("season", season)
                .setParameter("rules", rules)
                .setParameter("jaws", jaws.size())
                .setParameter("now", now)
                .executeUpdate();
        entities.createNativeQuery(PUT)
                .setParameter("round", id)
                .setParameter("jaws", jaws.stream().map(Put::jaw).toArray(String[]::new))
                .setParameter("kinds", jaws.stream().map(Put::kind).toArray(String[]::new))
                .setParameter("classes", jaws.stream().map(Put::rightClass).toArray(String[]::new))
                .executeUpdate();
    }

    /** Holds the round against a second answer at the same moment. */
    void lock(UUID round) {
        entities.createNativeQuery(LOCK).setParameter("round", round).getResultList();
    }

    /** Keeps the answer, and the score with the last one. */
    void answer(UUID round, int position, String given, Instant now) {
        entities.createNativeQuery(ANSWER)
                .setParameter("round", round)
                .setParameter("position", position)
                .setParameter("given", given)
                .setParameter("now", now)
                .executeUpdate();
        entities.createNativeQuery(FINISH)
                .setParameter("round", round)
                .setParameter("now", now)
                .executeUpdate();
    }

    void add(
            UUID id,
            String kit,
            String kind,
            String ageClass,
            String observation,
            String source,
            String actor,
            Instant now) {
        entities.createNativeQuery(ADD)
                .setParameter("id", id)
                .setParameter("kit", kit)
                .setParameter("kind", kind)
                .setParameter("ageClass", ageClass)
                .setParameter("observation", observation)
                .setParameter("source", source)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }

    void retire(UUID id, String reason, String actor, Instant now) {
        entities.createNativeQuery(RETIRE)
                .setParameter("id", id)
                .setParameter("reason", reason)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }
}
