package org.dentary.specimen;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;

/** Writes specimens, however many, by one statement each for the rows and for how they are kept. */
@ApplicationScoped
class SpecimenWrites {
    private static final String INSERT = """
            insert into specimen (code, parent, tissue, tissue_text, side, condition, preservation, collected_at, collected_by,
                   archived, recorded_by, recorded_at)
            select t.code, cast(:parent as text), t.tissue, t.tissue_text, t.side, t.condition, t.preservation, t.collected_at,
                   t.collected_by, t.archived, :actor, :now
              from unnest(cast(:codes as text[]), cast(:tissues as text[]), cast(:texts as text[]), cast(:sides as text[]),
                          cast(:conditions as text[]), cast(:preservations as text[]), cast(:collected as timestamptz[]),
                          cast(:collectors as text[]), cast(:archived as boolean[]))
                   as t(code, tissue, tissue_text, side, condition, preservation, collected_at, collected_by, archived)
            """;
    private static final String PRESERVE = """
            insert into specimen_preservation (code, preservation, since, by_actor, reason)
            select t.code, t.preservation, t.since, :actor, cast(:reason as text)
              from unnest(cast(:codes as text[]), cast(:preservations as text[]), cast(:since as timestamptz[]))
                   as t(code, preservation, since)
            """;
    private static final String CORRECT = """
            update specimen set tissue = :tissue, tissue_text = cast(:text as text), side = :side, condition = :condition,
                   preservation = :preservation, collected_at = :collected, collected_by = :collector, archived = :archived,
                   version = version + 1
             where code = :code
            """;
    private static final String REASON = "select set_config('dentary.reason', :reason, true)";

    private final EntityManager entities;

    SpecimenWrites(EntityManager entities) {
        this.entities = entities;
    }

    void insert(List<TakeSpecimen> specimens, String parent, String actor, Instant now) {
        entities.createNativeQuery(INSERT)
                .setParameter("parent", parent)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .setParameter("codes", texts(specimens, TakeSpecimen::code))
                .setParameter("tissues", texts(specimens, s -> s.tissue().name()))
                .setParameter("texts", texts(specimens, TakeSpecimen::tissueText))
                .setParameter("sides", texts(specimens, s -> s.side().name()))
                .setParameter("conditions", texts(specimens, s -> s.condition().name()))
                .setParameter(
                        "preservations", texts(specimens, s -> s.preservation().name()))
                .setParameter(
                        "collected",
                        texts(specimens, s -> s.collectedAt().toInstant().toString()))
                .setParameter("collectors", texts(specimens, s -> s.collectedBy() == null ? actor : s.collectedBy()))
                .setParameter(
                        "archived",
                        specimens.stream().map(TakeSpecimen::archived).toArray(Boolean[]::new))
                .executeUpdate();
        preserve(specimens, actor, null);
    }

    void preserve(List<TakeSpecimen> specimens, String actor, String reason) {
        entities.createNativeQuery(PRESERVE)
                .setParameter("actor", actor)
                .setParameter("reason", reason)
                .setParameter("codes", texts(specimens, TakeSpecimen::code))
                .setParameter(
                        "preservations", texts(specimens, s -> s.preservation().name()))
                .setParameter(
                        "since",
                        texts(
                                specimens,
                                s -> (s.preservedAt() == null ? s.collectedAt() : s.preservedAt())
                                        .toInstant()
                                        .toString()))
                .executeUpdate();
    }

    void correct(TakeSpecimen specimen, String actor, String reason) {
        entities.createNativeQuery(REASON).setParameter("reason", reason).getSingleResult();
        entities.createNativeQuery(CORRECT)
                .setParameter("code", specimen.code())
                .setParameter("tissue", specimen.tissue().name())
                .setParameter("text", specimen.tissueText())
                .setParameter("side", specimen.side().name())
                .setParameter("condition", specimen.condition().name())
                .setParameter("preservation", specimen.preservation().name())
                .setParameter("collected", specimen.collectedAt().toInstant())
                .setParameter("collector", specimen.collectedBy() == null ? actor : specimen.collectedBy())
                .setParameter("archived", specimen.archived())
                .executeUpdate();
    }

    private static String[] texts(
            List<TakeSpecimen> specimens, java.util.function.Function<TakeSpecimen, String> text) {
        return specimens.stream().map(text).toArray(String[]::new);
    }
}
