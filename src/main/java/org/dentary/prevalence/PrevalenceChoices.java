package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.dentary.plan.PlanService;
import org.dentary.prevalence.linelist.LineFilter;
import org.dentary.prevalence.linelist.LineFilters;

/** The choices behind the first ones of the prevalence page: rarely changed, each told by the report when it is. */
@ApplicationScoped
class PrevalenceChoices {
    private static final Set<String> BEHIND = Set.of(
            "species",
            "region",
            "station",
            "confidence",
            "origin",
            "mortalitySource",
            "clinicalSigns",
            "samplingBasis",
            LineFilter.FROM,
            LineFilter.TO);

    private final PlanService plan;

    PrevalenceChoices(PlanService plan) {
        this.plan = plan;
    }

    /** One list to choose from. */
    record Pick(String name, String words, List<PrevalenceForm.Choice> choices) {}

    /**
     * What stands behind "More choices".
     *
     * @param picks one value each
     * @param days first and last day of death
     * @param counts which animals count: several values each, the default ticked where nothing was asked
     * @param open whether one of them was asked, so that the page opens them
     */
    record More(List<Pick> picks, List<LineFilters.Field> days, List<Pick> counts, boolean open) {}

    More of(MultivaluedMap<String, String> asked) {
        return new More(
                List.of(
                        new Pick(
                                "species",
                                "Species",
                                PrevalenceForm.choices(
                                        plan.species(), s -> s.code(), s -> s.name(), asked.getFirst("species"), null)),
                        new Pick(
                                "region",
                                "Region",
                                PrevalenceForm.choices(
                                        plan.regions(), r -> r.code(), r -> r.name(), asked.getFirst("region"), "All")),
                        new Pick(
                                "station",
                                "Station",
                                PrevalenceForm.choices(
                                        plan.stations(),
                                        s -> s.code(),
                                        s -> s.name(),
                                        asked.getFirst("station"),
                                        "All")),
                        new Pick(
                                "confidence",
                                "Level of the interval",
                                PrevalenceForm.choices(
                                        List.of("0.9", "0.95", "0.99"),
                                        level -> level,
                                        level -> Words.percent(Double.valueOf(level), 1),
                                        asked.containsKey("confidence") ? asked.getFirst("confidence") : "0.95",
                                        null))),
                List.of(LineFilters.day(LineFilter.FROM, asked), LineFilters.day(LineFilter.TO, asked)),
                List.of(
                        count(asked, "mortalitySource", "Source", Scope.SOURCES, Scope.DEFAULT.mortalitySource()),
                        count(asked, "samplingBasis", "Basis", Scope.BASES, Scope.DEFAULT.samplingBasis()),
                        count(asked, "clinicalSigns", "Clinical signs", Scope.SIGNS, Scope.DEFAULT.clinicalSigns()),
                        count(asked, "origin", "Origin", Scope.ORIGINS, Scope.DEFAULT.origin())),
                BEHIND.stream().anyMatch(asked::containsKey));
    }

    private static Pick count(
            MultivaluedMap<String, String> asked, String name, String words, List<String> all, List<String> usual) {
        List<String> chosen = asked.containsKey(name)
                ? asked.get(name).stream()
                        .flatMap(text -> Arrays.stream(text.split(",")))
                        .map(String::trim)
                        .toList()
                : usual;
        return new Pick(
                name,
                words,
                all.stream()
                        .map(code -> new PrevalenceForm.Choice(code, Words.of(code), chosen.contains(code)))
                        .toList());
    }
}
