package org.dentary.prevalence.question;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.UnitView;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.linelist.LineColumn;
import org.dentary.prevalence.linelist.LineFilter;

/** Conditions that no animal can meet together: told, so that nobody takes an empty report for a finding. */
public final class Impossible {
    private static final String RULE = "IMPOSSIBLE_COMBINATION";

    private Impossible() {}

    /** @throws InvalidInput naming what excludes each other and what to change */
    public static void refuse(ReportQuestion question, SeasonView season, PlanService plan) {
        LineFilter filter = question.filter();
        if (question.with().isEmpty()) {
            days(filter, season);
        }
        units(filter, plan);
    }

    private static void days(LineFilter filter, SeasonView season) {
        LocalDate from = filter.diedFrom();
        LocalDate to = filter.diedTo();
        if (from != null && from.isAfter(season.endsOn()) || to != null && to.isBefore(season.startsOn())) {
            boolean late = from != null && from.isAfter(season.endsOn());
            throw InvalidInput.field(
                    late ? LineFilter.FROM : LineFilter.TO,
                    RULE,
                    (late ? LineFilter.FROM + " " + from : LineFilter.TO + " " + to) + " lies outside season "
                            + season.code() + ", which runs from " + season.startsOn() + " to " + season.endsOn()
                            + "; change the days or the season");
        }
    }

    private static void units(LineFilter filter, PlanService plan) {
        List<String> units = filter.values().getOrDefault(LineColumn.MANAGEMENT_UNIT, List.of());
        List<String> regions = filter.values().getOrDefault(LineColumn.REGION, List.of());
        if (units.isEmpty() || regions.isEmpty() || units.contains("UNKNOWN")) {
            return;
        }
        List<String> theirs = units.stream()
                .map(plan::unit)
                .map(UnitView::region)
                .map(region -> Objects.requireNonNullElse(region, "UNKNOWN"))
                .distinct()
                .toList();
        if (theirs.stream().noneMatch(regions::contains)) {
            throw InvalidInput.field(
                    "region",
                    RULE,
                    "no unit of " + String.join(", ", units) + " lies in region " + String.join(", ", regions)
                            + "; theirs: " + String.join(", ", theirs) + ". Leave one of the two filters out");
        }
    }
}
