package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.plan.PlanService;
import org.dentary.prevalence.cut.DataCutQueries;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.linelist.LineFilter;
import org.dentary.prevalence.linelist.LineFilters;
import org.dentary.prevalence.question.Beside;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.Scope;

/** The choices behind the first ones of the prevalence page: rarely changed, each told by the report when it is. */
@ApplicationScoped
class PrevalenceChoices {
    private static final Set<String> BEHIND = Set.of(
            "species",
            "region",
            "station",
            "confidence",
            Beside.PARAMETER,
            "origin",
            "mortalitySource",
            "clinicalSigns",
            "samplingBasis",
            LineFilter.FROM,
            LineFilter.TO);

    private final PlanService plan;
    private final DataCutQueries cuts;

    PrevalenceChoices(PlanService plan, DataCutQueries cuts) {
        this.plan = plan;
        this.cuts = cuts;
    }

    /** One list to choose from. */
    record Pick(String name, String words, List<Choice> choices) {}

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
                                Choice.of(
                                        plan.species(), s -> s.code(), s -> s.name(), asked.getFirst("species"), null)),
                        new Pick(
                                "region",
                                "Region",
                                Choice.of(
                                        plan.regions(), r -> r.code(), r -> r.name(), asked.getFirst("region"), "All")),
                        new Pick(
                                "station",
                                "Station",
                                Choice.of(
                                        plan.stations(),
                                        s -> s.code(),
                                        s -> s.name(),
                                        asked.getFirst("station"),
                                        "All")),
                        new Pick(Beside.PARAMETER, "Another season beside it", beside(asked)),
                        new Pick(
                                "confidence",
                                "Level of the interval",
                                Choice.of(
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

    /** Every other season, live and by its cuts; several at once are kept as they were asked. */
    private List<Choice> beside(MultivaluedMap<String, String> asked) {
        String chosen = asked.containsKey(Beside.PARAMETER) ? String.join(",", asked.get(Beside.PARAMETER)) : null;
        Map<String, List<DataCutView>> ofSeason =
                cuts.all(null).stream().collect(Collectors.groupingBy(DataCutView::season));
        Map<String, String> others = new LinkedHashMap<>();
        plan.seasons().stream()
                .filter(season -> !season.code().equals(asked.getFirst("season")))
                .forEach(season -> {
                    others.put(season.code(), season.name() + ", live");
                    ofSeason.getOrDefault(season.code(), List.of())
                            .forEach(cut -> others.put(cut.id(), season.name() + ", cut “" + cut.name() + "”"));
                });
        if (chosen != null) {
            others.putIfAbsent(chosen, "As asked: " + chosen);
        }
        return Choice.of(List.copyOf(others.keySet()), id -> id, others::get, chosen, "None");
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
                        .map(code -> new Choice(code, Words.of(code), chosen.contains(code)))
                        .toList());
    }
}
