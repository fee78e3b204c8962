package org.dentary.plan;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.plan.setting.SettingRow;
import org.dentary.platform.problem.NotFound;

/**
 * What the season is set up with. Lists come in set-up order (seasons oldest first) and are never null; a single thing
 * that is not set up is a {@link NotFound} that names it.
 */
@ApplicationScoped
public class PlanService {
    private final PlanQueries queries;

    PlanService(PlanQueries queries) {
        this.queries = queries;
    }

    /** The diseases under surveillance; the first is what reports take when none is named. */
    public List<DiseaseView> diseases() {
        return queries.diseases();
    }

    public List<SpeciesView> species() {
        return queries.species();
    }

    /** The species of that code. */
    public SpeciesView species(String code) {
        return species().stream()
                .filter(s -> s.code().equals(code))
                .findFirst()
                .orElseThrow(unknown("SPECIES_UNKNOWN", "species", code));
    }

    public List<RegionView> regions() {
        return queries.regions();
    }

    public List<SeasonView> seasons() {
        return queries.seasons();
    }

    /** The season of that code. */
    public SeasonView season(String code) {
        return queries.season(code).orElseThrow(unknown("SEASON_UNKNOWN", "season", code));
    }

    /** The season whose days contain this one; the day is the station's, not UTC's. */
    public Optional<SeasonView> seasonOn(LocalDate day) {
        return queries.seasonOn(day);
    }

    /** The season that a report opens with: that of the day, else the last one; empty if none is set up. */
    public Optional<SeasonView> seasonToReport(LocalDate day) {
        List<SeasonView> seasons = seasons();
        return seasonOn(day)
                .or(() -> seasons.isEmpty() ? Optional.empty() : Optional.of(seasons.get(seasons.size() - 1)));
    }

    public List<UnitView> units() {
        return queries.units();
    }

    /** The management unit of that code. */
    public UnitView unit(String code) {
        return queries.unit(code).orElseThrow(unknown("UNIT_UNKNOWN", "management unit", code));
    }

    /** Boundaries of the units that have one. */
    public List<UnitBoundary> boundaries() {
        return queries.boundaries();
    }

    public List<StationView> stations() {
        return queries.stations();
    }

    /** The station of that code. */
    public StationView station(String code) {
        return queries.station(code).orElseThrow(unknown("STATION_UNKNOWN", "station", code));
    }

    public List<LaboratoryView> laboratories() {
        return queries.laboratories();
    }

    /** The laboratory of that code. */
    public LaboratoryView laboratory(String code) {
        return queries.laboratory(code).orElseThrow(unknown("LABORATORY_UNKNOWN", "laboratory", code));
    }

    /**
     * What the laboratory accepts on that day, newest rule first; empty if it accepts nothing then. Of rules for the same
     * method, tissue, preservation and side the newest in force is the one.
     */
    public List<AcceptanceView> acceptance(String laboratory, LocalDate on) {
        return queries.acceptance(laboratory, on);
    }

    /** When and how a laboratory takes parcels, as in force on a day; empty where the plan does not say. */
    public Optional<LaboratoryProfile> laboratoryProfile(String laboratory, LocalDate on) {
        return queries.profile(laboratory, on);
    }

    /** Every acceptance rule, past and to come, by laboratory. */
    public List<AcceptanceView> acceptance() {
        return queries.acceptance();
    }

    public List<TestMethodView> methods() {
        return queries.methods();
    }

    /** The test method of that code. */
    public TestMethodView method(String code) {
        return queries.method(code).orElseThrow(unknown("METHOD_UNKNOWN", "test method", code));
    }

    /** The weights of a set for a disease and species, by class; empty if there are none. */
    public List<RiskWeightView> riskWeights(String set, String disease, String species) {
        return queries.riskWeights(set, disease, species);
    }

    /** All settings as they are now; read it once when many are asked for. */
    public PlanSettings settings() {
        return new PlanSettings(queries.settings());
    }

    /** The values that the plan sets, in the order of their names. */
    public List<SettingRow> settingRows() {
        return queries.settings();
    }

    /** One setting; see {@link PlanSettings#text}. */
    public String setting(PlanSetting setting, String season, String region, String unit) {
        return settings().text(setting, season, region, unit);
    }

    private static Supplier<NotFound> unknown(String code, String what, String given) {
        return () -> new NotFound(code, "No " + what + " '" + given + "' is set up; the list of them shows what is");
    }
}
