package org.dentary.prevalence.comparison;

import java.util.ArrayList;
import java.util.List;
import org.dentary.statistics.comparison.FisherExact;
import org.dentary.statistics.comparison.Stratified;
import org.dentary.statistics.comparison.Stratified.Stratum;
import org.dentary.statistics.comparison.TwoProportions;

/** Two groups held against each other, outright or within strata. */
final class TwoGroups {
    /** Below this the strata are said to disagree; the calculators warn at the same value. */
    private static final double DISAGREE = 0.05;

    private TwoGroups() {}

    /** Difference with Newcombe's interval; Fisher's exact test decides. */
    static Draft compare(ComparisonKind kind, String about, Group first, Group second, double confidence) {
        List<Group> groups = List.of(first, second);
        if (first.counted() == 0 || second.counted() == 0) {
            return Draft.not(kind, about, groups, "Not compared: " + nobody(first, second) + ".");
        }
        TwoProportions two =
                TwoProportions.of(first.detected(), first.counted(), second.detected(), second.counted(), confidence);
        Figure difference = Figure.of(Figure.DIFFERENCE, two.difference());
        boolean contrast = two.warnings().isEmpty();
        FisherExact fisher = two.fisher();
        List<TestResult> tests = contrast
                ? List.of(
                        TestResult.exact("Fisher exact, two-sided", fisher.twoSided(), fisher.source()),
                        TestResult.exact("Fisher exact, mid-P", fisher.midP(), fisher.source()))
                : List.of();
        String facts = "Detected in " + first.told() + " and in " + second.told() + "; difference "
                + Say.difference(difference, confidence)
                + (contrast
                        ? ", Fisher exact p " + Say.p(fisher.twoSided()) + "."
                        : ". Nobody or everybody was detected, so there is nothing to test.");
        return new Draft(
                kind,
                about,
                groups,
                List.of(difference),
                tests,
                facts,
                0,
                higher(first, second, difference.estimate() > 0),
                Say.allows(difference, first.label(), second.label()),
                null,
                List.of());
    }

    /** Mantel-Haenszel over strata; a small Breslow-Day p takes the common figure's word away. */
    static Draft adjusted(
            ComparisonKind kind,
            String about,
            Group first,
            Group second,
            String stratum,
            String strataWords,
            List<Stratum> strata,
            double confidence) {
        List<Group> groups = List.of(first, second);
        List<Stratum> both = strata.stream()
                .filter(s -> s.detected1() + s.notDetected1() > 0 && s.detected2() + s.notDetected2() > 0)
                .toList();
        if (both.isEmpty()) {
            return Draft.not(
                    kind, about, groups, "Not compared: no " + stratum + " has counted animals of both groups.");
        }
        Stratified pooled = Stratified.of(strata, confidence);
        TestResult association = TestResult.of(pooled.cochranMantelHaenszel());
        TestResult agreement = TestResult.of(pooled.breslowDayTarone());
        List<Figure> figures = List.of(
                Figure.of(Figure.ODDS_RATIO, pooled.oddsRatio()),
                Figure.of(Figure.DIFFERENCE, pooled.riskDifference()));
        List<String> notes = new ArrayList<>(pooled.warnings());
        if (association.p() == null || figures.get(0).estimate() == null) {
            return Draft.not(
                    kind,
                    about,
                    groups,
                    "Not compared: nobody or everybody was detected in each " + stratum + " that has both groups.");
        }
        boolean disagree = agreement.p() != null && agreement.p() < DISAGREE;
        String facts = "Adjusted for " + stratum + ", the odds that it is detected in " + first.label() + " are "
                + Say.ratio(figures.get(0), confidence) + " times those in " + second.label()
                + "; adjusted difference " + Say.difference(figures.get(1), confidence)
                + ", Cochran-Mantel-Haenszel p " + Say.p(association.p()) + ". Do the " + strataWords
                + " agree: "
                + (agreement.p() == null
                        ? "cannot be tested with these counts."
                        : "Breslow-Day-Tarone p " + Say.p(agreement.p()) + ".");
        return new Draft(
                kind,
                about,
                groups,
                figures,
                List.of(association, agreement),
                facts,
                1,
                disagree
                        ? "The " + strataWords + " disagree, so one adjusted figure misleads: read them one by one."
                        : higher(first, second, figures.get(0).estimate() > 1),
                Say.allows(figures.get(1), first.label(), second.label()),
                disagree ? Verdict.READ_ONE_BY_ONE : null,
                notes);
    }

    static Stratum stratum(String label, Group first, Group second) {
        return new Stratum(
                label,
                first.detected(),
                first.counted() - first.detected(),
                second.detected(),
                second.counted() - second.detected());
    }

    private static String nobody(Group first, Group second) {
        if (first.counted() == 0 && second.counted() == 0) {
            return "none of the " + first.label() + " or " + second.label() + " is counted";
        }
        return "none of the " + (first.counted() == 0 ? first : second).label() + " is counted";
    }

    static String higher(Group first, Group second, boolean firstHigher) {
        Group more = firstHigher ? first : second;
        Group less = firstHigher ? second : first;
        return "more often detected in " + more.label() + " than in " + less.label();
    }
}
