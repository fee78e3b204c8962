package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.dentary.SeasonFixture;

/** Puts lines into a season of their own, as the animal room would, with as many animals as a test asks for. */
@ApplicationScoped
public class LineFixture {
    private static final AtomicInteger SEASONS = new AtomicInteger(1601);
    private static final AtomicInteger KITS = new AtomicInteger();

    private final EntityManager entities;
    private final SeasonFixture seasons;

    LineFixture(EntityManager entities, SeasonFixture seasons) {
        this.entities = entities;
        this.seasons = seasons;
    }

    /** One line to be; every field has an everyday default. */
    public record ALine(
            String ageClass,
            String sex,
            String unit,
            String origin,
            String source,
            String signs,
            String basis,
            boolean hasSpecimen,
            String derived,
            String outcome,
            String exclusion) {
        public static ALine of(String ageClass, String sex, String outcome) {
            return new ALine(
                    ageClass,
                    sex,
                    SeasonFixture.UNIT,
                    "WILD",
                    "HUNTER_HARVEST",
                    "NONE_SEEN",
                    "VOLUNTARY",
                    true,
                    outcome,
                    outcome,
                    "");
        }

        public ALine from(String source) {
            return new ALine(
                    ageClass, sex, unit, origin, source, signs, basis, hasSpecimen, derived, outcome, exclusion);
        }

        public ALine in(String unit) {
            return new ALine(
                    ageClass, sex, unit, origin, source, signs, basis, hasSpecimen, derived, outcome, exclusion);
        }

        public ALine without() {
            return new ALine(
                    ageClass, sex, unit, origin, source, signs, basis, false, "NOT_TESTED", "NOT_TESTED", exclusion);
        }

        public ALine excluded(String exclusion) {
            return new ALine(
                    ageClass, sex, unit, origin, source, signs, basis, hasSpecimen, derived, outcome, exclusion);
        }

        public ALine derived(String derived) {
            return new ALine(
                    ageClass, sex, unit, origin, source, signs, basis, hasSpecimen, derived, outcome, exclusion);
        }
    }

    /** A fresh season long before every other test's; returns its code. */
    @Transactional
    public String season() {
        seasons.ensure();
        int year = SEASONS.getAndIncrement();
        String code = "P" + year;
        entities.createNativeQuery(
                        "insert into season (code, name, starts_on, ends_on, state) values (:code, :code, :from, :to, 'OPEN')"
                                + " on conflict do nothing")
                .setParameter("code", code)
                .setParameter("from", LocalDate.of(year, 1, 1))
                .setParameter("to", LocalDate.of(year, 12, 31))
                .executeUpdate();
        entities.createNativeQuery(
                        "insert into kit_block (id, season, station, parts, kits, issued_by, issued_at) values (:id, :season, :station, array['JAW'], 1, 'test', now())")
                .setParameter("id", UUID.randomUUID())
                .setParameter("season", code)
                .setParameter("station", SeasonFixture.STATION)
                .executeUpdate();
        return code;
    }

    /** Adds that many animals of that kind; returns their kits. */
    @Transactional
    public List<String> add(String season, int animals, ALine line) {
        int from = KITS.getAndAdd(animals);
        entities.createNativeQuery("""
                        insert into kit (code, block, position)
                        select 'P' || lpad(g::text, 7, '0'), (select id from kit_block where season = :season limit 1), g
                          from generate_series(:from, :to) g
                        """)
                .setParameter("season", season)
                .setParameter("from", from)
                .setParameter("to", from + animals - 1)
                .executeUpdate();
        entities.createNativeQuery("""
                        insert into animal (kit, species, origin, sex, sex_evidence, died_on, unit, station, season,
                               mortality_source, collection_route, clinical_signs, sampling_basis, jaw_status, recorded_by,
                               recorded_at)
                        select 'P' || lpad(g::text, 7, '0'), :species, :origin, :sex, 'GENITALIA_OR_UDDER', s.starts_on, :unit,
                               :station, s.code, :source, 'STATION', :signs, :basis, 'READ', 'test', now()
                          from generate_series(:from, :to) g, season s where s.code = :season
                        """)
                .setParameter("season", season)
                .setParameter("from", from)
                .setParameter("to", from + animals - 1)
                .setParameter("species", SeasonFixture.SPECIES)
                .setParameter("station", SeasonFixture.STATION)
                .setParameter("unit", line.unit())
                .setParameter("origin", line.origin())
                .setParameter("sex", line.sex())
                .setParameter("source", line.source())
                .setParameter("signs", line.signs())
                .setParameter("basis", line.basis())
                .executeUpdate();
        entities.createNativeQuery("""
                        insert into line (kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed,
                               unit, region, station, died_on, mortality_source, collection_route, clinical_signs,
                               sampling_basis, has_specimen, derived_outcome, outcome, exclusion, cause, opened_at)
                        select a.kit, 'CWD', a.season, a.species, a.origin, a.sex, a.sex_evidence, :age, false, a.unit,
                               u.region, a.station, a.died_on, a.mortality_source, a.collection_route, a.clinical_signs,
                               a.sampling_basis, :specimen, :derived, :outcome, :exclusion, 'INTAKE', now()
                          from animal a left join management_unit u on u.code = a.unit
                         where a.kit in (select 'P' || lpad(g::text, 7, '0') from generate_series(:from, :to) g)
                        """)
                .setParameter("from", from)
                .setParameter("to", from + animals - 1)
                .setParameter("age", line.ageClass())
                .setParameter("specimen", line.hasSpecimen())
                .setParameter("derived", line.derived())
                .setParameter("outcome", line.outcome())
                .setParameter("exclusion", line.exclusion())
                .executeUpdate();
        return java.util.stream.IntStream.range(from, from + animals)
                .mapToObj(g -> String.format("P%07d", g))
                .toList();
    }

    /** Closes the open lines of the kits and opens copies with another outcome, as a finding would. */
    @Transactional
    public void revise(List<String> kits, String outcome) {
        entities.createNativeQuery("update line set closed_at = now() where kit in (:kits) and closed_at is null")
                .setParameter("kits", kits)
                .executeUpdate();
        entities.createNativeQuery("""
                        insert into line (kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed,
                               unit, region, station, died_on, mortality_source, collection_route, clinical_signs,
                               sampling_basis, has_specimen, derived_outcome, outcome, exclusion, cause, opened_at)
                        select kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed, unit,
                               region, station, died_on, mortality_source, collection_route, clinical_signs, sampling_basis,
                               has_specimen, :outcome, :outcome, exclusion, 'FINDING', now()
                          from line l where kit in (:kits)
                           and id = (select max(id) from line x where x.kit = l.kit and x.disease = l.disease)
                        """)
                .setParameter("kits", kits)
                .setParameter("outcome", outcome)
                .executeUpdate();
    }

    /** Closes the open lines of the kits and opens copies of which more is derived than released, as a screening finding would. */
    @Transactional
    public void withhold(List<String> kits, String derived) {
        copy(kits, "derived_outcome", derived, "FINDING");
    }

    /** Closes the animal's open line and opens a copy with another value in that column, as a correction would. */
    @Transactional
    public void correct(String kit, String column, String value) {
        copy(List.of(kit), column, value, "CORRECTION");
    }

    private void copy(List<String> kits, String column, String value, String cause) {
        List<String> columns = new java.util.ArrayList<>(List.of(
                "kit",
                "disease",
                "season",
                "species",
                "origin",
                "sex",
                "sex_evidence",
                "age_class",
                "age_disputed",
                "unit",
                "region",
                "station",
                "died_on",
                "mortality_source",
                "collection_route",
                "clinical_signs",
                "sampling_basis",
                "has_specimen",
                "derived_outcome",
                "outcome",
                "footnotes",
                "exclusion",
                "jaw_status",
                "jaw_reason"));
        entities.createNativeQuery("update line set closed_at = now() where kit in (:kits) and closed_at is null")
                .setParameter("kits", kits)
                .executeUpdate();
        String into = String.join(", ", columns);
        columns.set(columns.indexOf(column), ":value");
        entities.createNativeQuery("insert into line (" + into + ", cause, opened_at) select "
                        + String.join(", ", columns) + ", :cause, now() from line l where kit in (:kits)"
                        + " and id = (select max(id) from line x where x.kit = l.kit and x.disease = l.disease)")
                .setParameter("kits", kits)
                .setParameter("value", value)
                .setParameter("cause", cause)
                .executeUpdate();
    }

    /** Somebody's clear reading of an animal's jaw, or its age by another method; returns its id. */
    @Transactional
    public UUID read(String kit, String examiner, String method, String ageClass) {
        UUID id = UUID.randomUUID();
        entities.createNativeQuery("""
                        insert into jaw_reading (id, kit, read_at, examiner, method, observation, age_class, certainty, disputed,
                               rule_set_version, received_by, received_at)
                        values (:id, :kit, now(), :examiner, :method, '{}', :age, 'CLEAR', false, 'test', 'test', now())
                        """)
                .setParameter("id", id)
                .setParameter("kit", kit)
                .setParameter("examiner", examiner)
                .setParameter("method", method)
                .setParameter("age", ageClass)
                .executeUpdate();
        return id;
    }

    /** Somebody decides that the reading stands. */
    @Transactional
    public void decide(String kit, UUID reading, String ageClass) {
        entities.createNativeQuery("insert into designated_age (kit, reading, age_class, reason, by_actor, at)"
                        + " values (:kit, :reading, :age, 'test', 'test', now())")
                .setParameter("kit", kit)
                .setParameter("reading", reading)
                .setParameter("age", ageClass)
                .executeUpdate();
    }

    /** The animal's open line says another day of death, or none. */
    @Transactional
    public void died(String kit, LocalDate on) {
        entities.createNativeQuery("update line set died_on = cast(:on as date) where kit = :kit and closed_at is null")
                .setParameter("on", on)
                .setParameter("kit", kit)
                .executeUpdate();
    }

    /** Closes the open lines of the kits and opens copies with footnotes, an age that is disputed or not, and a jaw. */
    @Transactional
    public void footnote(List<String> kits, String footnotes, boolean disputed, String jawStatus, String jawReason) {
        entities.createNativeQuery("update line set closed_at = now() where kit in (:kits) and closed_at is null")
                .setParameter("kits", kits)
                .executeUpdate();
        entities.createNativeQuery("""
                        insert into line (kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed,
                               unit, region, station, died_on, mortality_source, collection_route, clinical_signs,
                               sampling_basis, has_specimen, derived_outcome, outcome, footnotes, exclusion, cause, opened_at,
                               jaw_status, jaw_reason)
                        select kit, disease, season, species, origin, sex, 'HEAD_ONLY', age_class, :disputed, unit,
                               region, station, died_on, mortality_source, collection_route, clinical_signs, sampling_basis,
                               has_specimen, derived_outcome, outcome, :footnotes, exclusion, 'READING', now(), :status, :reason
                          from line l where kit in (:kits)
                           and id = (select max(id) from line x where x.kit = l.kit and x.disease = l.disease)
                        """)
                .setParameter("kits", kits)
                .setParameter("footnotes", footnotes)
                .setParameter("disputed", disputed)
                .setParameter("status", jawStatus)
                .setParameter("reason", jawReason)
                .executeUpdate();
    }

    /** A submission to that laboratory, dispatched then, with a specimen of each kit. */
    @Transactional
    public void sent(List<String> kits, String laboratory, String dispatchedAt) {
        UUID submission = UUID.randomUUID();
        entities.createNativeQuery("""
                        insert into submission (id, laboratory, state, dispatched_at, opened_by, opened_at)
                        values (:id, :laboratory, 'DISPATCHED', cast(:at as timestamptz), 'test', now())
                        """)
                .setParameter("id", submission)
                .setParameter("laboratory", laboratory)
                .setParameter("at", dispatchedAt)
                .executeUpdate();
        for (String sql : List.of(
                "insert into label (code, part, kit_printed, kit_bound) select kit || '01', 'NODES', kit, kit"
                        + " from unnest(:kits) kit on conflict do nothing",
                """
                insert into specimen (code, tissue, side, condition, preservation, collected_at, collected_by, recorded_by,
                       recorded_at)
                select kit || '01', 'MEDIAL_RETROPHARYNGEAL_NODE', 'BOTH', 'GOOD', 'FROZEN', now(), 'test', 'test', now()
                  from unnest(:kits) kit on conflict do nothing
                """)) {
            entities.createNativeQuery(sql)
                    .setParameter("kits", kits.toArray(String[]::new))
                    .executeUpdate();
        }
        entities.createNativeQuery(
                        "insert into submission_specimen (submission, code, packed_at, packed_by, recorded_at)"
                                + " select :id, kit || '01', now(), 'test', cast(:at as timestamptz) from unnest(:kits) kit")
                .setParameter("id", submission)
                .setParameter("at", dispatchedAt)
                .setParameter("kits", kits.toArray(String[]::new))
                .executeUpdate();
    }
}
