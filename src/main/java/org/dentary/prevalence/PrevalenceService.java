package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.cut.DataCutQueries;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.linelist.LineColumn;
import org.dentary.prevalence.linelist.LineFilters;
import org.dentary.prevalence.question.Beside;
import org.dentary.prevalence.question.Dimension;
import org.dentary.prevalence.question.Impossible;
import org.dentary.prevalence.question.Lines;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.prevalence.question.Step;
import org.dentary.prevalence.table.DimensionValues;

/** Answers how common a disease is among the animals of a season. */
@ApplicationScoped
public class PrevalenceService {
    private final PlanService plan;
    private final PrevalenceQueries queries;
    private final DimensionValues values;
    private final DataCutQueries cuts;
    private final Snapshot snapshot;
    private final ReportCautions cautions;
    private final LineFilters filters;
    private final Clock clock;

    PrevalenceService(
            PlanService plan,
            PrevalenceQueries queries,
            DimensionValues values,
            DataCutQueries cuts,
            Snapshot snapshot,
            ReportCautions cautions,
            LineFilters filters,
            Clock clock) {
        this.plan = plan;
        this.queries = queries;
        this.values = values;
        this.cuts = cuts;
        this.snapshot = snapshot;
        this.cautions = cautions;
        this.filters = filters;
        this.clock = clock;
    }

    /**
     * Fills in what the question leaves to the plan and checks what it names.
     *
     * @throws InvalidInput if the season is missing, a filter has a value that no line can have, filters exclude each other, or
     *     the cut is of another season
     * @throws org.dentary.platform.problem.NotFound if season, disease, species, unit or cut is not known
     */
    public ReportQuestion settle(ReportQuestion question) {
        if (question.season() == null) {
            throw InvalidInput.field("season", "REQUIRED", "season is missing; /api/v1/seasons lists them");
        }
        SeasonView season = plan.season(question.season());
        String disease = question.disease() == null
                ? first(plan.diseases().stream().map(d -> d.code()).toList())
                : question.disease();
        String species = question.species() == null
                ? first(plan.species().stream().map(s -> s.code()).toList())
                : question.species();
        known("disease", disease, plan.diseases().stream().map(d -> d.code()).toList());
        known("species", species, plan.species().stream().map(s -> s.code()).toList());
        question.filter().values().getOrDefault(LineColumn.MANAGEMENT_UNIT, List.of()).stream()
                .filter(unit -> !unit.equals("UNKNOWN"))
                .forEach(plan::unit);
        question.filter().values().getOrDefault(LineColumn.STATION, List.of()).forEach(plan::station);
        filters.check(question.filter());
        Impossible.refuse(question, season, plan);
        if (question.cut() != null) {
            DataCutView cut = cuts.require(question.cut());
            if (!cut.season().equals(question.season())) {
                throw InvalidInput.field(
                        "cut",
                        "CUT_OF_ANOTHER_SEASON",
                        "cut '" + cut.name() + "' is of season " + cut.season() + ", not " + question.season()
                                + "; choose a cut of that season or change the season");
            }
        }
        return question.on(question.season(), disease, species, Beside.settle(question, plan, cuts));
    }

    /** The report, all its numbers of one moment. */
    public PrevalenceReport report(ReportQuestion asked) {
        return reports(List.of(asked)).get(0);
    }

    /** Several reports in the order asked, all their numbers of one moment. */
    public List<PrevalenceReport> reports(List<ReportQuestion> asked) {
        List<ReportQuestion> questions = asked.stream().map(this::settle).toList();
        return snapshot.read(() -> questions.stream().map(this::assemble).toList());
    }

    /**
     * What follows from a report and from more that is read at the same moment.
     *
     * @param more reads and computes within the report's own snapshot
     */
    public <T> T reportAnd(ReportQuestion asked, Function<PrevalenceReport, T> more) {
        ReportQuestion question = settle(asked);
        return snapshot.read(() -> more.apply(assemble(question)));
    }

    private PrevalenceReport assemble(ReportQuestion question) {
        Lines lines = question.lines();
        List<PrevalenceQueries.Count> counts =
                queries.counts(lines, question.filter(), question.scope(), question.by());
        ReportCells cells = ReportCells.of(question, counts, values);
        Map<Step, Integer> steps = steps(counts);
        PrevalenceCell total = cells.total();
        Double pendingShare = total.pendingShare();
        BigDecimal limit = plan.settings().share(PlanSetting.PENDING_SHARE_INCOMPLETE, question.season(), null, null);
        boolean incomplete = pendingShare != null && pendingShare > limit.doubleValue();
        DataCutView cut = question.cut() == null ? null : cuts.require(question.cut());
        int[] sexes = queries.sexEvidence(lines, question.filter(), question.scope());
        PrevalenceReport.Share sex = PrevalenceReport.Share.of(sexes[0], sexes[1]);
        PrevalenceReport.UnknownAge unknownAge = unknownAge(question, lines, total.counted());
        ReportNotes notes = new ReportNotes(
                question,
                total,
                sex,
                sexes[2],
                unknownAge,
                queries.ages(lines, question.filter(), question.scope(), until(question)),
                plan,
                cautions,
                cut);
        return new PrevalenceReport(
                question.season(),
                question.disease(),
                question.species(),
                question.by().stream().map(Dimension::field).toList(),
                question.columns() == null ? null : question.columns().field(),
                question.interval().name(),
                question.confidence(),
                cut == null ? null : PrevalenceReport.CutName.of(cut),
                cut == null ? clock.instant().toString() : cut.madeAt().toString(),
                beside(question),
                question.scope().told(),
                incomplete,
                pendingShare,
                cells.all(),
                cells.rowTotals(),
                cells.columnTotals(),
                total,
                steps.entrySet().stream()
                        .map(e -> new PrevalenceReport.StepCount(e.getKey(), e.getValue()))
                        .toList(),
                queries.footnotes(lines, question.filter(), question.scope()).stream()
                        .map(ReportNotes::footnote)
                        .toList(),
                sex,
                unknownAge,
                notes.methods(),
                notes.notes(),
                notes.warnings(incomplete, pendingShare),
                notes.cautions());
    }

    /** The moment at which the last of the report's lines stood: of its cut or cuts, else now. */
    private Instant until(ReportQuestion question) {
        return question.cut() == null
                ? clock.instant()
                : Stream.concat(
                                Stream.of(question.cut()),
                                question.with().stream().map(Beside::cut))
                        .map(cut -> cuts.require(cut).madeAt())
                        .max(Comparator.naturalOrder())
                        .orElseThrow();
    }

    private List<PrevalenceReport.OtherSeason> beside(ReportQuestion question) {
        return question.with().stream()
                .map(one -> new PrevalenceReport.OtherSeason(
                        one.season(), one.cut() == null ? null : PrevalenceReport.CutName.of(cuts.require(one.cut()))))
                .toList();
    }

    private PrevalenceReport.UnknownAge unknownAge(ReportQuestion question, Lines lines, int counted) {
        List<PrevalenceReport.UnknownAgeRow> rows = queries.unknownAge(lines, question.filter(), question.scope());
        PrevalenceReport.Share total = PrevalenceReport.Share.of(
                rows.stream().mapToInt(PrevalenceReport.UnknownAgeRow::animals).sum(), counted);
        BigDecimal limit = plan.settings().share(PlanSetting.UNKNOWN_AGE_NOTE_SHARE, question.season(), null, null);
        return new PrevalenceReport.UnknownAge(
                total, total.share() != null && total.share() > limit.doubleValue(), rows);
    }

    private static Map<Step, Integer> steps(List<PrevalenceQueries.Count> counts) {
        Map<Step, Integer> steps = new java.util.EnumMap<>(Step.class);
        for (Step step : Step.values()) {
            steps.put(step, 0);
        }
        for (PrevalenceQueries.Count count : counts) {
            steps.merge(count.step(), count.animals(), Integer::sum);
            steps.merge(Step.TAKEN, count.animals(), Integer::sum);
        }
        return steps;
    }

    private static String first(List<String> codes) {
        if (codes.isEmpty()) {
            throw new InvalidInput("NOTHING_SET_UP", "no disease or species is set up yet; the coordinator does that");
        }
        return codes.get(0);
    }

    private static void known(String field, String given, List<String> allowed) {
        if (!allowed.contains(given)) {
            throw InvalidInput.field(
                    field,
                    "NOT_A_VALUE",
                    "'" + given + "' is not a " + field + " of this plan; allowed: " + String.join(", ", allowed));
        }
    }
}
