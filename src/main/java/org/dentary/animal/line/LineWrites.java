package org.dentary.animal.line;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.List;

/**
 * Set-based writes of the line list. A revision re-copies the animal's facts, lays the change over the open row, and only
 * where the two differ closes that row and opens its successor, in one statement.
 */
@ApplicationScoped
class LineWrites {
    /**
     * What is to become of one kit's lines; a null leaves that column as it is.
     *
     * @param disease null: every disease
     */
    record Change(
            String kit,
            String disease,
            String ageClass,
            Boolean ageDisputed,
            Boolean hasSpecimen,
            String derivedOutcome,
            String outcome,
            String footnotes) {}

    /** Waits for whoever else is revising these animals, each with every kit that is the same animal. */
    private static final String HOLD = """
            select kit from animal a
             where coalesce(a.same_as, a.kit) in (select counted from animal_kit where kit = any(:kits))
             order by kit for no key update
            """;

    /** Without it two revisions of one line could lose one. */
    private static final String LOCK_LISTED = """
            select kit from animal a
             where kit = any(:kits) and exists (select 1 from line l where l.kit = a.kit and l.closed_at is null)
             order by kit for no key update
            """;

    private static final String LISTED =
            "select exists (select 1 from line where kit = any(:kits) and closed_at is null)";

    private static final String EXCLUSION = """
            case when a.entered_in_error then 'ENTERED_IN_ERROR' when a.same_as is not null then 'DUPLICATE'
                 when a.not_attributable then 'NOT_ATTRIBUTABLE' else '' end
            """;

    private static final String OPEN = """
            insert into line (kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed, unit,
                   region, station, died_on, mortality_source, collection_route, clinical_signs, sampling_basis,
                   has_specimen, derived_outcome, outcome, footnotes, exclusion, cause, opened_at, jaw_status, jaw_reason)
            select a.kit, d.code, a.season, a.species, a.origin, a.sex, a.sex_evidence, n.age_class, n.age_disputed, a.unit,
                   u.region, a.station, a.died_on, a.mortality_source, a.collection_route, a.clinical_signs,
                   a.sampling_basis, n.has_specimen, case when n.has_specimen then 'PENDING' else 'NOT_TESTED' end,
                   case when n.has_specimen then 'PENDING' else 'NOT_TESTED' end, '', """ + EXCLUSION + """
                   , :cause, :now, a.jaw_status, coalesce(a.jaw_reason, '')
              from unnest(cast(:kits as text[]), cast(:ages as text[]), cast(:disputed as boolean[]),
                          cast(:specimens as boolean[])) as n(kit, age_class, age_disputed, has_specimen)
              join animal a on a.kit = n.kit
             cross join disease d
              left join management_unit u on u.code = a.unit
                on conflict (kit, disease) where closed_at is null do nothing
            """;

    private static final String REVISE = """
            with change as (
              select * from unnest(cast(:kits as text[]), cast(:diseases as text[]), cast(:ages as text[]),
                     cast(:disputed as boolean[]), cast(:specimens as boolean[]), cast(:derived as text[]),
                     cast(:outcomes as text[]), cast(:footnotes as text[]))
                  as t(kit, disease, age_class, age_disputed, has_specimen, derived_outcome, outcome, footnotes)),
            wanted as (
              select l.id, l.kit, l.disease, a.season, a.species, a.origin, a.sex, a.sex_evidence,
                     coalesce(c.age_class, l.age_class) as age_class,
                     coalesce(c.age_disputed, l.age_disputed) as age_disputed,
                     a.unit, u.region, a.station, a.died_on, a.mortality_source, a.collection_route, a.clinical_signs,
                     a.sampling_basis, coalesce(c.has_specimen, l.has_specimen) as has_specimen,
                     case when c.derived_outcome is not null then c.derived_outcome
                          when c.has_specimen and not l.has_specimen and l.derived_outcome = 'NOT_TESTED' then 'PENDING'
                          when not c.has_specimen and l.has_specimen and l.derived_outcome = 'PENDING' then 'NOT_TESTED'
                          else l.derived_outcome end as derived_outcome,
                     case when c.outcome is not null then c.outcome
                          when c.has_specimen and not l.has_specimen and l.outcome = 'NOT_TESTED' then 'PENDING'
                          when not c.has_specimen and l.has_specimen and l.outcome = 'PENDING' then 'NOT_TESTED'
                          else l.outcome end as outcome,
                     coalesce(c.footnotes, l.footnotes) as footnotes, """ + EXCLUSION + """
                     as exclusion, a.jaw_status, coalesce(a.jaw_reason, '') as jaw_reason
                from change c
                join line l on l.kit = c.kit and l.closed_at is null and (c.disease is null or c.disease = l.disease)
                join animal a on a.kit = l.kit
                left join management_unit u on u.code = a.unit),
            differing as (
              select w.* from wanted w join line l on l.id = w.id
               where (w.season, w.species, w.origin, w.sex, w.sex_evidence, w.age_class, w.age_disputed, w.unit, w.region,
                      w.station, w.died_on, w.mortality_source, w.collection_route, w.clinical_signs, w.sampling_basis,
                      w.has_specimen, w.derived_outcome, w.outcome, w.footnotes, w.exclusion, w.jaw_status, w.jaw_reason)
                  is distinct from
                     (l.season, l.species, l.origin, l.sex, l.sex_evidence, l.age_class, l.age_disputed, l.unit, l.region,
                      l.station, l.died_on, l.mortality_source, l.collection_route, l.clinical_signs, l.sampling_basis,
                      l.has_specimen, l.derived_outcome, l.outcome, l.footnotes, l.exclusion, l.jaw_status,
                      l.jaw_reason)),
            closed as (
              update line set closed_at = :now from differing d where line.id = d.id and line.closed_at is null
              returning d.*)
            insert into line (kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed, unit,
                   region, station, died_on, mortality_source, collection_route, clinical_signs, sampling_basis,
                   has_specimen, derived_outcome, outcome, footnotes, exclusion, cause, opened_at, jaw_status, jaw_reason)
            select kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed, unit, region, station,
                   died_on, mortality_source, collection_route, clinical_signs, sampling_basis, has_specimen,
                   derived_outcome, outcome, footnotes, exclusion, :cause, :now, jaw_status, jaw_reason
              from closed
            """;

    private static final String SETTLE = """
            update animal a set not_attributable = s.not_attributable
              from animal_standing s
             where s.kit = a.kit and a.kit = any(:kits) and a.not_attributable <> s.not_attributable
            """;

    private static final String WITH_TISSUE = """
            select kit from animal_standing where kit = any(:kits) and has_specimen
            """;

    private final EntityManager entities;

    LineWrites(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * Holds the animals, each with every kit that is the same animal.
     *
     * @return all of those kits, sorted; none is linked or unlinked until the transaction ends
     */
    List<String> hold(List<String> kits) {
        List<String> held = List.of();
        List<String> found = held(kits);
        // Who was waited for may have linked one more, or unlinked one.
        while (!found.equals(held)) {
            held = found;
            found = held(kits);
        }
        return found;
    }

    @SuppressWarnings("unchecked")
    private List<String> held(List<String> kits) {
        return entities.createNativeQuery(HOLD)
                .setParameter("kits", kits.toArray(String[]::new))
                .getResultList();
    }

    /** Locks those of the animals that have lines; false where none has, as while an animal is being taken in. */
    boolean lockListed(List<String> kits) {
        return !entities.createNativeQuery(LOCK_LISTED)
                .setParameter("kits", kits.toArray(String[]::new))
                .getResultList()
                .isEmpty();
    }

    /** Whether any of the animals has lines. */
    boolean areListed(Collection<String> kits) {
        return (Boolean) entities.createNativeQuery(LISTED)
                .setParameter("kits", kits.toArray(String[]::new))
                .getSingleResult();
    }

    int open(List<LineService.NewLine> lines, String cause, Instant now) {
        return entities.createNativeQuery(OPEN)
                .setParameter(
                        "kits", lines.stream().map(LineService.NewLine::kit).toArray(String[]::new))
                .setParameter(
                        "ages",
                        lines.stream().map(LineService.NewLine::ageClass).toArray(String[]::new))
                .setParameter(
                        "disputed",
                        lines.stream().map(LineService.NewLine::ageDisputed).toArray(Boolean[]::new))
                .setParameter(
                        "specimens",
                        lines.stream().map(LineService.NewLine::hasSpecimen).toArray(Boolean[]::new))
                .setParameter("cause", cause)
                .setParameter("now", now)
                .executeUpdate();
    }

    int revise(List<Change> changes, String cause, Instant now) {
        return entities.createNativeQuery(REVISE)
                .setParameter("kits", changes.stream().map(Change::kit).toArray(String[]::new))
                .setParameter("diseases", changes.stream().map(Change::disease).toArray(String[]::new))
                .setParameter("ages", changes.stream().map(Change::ageClass).toArray(String[]::new))
                .setParameter(
                        "disputed", changes.stream().map(Change::ageDisputed).toArray(Boolean[]::new))
                .setParameter(
                        "specimens", changes.stream().map(Change::hasSpecimen).toArray(Boolean[]::new))
                .setParameter(
                        "derived", changes.stream().map(Change::derivedOutcome).toArray(String[]::new))
                .setParameter("outcomes", changes.stream().map(Change::outcome).toArray(String[]::new))
                .setParameter(
                        "footnotes", changes.stream().map(Change::footnotes).toArray(String[]::new))
                .setParameter("cause", cause)
                .setParameter("now", now)
                .executeUpdate();
    }

    /** Marks which of the animals are counted nowhere, as their labels and links say. */
    void settle(List<String> kits) {
        entities.createNativeQuery(SETTLE)
                .setParameter("kits", kits.toArray(String[]::new))
                .executeUpdate();
    }

    /** Those of the kits whose animal has tissue, under whichever kit. */
    @SuppressWarnings("unchecked")
    List<String> withTissue(List<String> kits) {
        return entities.createNativeQuery(WITH_TISSUE)
                .setParameter("kits", kits.toArray(String[]::new))
                .getResultList();
    }
}
