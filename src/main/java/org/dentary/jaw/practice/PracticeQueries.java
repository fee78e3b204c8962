package org.dentary.jaw.practice;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads rounds of practice and the reference jaws. */
@ApplicationScoped
class PracticeQueries {
    /** A round's row. */
    record RoundRow(
            String id,
            String person,
            String season,
            String ruleSetVersion,
            Integer jaws,
            Integer answered,
            Integer rightAnswers,
            Instant begunAt,
            Instant finishedAt) {}

    /** A jaw of a round. */
    record JawRow(Integer position, String jaw, String kind, String rightClass, String givenClass) {}

    /** A jaw of the panel that may be put to a person, and how often it was. */
    record Candidate(String id, String kind, String ageClass, Integer asked) {}

    /** A reference jaw; {@code species} and {@code photos} are its animal's. */
    record ReferenceRow(
            String id,
            String kit,
            String kind,
            String ageClass,
            String observation,
            String source,
            String species,
            Integer photos,
            String addedBy,
            Instant addedAt,
            Instant retiredAt,
            String retiredReason) {}

    private static final String ROUND = """
            select cast(r.id as text), r.person, r.season, r.rule_set_version, r.jaws,
                   cast((select count(*) from practice_jaw j where j.round = r.id and j.given_class is not null) as int),
                   r.right_answers, r.begun_at, r.finished_at
              from practice_round r
            """;
    private static final String BY_ID = ROUND + " where r.id = :id";
    private static final String OF = ROUND + """
             where cast(:person as text) is null or r.person = :person order by r.begun_at desc, r.id limit :limit
            """;
    private static final String JAWS = """
            select position, jaw, kind, right_class, given_class from practice_jaw where round = :id order by position
            """;
    /** Not what the person read or put on the panel; only what still has a photo to look at. */
    private static final String CANDIDATES = """
            select cast(p.id as text), p.kind, p.age_class,
                   cast((select count(*) from practice_jaw j join practice_round r on r.id = j.round
                          where r.person = :person and j.jaw = cast(p.id as text)) as int)
              from reference_jaw p
             where p.retired_at is null and p.added_by <> :person
               and not exists (select 1 from jaw_reading x where x.kit = p.kit and x.examiner = :person)
               and exists (select 1 from jaw_photo f where f.kit = p.kit and f.erased_at is null)
             order by p.id
            """;

    private static final String ASKED = """
            select j.jaw, count(*) from practice_jaw j join practice_round r on r.id = j.round
             where r.person = :person and j.kind = 'DRAWN' group by j.jaw
            """;
    private static final String REFERENCE = """
            select cast(p.id as text), p.kit, p.kind, p.age_class, p.observation, p.source, a.species,
                   cast((select count(*) from jaw_photo f where f.kit = p.kit and f.erased_at is null) as int),
                   p.added_by, p.added_at, p.retired_at, p.retired_reason
              from reference_jaw p join animal a on a.kit = p.kit
            """;
    private static final String REFERENCES = REFERENCE + " order by p.retired_at nulls first, p.added_at desc, p.id";
    private static final String REFERENCE_BY_ID = REFERENCE + " where p.id = :id";
    private static final String REFERENCES_OF_ROUND = REFERENCE + """
             where cast(p.id as text) in (select jaw from practice_jaw where round = :id)
            """;

    private final EntityManager entities;

    PracticeQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    Optional<RoundRow> round(UUID id) {
        return entities.createNativeQuery(BY_ID, RoundRow.class).setParameter("id", id).getResultList().stream()
                .findFirst();
    }

    /**
     * Rounds, newest first.
     *
     * @param person null: everybody's
     */
    @SuppressWarnings("unchecked")
    List<RoundRow> rounds(String person, int limit) {
        return entities.createNativeQuery(OF, RoundRow.class)
                .setParameter("person", person)
                .setParameter("limit", limit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<JawRow> jaws(UUID round) {
        return entities.createNativeQuery(JAWS, JawRow.class)
                .setParameter("id", round)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Candidate> candidates(String person) {
        return entities.createNativeQuery(CANDIDATES, Candidate.class)
                .setParameter("person", person)
                .getResultList();
    }

    /** How often each drawn jaw was put to the person: name and count. */
    @SuppressWarnings("unchecked")
    List<Object[]> askedDrawn(String person) {
        return entities.createNativeQuery(ASKED).setParameter("person", person).getResultList();
    }

    /** The panel's reference jaws, those in use first, then the newest. */
    @SuppressWarnings("unchecked")
    List<ReferenceRow> references() {
        return entities.createNativeQuery(REFERENCES, ReferenceRow.class).getResultList();
    }

    @SuppressWarnings("unchecked")
    Optional<ReferenceRow> reference(UUID id) {
        return entities
                .createNativeQuery(REFERENCE_BY_ID, ReferenceRow.class)
                .setParameter("id", id)
                .getResultList()
                .stream()
                .findFirst();
    }

    @SuppressWarnings("unchecked")
    List<ReferenceRow> referencesOf(UUID round) {
        return entities.createNativeQuery(REFERENCES_OF_ROUND, ReferenceRow.class)
                .setParameter("id", round)
                .getResultList();
    }
}
