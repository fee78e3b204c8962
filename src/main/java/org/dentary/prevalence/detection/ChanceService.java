package org.dentary.prevalence.detection;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.cautions.Hazard;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.StationView;
import org.dentary.plan.UnitView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.PrevalenceReport.CutName;
import org.dentary.prevalence.PrevalenceReport.StepCount;
import org.dentary.prevalence.PrevalenceService;
import org.dentary.prevalence.ReportCautions;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.detection.UnitRules.Known;
import org.dentary.prevalence.detection.UnitRules.SeasonSample;
import org.dentary.prevalence.linelist.LineColumn;
import org.dentary.prevalence.performance.PerformanceQueries;
import org.dentary.prevalence.performance.PerformanceSets;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.prevalence.question.Step;

/** Answers what the sampling of a season can rule out, and what to take next. */
@ApplicationScoped
public class ChanceService {
    private static final List<String> OF_OTHER_REPORTS =
            List.of("by", "columns", "with", "interval", "outcome", "exclusion", "hasSpecimen");

    private final PrevalenceService prevalence;
    private final PlanService plan;
    private final DataCutService cuts;
    private final SampleQueries queries;
    private final PerformanceQueries tests;
    private final ReportCautions cautions;
    private final Snapshot snapshot;
    private final Clock clock;

    ChanceService(
            PrevalenceService prevalence,
            PlanService plan,
            DataCutService cuts,
            SampleQueries queries,
            PerformanceQueries tests,
            ReportCautions cautions,
            Snapshot snapshot,
            Clock clock) {
        this.prevalence = prevalence;
        this.plan = plan;
        this.cuts = cuts;
        this.queries = queries;
        this.tests = tests;
        this.cautions = cautions;
        this.snapshot = snapshot;
        this.clock = clock;
    }

    /**
     * Reads and checks the parameters of an address; disease and species default to the plan's first.
     *
     * @throws InvalidInput (422) naming a parameter that is unknown, of another report or impossible
     */
    public ReportQuestion question(Map<String, List<String>> parameters) {
        OF_OTHER_REPORTS.stream()
                .filter(name ->
                        parameters.getOrDefault(name, List.of()).stream().anyMatch(text -> !text.isBlank()))
                .findFirst()
                .ifPresent(name -> {
                    throw InvalidInput.field(
                            name,
                            "NOT_OF_THIS_REPORT",
                            name
                                    + " does not apply to the chance of detection, which counts every animal with a result, unit"
                                    + " by unit; leave it out");
                });
        return prevalence.settle(ReportQuestion.of(parameters));
    }

    /**
     * The report, all its numbers of one moment.
     *
     * @throws InvalidInput (422) if a unit's weight set lacks a class that was tested, or its test sensitivity is relative or of a
     *     set of test performance that does not fit
     */
    public ChanceOfDetection answer(ReportQuestion question) {
        return snapshot.read(() -> assemble(question));
    }

    /** Counted and detected of the season asked for and of those before it that have any, oldest first. */
    public List<SeasonCount> seasons(ReportQuestion question) {
        return snapshot.read(() -> {
            List<String> before = before(question.season());
            Instant at =
                    question.cut() == null ? null : cuts.require(question.cut()).madeAt();
            Map<String, List<SampledGroup>> bySeason = Stream.concat(
                            before.isEmpty() ? Stream.of() : queries.earlier(question, before, at).stream(),
                            queries.season(question).stream())
                    .collect(Collectors.groupingBy(SampledGroup::season));
            return Stream.concat(before.stream(), Stream.of(question.season()))
                    .map(season -> {
                        Sample sample = new Sample(bySeason.getOrDefault(season, List.of()));
                        return new SeasonCount(season, sample.tested(), sample.detected());
                    })
                    .filter(count -> count.counted() > 0 || count.season().equals(question.season()))
                    .toList();
        });
    }

    /** One season's counted animals and those in which the disease was detected. */
    public record SeasonCount(String season, int counted, int detected) {}

    /** What to take next in the season, as things stand; the plan's first disease and species. */
    public List<TakeNext> takeNext(String season) {
        return answer(question(Map.of("season", List.of(season)))).takeNext();
    }

    private ChanceOfDetection assemble(ReportQuestion question) {
        DataCutView cut = question.cut() == null ? null : cuts.require(question.cut());
        List<SampledGroup> current = queries.season(question);
        List<String> before = before(question.season());
        List<SampledGroup> past =
                before.isEmpty() ? List.of() : queries.earlier(question, before, cut == null ? null : cut.madeAt());
        PlanSettings settings = plan.settings();
        List<Known> units = known(question, settings, before, past, current);
        SampleConcerns concerns = new SampleConcerns(
                settings.wholeNumber(PlanSetting.SPARSE_SAMPLE, question.season(), null, null),
                settings.share(PlanSetting.ONE_SIDED_SHARE, question.season(), null, null)
                        .doubleValue());
        List<UnitChance> chances = new ArrayList<>();
        List<TakeNext> next = new ArrayList<>();
        Map<String, List<TakeNext.Station>> stations = stations();
        for (Known known : units) {
            UnitChance chance = UnitRules.chance(known, question.scope(), question.confidence(), concerns);
            chances.add(chance);
            TakeNextRules.of(
                            known,
                            chance,
                            question.scope(),
                            concerns,
                            stations.getOrDefault(known.unit().code(), List.of()))
                    .ifPresent(next::add);
        }
        Sample all = new Sample(current);
        int waiting = all.pending() + all.tested();
        boolean incomplete = waiting > 0
                && (double) all.pending() / waiting
                        > settings.share(PlanSetting.PENDING_SHARE_INCOMPLETE, question.season(), null, null)
                                .doubleValue();
        return new ChanceOfDetection(
                question.season(),
                question.disease(),
                question.species(),
                question.confidence(),
                cut == null
                        ? null
                        : new CutName(cut.id(), cut.name(), cut.madeAt().toString(), cut.supersededReason()),
                (cut == null ? clock.instant() : cut.madeAt()).toString(),
                question.scope().told(),
                all.tested(),
                all.detected(),
                incomplete,
                chances,
                steps(all),
                next,
                ChanceNotes.notes(question),
                ChanceNotes.warnings(question, all, incomplete),
                ChanceNotes.cautions(cautions.of(question.disease(), Hazard.REPORT)));
    }

    /** Codes of the seasons before, oldest first. */
    private List<String> before(String season) {
        List<String> before = new ArrayList<>();
        for (SeasonView one : plan.seasons()) {
            if (one.code().equals(season)) {
                break;
            }
            before.add(one.code());
        }
        return before;
    }

    private List<Known> known(
            ReportQuestion question,
            PlanSettings settings,
            List<String> before,
            List<SampledGroup> past,
            List<SampledGroup> current) {
        Map<String, Map<String, List<SampledGroup>>> byUnit = Stream.concat(past.stream(), current.stream())
                .collect(Collectors.groupingBy(SampledGroup::unit, Collectors.groupingBy(SampledGroup::season)));
        List<String> asked = question.filter().values().get(LineColumn.MANAGEMENT_UNIT);
        List<StationView> stations = plan.stations();
        Map<String, String> names = stations.stream().collect(Collectors.toMap(StationView::code, StationView::name));
        Map<String, String> seasonNames =
                plan.seasons().stream().collect(Collectors.toMap(SeasonView::code, SeasonView::name));
        Map<String, RiskWeights> sets = new HashMap<>();
        PerformanceSets performances = tests.all();
        List<Known> known = new ArrayList<>();
        for (UnitView unit : plan.units()) {
            if (asked != null && !asked.contains(unit.code())) {
                continue;
            }
            Map<String, List<SampledGroup>> groups = byUnit.getOrDefault(unit.code(), Map.of());
            List<SeasonSample> earlier = before.stream()
                    .map(season -> sample(question, settings, performances, unit, season, groups))
                    .dropWhile(sample -> sample.sample().tested() == 0)
                    .toList();
            SeasonSample now = sample(question, settings, performances, unit, question.season(), groups);
            RiskWeights weights = weights(question, now.assumptions().riskWeightSet(), sets);
            if (weights != null) {
                weights.requireFor(Stream.concat(earlier.stream(), Stream.of(now))
                        .flatMap(s -> s.sample().withPendingCounted().counted())
                        .toList());
            }
            int inUnit = (int) stations.stream()
                    .filter(station -> unit.code().equals(station.unit()))
                    .count();
            known.add(new Known(unit, earlier, now, weights, inUnit, names, seasonNames));
        }
        return known;
    }

    private static SeasonSample sample(
            ReportQuestion question,
            PlanSettings settings,
            PerformanceSets performances,
            UnitView unit,
            String season,
            Map<String, List<SampledGroup>> groups) {
        return new SeasonSample(
                season,
                new Sample(groups.getOrDefault(season, List.of())),
                Assumptions.of(settings, season, unit, performances, question.disease(), question.species()));
    }

    private RiskWeights weights(ReportQuestion question, String set, Map<String, RiskWeights> read) {
        return set.isEmpty()
                ? null
                : read.computeIfAbsent(set, name -> {
                    var classes = plan.riskWeights(name, question.disease(), question.species());
                    if (classes.isEmpty()) {
                        throw InvalidInput.field(
                                "RISK_WEIGHT_SET",
                                "WEIGHT_SET_EMPTY",
                                "The plan names the weight set " + name + ", but it has no weights for "
                                        + question.disease()
                                        + " in " + question.species()
                                        + "; bring them in under risk-weights with their citation, or empty the setting"
                                        + " RISK_WEIGHT_SET");
                    }
                    return new RiskWeights(name, classes);
                });
    }

    private Map<String, List<TakeNext.Station>> stations() {
        return plan.stations().stream()
                .filter(station -> station.unit() != null)
                .collect(Collectors.groupingBy(
                        StationView::unit,
                        Collectors.mapping(s -> new TakeNext.Station(s.code(), s.name()), Collectors.toList())));
    }

    private static List<StepCount> steps(Sample all) {
        List<StepCount> steps = new ArrayList<>();
        for (Step step : Step.values()) {
            steps.add(new StepCount(
                    step,
                    step == Step.TAKEN
                            ? all.groups().stream()
                                    .mapToInt(SampledGroup::animals)
                                    .sum()
                            : all.animals(step)));
        }
        return steps;
    }
}
