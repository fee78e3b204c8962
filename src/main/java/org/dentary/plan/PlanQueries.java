package org.dentary.plan;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.dentary.plan.setting.SettingRow;

/** Reads the set-up, each list in set-up order. */
@ApplicationScoped
class PlanQueries {
    private static final String DISEASES = "select code, name from disease order by position, code";
    private static final String SPECIES = "select code, name, key_reviewed from species order by position, code";
    private static final String REGIONS = "select code, name from region order by position, code";
    private static final String SEASONS = "select code, name, starts_on, ends_on, state from season order by starts_on";
    private static final String SEASON = "select code, name, starts_on, ends_on, state from season where code = :code";
    private static final String SEASON_ON =
            "select code, name, starts_on, ends_on, state from season where :day between starts_on and ends_on";
    private static final String UNITS =
            "select code, name, region, boundary_version from management_unit order by position, code";
    private static final String UNIT =
            "select code, name, region, boundary_version from management_unit where code = :code";
    private static final String BOUNDARIES = """
            select code, boundary, boundary_version from management_unit
             where boundary is not null order by position, code
            """;
    private static final String STATIONS = """
            select s.code, s.name, s.unit, u.region, s.time_zone
              from station s left join management_unit u on u.code = s.unit
             order by s.position, s.code
            """;
    private static final String STATION = """
            select s.code, s.name, s.unit, u.region, s.time_zone
              from station s left join management_unit u on u.code = s.unit
             where s.code = :code
            """;
    private static final String LABORATORIES =
            "select code, name, address, contact, turnaround_days from laboratory order by position, code";
    private static final String LABORATORY =
            "select code, name, address, contact, turnaround_days from laboratory where code = :code";
    private static final String METHODS = """
            select code, name, disease, array_to_string(accepted_tissues, ' ') from test_method order by position, code
            """;
    private static final String METHOD = """
            select code, name, disease, array_to_string(accepted_tissues, ' ') from test_method where code = :code
            """;
    private static final String ACCEPTANCE = """
            with rule as (
              select * from laboratory_acceptance
               where laboratory = :laboratory and in_force_from <= :day and (in_force_to is null or in_force_to >= :day))
            select r.laboratory, r.method, r.tissue, r.preservation, r.side, r.max_days, r.max_days_kept, r.minimum_age,
                   r.unknown_age_stops, r.container, r.in_force_from, r.in_force_to
              from rule r
             where not exists (select 1 from rule n
                                where n.method = r.method and n.tissue = r.tissue and n.preservation = r.preservation
                                  and n.side is not distinct from r.side and n.in_force_from > r.in_force_from)
             order by r.in_force_from desc, r.id
            """;
    private static final String PROFILE = """
            select laboratory, in_force_from, in_force_to, array_to_string(receives_on, ' '), cut_off, temperature, pieces,
                   paperwork, handling
              from laboratory_profile
             where laboratory = :laboratory and in_force_from <= :day and (in_force_to is null or in_force_to >= :day)
             order by in_force_from desc limit 1
            """;
    private static final String CLOSURES = """
            select day, name from laboratory_closure
             where laboratory = :laboratory and day between :day and cast(:day as date) + 90 order by day
            """;
    private static final String ALL_ACCEPTANCE = """
            select a.laboratory, a.method, a.tissue, a.preservation, a.side, a.max_days, a.max_days_kept, a.minimum_age,
                   a.unknown_age_stops, a.container, a.in_force_from, a.in_force_to
              from laboratory_acceptance a join laboratory l on l.code = a.laboratory
             order by l.position, a.in_force_from, a.id
            """;
    private static final String RISK_WEIGHTS = """
            select weight_set, disease, species, age_class, sex, mortality_source, clinical_signs, relative_risk,
                   population_share, citation
              from risk_weight where weight_set = :set and disease = :disease and species = :species
             order by age_class, sex, mortality_source, clinical_signs
            """;
    private static final String SETTINGS =
            "select name, value, season, region, unit from plan_setting order by name, unit, region, season";

    private final EntityManager entities;

    PlanQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A method as stored; tissues separated by blanks. */
    record MethodRow(String code, String name, String disease, String tissues) {
        TestMethodView view() {
            return new TestMethodView(code, name, disease, tissues.isBlank() ? List.of() : List.of(tissues.split(" ")));
        }
    }

    List<DiseaseView> diseases() {
        return list(DISEASES, DiseaseView.class);
    }

    List<SpeciesView> species() {
        return list(SPECIES, SpeciesView.class);
    }

    List<RegionView> regions() {
        return list(REGIONS, RegionView.class);
    }

    List<SeasonView> seasons() {
        return list(SEASONS, SeasonView.class);
    }

    Optional<SeasonView> season(String code) {
        return byCode(SEASON, SeasonView.class, code);
    }

    Optional<SeasonView> seasonOn(LocalDate day) {
        return rows(entities.createNativeQuery(SEASON_ON, SeasonView.class).setParameter("day", day), SeasonView.class)
                .stream()
                .findFirst();
    }

    List<UnitView> units() {
        return list(UNITS, UnitView.class);
    }

    Optional<UnitView> unit(String code) {
        return byCode(UNIT, UnitView.class, code);
    }

    List<UnitBoundary> boundaries() {
        return list(BOUNDARIES, UnitBoundary.class);
    }

    List<StationView> stations() {
        return list(STATIONS, StationView.class);
    }

    Optional<StationView> station(String code) {
        return byCode(STATION, StationView.class, code);
    }

    List<LaboratoryView> laboratories() {
        return list(LABORATORIES, LaboratoryView.class);
    }

    Optional<LaboratoryView> laboratory(String code) {
        return byCode(LABORATORY, LaboratoryView.class, code);
    }

    List<TestMethodView> methods() {
        return list(METHODS, MethodRow.class).stream().map(MethodRow::view).toList();
    }

    Optional<TestMethodView> method(String code) {
        return byCode(METHOD, MethodRow.class, code).map(MethodRow::view);
    }

    List<AcceptanceView> acceptance(String laboratory, LocalDate day) {
        return rows(
                entities.createNativeQuery(ACCEPTANCE, AcceptanceView.class)
                        .setParameter("laboratory", laboratory)
                        .setParameter("day", day),
                AcceptanceView.class);
    }

    private record ProfileRow(
            String laboratory,
            LocalDate inForceFrom,
            LocalDate inForceTo,
            String receivesOn,
            String cutOff,
            String temperature,
            String pieces,
            String paperwork,
            String handling) {}

    Optional<LaboratoryProfile> profile(String laboratory, LocalDate day) {
        List<LaboratoryProfile.Closure> closures = rows(
                entities.createNativeQuery(CLOSURES, LaboratoryProfile.Closure.class)
                        .setParameter("laboratory", laboratory)
                        .setParameter("day", day),
                LaboratoryProfile.Closure.class);
        return rows(
                        entities.createNativeQuery(PROFILE, ProfileRow.class)
                                .setParameter("laboratory", laboratory)
                                .setParameter("day", day),
                        ProfileRow.class)
                .stream()
                .findFirst()
                .map(row -> new LaboratoryProfile(
                        row.laboratory(),
                        row.inForceFrom(),
                        row.inForceTo(),
                        java.util.Arrays.stream(DayOfWeek.values())
                                .filter(weekday -> List.of(row.receivesOn().split(" "))
                                        .contains(weekday.name().substring(0, 3)))
                                .toList(),
                        row.cutOff(),
                        row.temperature(),
                        row.pieces(),
                        row.paperwork(),
                        row.handling(),
                        closures));
    }

    List<AcceptanceView> acceptance() {
        return list(ALL_ACCEPTANCE, AcceptanceView.class);
    }

    List<SettingRow> settings() {
        return list(SETTINGS, SettingRow.class);
    }

    List<RiskWeightView> riskWeights(String set, String disease, String species) {
        return rows(
                entities.createNativeQuery(RISK_WEIGHTS, RiskWeightView.class)
                        .setParameter("set", set)
                        .setParameter("disease", disease)
                        .setParameter("species", species),
                RiskWeightView.class);
    }

    private <T> List<T> list(String sql, Class<T> row) {
        return rows(entities.createNativeQuery(sql, row), row);
    }

    private <T> Optional<T> byCode(String sql, Class<T> row, String code) {
        return rows(entities.createNativeQuery(sql, row).setParameter("code", code), row).stream()
                .findFirst();
    }

    @SuppressWarnings("unchecked")
    private static <T> List<T> rows(Query query, Class<T> row) {
        return (List<T>) query.getResultList();
    }
}
