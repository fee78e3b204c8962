package org.dentary.prevalence.truth;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.dentary.plan.PlanService;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.PrevalenceService;
import org.dentary.prevalence.performance.PerformanceQueries;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dentary.prevalence.performance.PerformanceSets;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.statistics.TruePrevalence;

/** Answers how common a disease is behind what the tests show, with a set of test performance that the reader chooses. */
@ApplicationScoped
public class TruthService {
    /** Later than any finding: what is asked live leaves none out. */
    private static final Instant EVER = Instant.parse("9999-12-31T00:00:00Z");

    private final PrevalenceService prevalence;
    private final PerformanceQueries performances;
    private final TestedQueries tests;
    private final PlanService plan;

    TruthService(PrevalenceService prevalence, PerformanceQueries performances, TestedQueries tests, PlanService plan) {
        this.prevalence = prevalence;
        this.performances = performances;
        this.tests = tests;
        this.plan = plan;
    }

    /**
     * Fills in what the question leaves to the plan and checks what it names.
     *
     * @throws InvalidInput (422) if the set does not fit, as {@link PerformanceSets#require} says
     */
    TruthQuestion settle(TruthQuestion asked) {
        ReportQuestion report = prevalence.settle(asked.report());
        require(asked.performance(), report);
        return new TruthQuestion(report, asked.performance());
    }

    /**
     * The report, all its numbers of one moment.
     *
     * @param asked settled
     * @throws InvalidInput (422) if no counted animal was tested by the set's methods on its tissues
     */
    TruthReport answer(TruthQuestion asked) {
        ReportQuestion question = asked.report();
        PerformanceSet set = require(asked.performance(), question);
        return prevalence.reportAnd(question, report -> {
            Instant at =
                    report.cut() == null ? EVER : Instant.parse(report.cut().madeAt());
            return of(question, report, set, tests.of(question, set, at), tests.otherwise(question, set, at));
        });
    }

    private PerformanceSet require(String code, ReportQuestion question) {
        return performances.all().require(PerformanceSets.PARAMETER, code, question.disease(), question.species());
    }

    private TruthReport of(
            ReportQuestion question,
            PrevalenceReport report,
            PerformanceSet set,
            Tested tested,
            Map<Map<String, String>, Integer> otherwise) {
        if (tested.counted() > 0 && tested.within() + tested.partly() == 0) {
            throw InvalidInput.field(
                    "performance",
                    "PERFORMANCE_OF_OTHER_TESTS",
                    "set '" + set.code() + "' speaks of " + TruthWords.tests(set, TruthWords.methodNames(plan))
                            + ", and none of the "
                            + tested.counted() + " counted animals has a final finding by that on record. They had "
                            + TruthWords.tests(tested) + "; choose a set of those tests");
        }
        TruthWords words = new TruthWords(report, set, tested, TruthWords.methodNames(plan));
        List<TruthCell> cells = report.cells().stream()
                .map(cell -> cell(cell, set, report.confidence(), otherwise.getOrDefault(cell.group(), 0)))
                .toList();
        return new TruthReport(
                report.season(),
                report.disease(),
                report.species(),
                report.by(),
                report.interval(),
                report.confidence(),
                report.cut(),
                report.asOf(),
                report.scope(),
                question.filters(),
                report.incomplete(),
                report.pendingShare(),
                set,
                tested,
                cells,
                cell(report.total(), set, report.confidence(), tested.outside()),
                report.takenToCounted(),
                words.methods(),
                words.notes(),
                words.warnings(cells),
                report.cautions());
    }

    private static TruthCell cell(PrevalenceCell cell, PerformanceSet set, double confidence, int otherwise) {
        TruePrevalence truth = set.truth(cell.detected(), cell.counted(), confidence);
        return new TruthCell(
                cell.group(),
                cell.counted(),
                cell.detected(),
                cell.prevalence(),
                cell.lower(),
                cell.upper(),
                truth.raw(),
                truth.estimate(),
                truth.lower(),
                truth.upper(),
                truth.truncated(),
                TruthWords.sentence(cell.detected(), cell.counted(), truth, confidence, otherwise),
                otherwise,
                cell.pending(),
                cell.flags());
    }
}
