package org.dentary.prevalence.detection;

import java.util.List;
import org.dentary.plan.PlanClock;

/** The report as the page shows it. */
record ChanceTable(ChanceOfDetection report, List<Row> rows, String confidence, String asOf, String superseded) {
    /** One unit; figures that there are none of are empty. */
    record Row(
            UnitChance unit,
            String tested,
            String target,
            String chance,
            String upperLimit,
            String below,
            String more,
            String designPrevalence,
            String rests) {}

    static ChanceTable of(ChanceAnswers.Answer answer, PlanClock zone) {
        ChanceOfDetection report = answer.report();
        return new ChanceTable(
                report,
                report.units().stream().map(ChanceTable::row).toList(),
                ChanceWords.share(report.confidence()),
                zone.told(report.asOf()),
                answer.superseded());
    }

    private static Row row(UnitChance unit) {
        return new Row(
                unit,
                ChanceWords.count(unit.tested()),
                unit.target() == null ? "not attainable" : ChanceWords.count(unit.target()),
                ChanceWords.chance(unit.judged()),
                ChanceWords.chance(unit.upperLimit()),
                unit.state() == UnitState.DETECTED || unit.state() == UnitState.DETECTED_EARLIER
                        ? ""
                        : ChanceWords.chance(unit.probabilityBelow()),
                unit.more() == null ? "" : ChanceWords.count(unit.more()),
                ChanceWords.share(unit.assumptions().designPrevalence()),
                ChanceWords.rests(unit.assumptions()));
    }
}
