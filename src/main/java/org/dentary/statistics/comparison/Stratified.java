package org.dentary.statistics.comparison;

import java.util.ArrayList;
import java.util.List;
import org.dentary.statistics.Domain;
import org.dentary.statistics.Normal;
import org.dentary.statistics.OutOfDomain;

/**
 * Two groups compared within strata and pooled after Mantel and Haenszel. A common odds ratio is never to be read without
 * {@link #breslowDayTarone()}: when that p is small the strata disagree and one figure for all misleads.
 *
 * @param crudeOddsRatio of the strata thrown together; {@link Double#POSITIVE_INFINITY} or null as in {@link OddsRatio}
 * @param oddsRatio Mantel-Haenszel, interval after Robins, Breslow and Greenland
 * @param standardErrorLog standard error of the logarithm of {@code oddsRatio}; null where its limits are
 * @param riskRatio Mantel-Haenszel, interval after Greenland and Robins
 * @param riskDifference Mantel-Haenszel, interval after Sato
 * @param riskDifferenceStandardError standard error of {@code riskDifference}
 * @param cochranMantelHaenszel test of no association, no continuity correction, one degree of freedom
 * @param breslowDayTarone test of a common odds ratio, degrees of freedom informative strata - 1
 */
public record Stratified(
        Double crudeOddsRatio,
        Estimate oddsRatio,
        Double standardErrorLog,
        Estimate riskRatio,
        Estimate riskDifference,
        Double riskDifferenceStandardError,
        TestStatistic cochranMantelHaenszel,
        TestStatistic breslowDayTarone,
        List<String> warnings) {

    /** One stratum; counts are 0 or more. */
    public record Stratum(String label, int detected1, int notDetected1, int detected2, int notDetected2) {}

    /** Below this p of Breslow-Day-Tarone a warning is given. */
    private static final double DISAGREE = 0.05;

    /**
     * Pools the strata, in any order; those with nobody in them are dropped.
     *
     * @throws OutOfDomain when there is no stratum, a count is below 0 (field {@code strata[index].detected1} and so on), or
     *     {@code confidence} is not in (0, 1)
     */
    public static Stratified of(List<Stratum> strata, double confidence) {
        Domain.notEmpty("strata", strata);
        Domain.confidence(confidence);
        List<TwoByTwo> tables = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        for (int i = 0; i < strata.size(); i++) {
            TwoByTwo table = checked(strata.get(i), "strata[" + i + "].");
            if (table.total() > 0) {
                tables.add(table);
            }
        }
        if (tables.size() < strata.size()) {
            warnings.add(
                    (strata.size() - tables.size()) + " of " + strata.size() + " strata are empty and are dropped.");
        }
        double z = Normal.z(confidence);
        MantelHaenszel pooled = MantelHaenszel.of(tables);
        TestStatistic agreement = BreslowDay.of(tables, pooled.oddsRatio(), warnings);
        if (agreement.p() != null && agreement.p() < DISAGREE) {
            warnings.add(
                    "The strata disagree (Breslow-Day-Tarone p below 0.05): read them one by one, not the common odds ratio.");
        }
        return new Stratified(
                crude(tables),
                pooled.oddsRatioEstimate(z),
                pooled.oddsRatioErrorLog(),
                pooled.riskRatioEstimate(z),
                pooled.riskDifferenceEstimate(z),
                pooled.riskDifferenceError(),
                pooled.test(),
                agreement,
                List.copyOf(warnings));
    }

    private static TwoByTwo checked(Stratum stratum, String at) {
        Domain.count(at + "detected1", stratum.detected1());
        Domain.count(at + "notDetected1", stratum.notDetected1());
        Domain.count(at + "detected2", stratum.detected2());
        Domain.count(at + "notDetected2", stratum.notDetected2());
        return new TwoByTwo(stratum.detected1(), stratum.notDetected1(), stratum.detected2(), stratum.notDetected2());
    }

    private static Double crude(List<TwoByTwo> tables) {
        double a = tables.stream().mapToDouble(TwoByTwo::a).sum();
        double b = tables.stream().mapToDouble(TwoByTwo::b).sum();
        double c = tables.stream().mapToDouble(TwoByTwo::c).sum();
        double d = tables.stream().mapToDouble(TwoByTwo::d).sum();
        return a * d == 0 && b * c == 0 ? null : Double.valueOf(a * d / (b * c));
    }
}
