package org.dentary.statistics.comparison;

import java.util.List;

/** The pooled estimates behind {@link Stratified}, from sums over the strata; every stratum has at least one animal. */
final class MantelHaenszel {

    private static final String METHOD_OR = "Mantel-Haenszel odds ratio, Robins-Breslow-Greenland interval";
    private static final String METHOD_RR = "Mantel-Haenszel risk ratio, Greenland-Robins interval";
    private static final String METHOD_RD = "Mantel-Haenszel risk difference, Sato interval";
    private static final String METHOD_TEST = "Cochran-Mantel-Haenszel chi-square, no continuity correction";
    private static final String SOURCE = "Mantel & Haenszel 1959, J Natl Cancer Inst 22:719-748";
    private static final String SOURCE_OR = SOURCE + "; Robins, Breslow & Greenland 1986, Biometrics 42:311-323";
    private static final String SOURCE_RR = SOURCE + "; Greenland & Robins 1985, Biometrics 41:55-68";
    private static final String SOURCE_RD = SOURCE + "; Sato 1989, Biometrics 45:1323-1324";

    private double r;
    private double s;
    private double pr;
    private double psQr;
    private double qs;
    private double ratioAbove;
    private double ratioBelow;
    private double ratioVariance;
    private double differenceAbove;
    private double differenceBelow;
    private double satoP;
    private double satoQ;
    private double testAbove;
    private double testBelow;

    private MantelHaenszel() {}

    static MantelHaenszel of(List<TwoByTwo> tables) {
        MantelHaenszel sums = new MantelHaenszel();
        tables.forEach(sums::add);
        return sums;
    }

    private void add(TwoByTwo table) {
        double n = table.total();
        double n1 = table.n1();
        double n2 = table.n2();
        double a = table.a();
        double b = table.b();
        double c = table.c();
        double d = table.d();
        addOdds((a + d) / n, (b + c) / n, a * d / n, b * c / n);
        ratioAbove += a * n2 / n;
        ratioBelow += c * n1 / n;
        ratioVariance += (a + c) * n1 * n2 / (n * n) - a * c / n;
        differenceAbove += (a * n2 - c * n1) / n;
        differenceBelow += n1 * n2 / n;
        satoP += (n1 * n1 * c - n2 * n2 * a + n1 * n2 * (n2 - n1) / 2) / (n * n);
        satoQ += (a * d + c * b) / (2 * n);
        if (n >= 2) {
            testAbove += a - n1 * (a + c) / n;
            testBelow += n1 * n2 * (a + c) * (b + d) / (n * n * (n - 1));
        }
    }

    private void addOdds(double p, double q, double ad, double bc) {
        r += ad;
        s += bc;
        pr += p * ad;
        psQr += p * bc + q * ad;
        qs += q * bc;
    }

    /** R / S; null when both are 0, infinite when only S is. */
    Double oddsRatio() {
        return r == 0 && s == 0 ? null : Double.valueOf(r / s);
    }

    /** Robins, Breslow and Greenland's standard error of the logarithm; null when the odds ratio is 0, infinite or undefined. */
    Double oddsRatioErrorLog() {
        if (r == 0 || s == 0) {
            return null;
        }
        return Math.sqrt(pr / (2 * r * r) + psQr / (2 * r * s) + qs / (2 * s * s));
    }

    Estimate oddsRatioEstimate(double z) {
        if (oddsRatio() == null) {
            return Estimate.undefined(METHOD_OR, SOURCE_OR, "Odds ratio undefined: no stratum has a contrast.");
        }
        if (oddsRatioErrorLog() == null) {
            return Estimate.withoutLimits(
                    oddsRatio(), METHOD_OR, SOURCE_OR, "No interval: the common odds ratio is 0 or unbounded.");
        }
        return Estimate.onLogScale(oddsRatio(), oddsRatioErrorLog(), z, METHOD_OR, SOURCE_OR);
    }

    Estimate riskRatioEstimate(double z) {
        if (ratioBelow == 0) {
            return Estimate.undefined(
                    METHOD_RR,
                    SOURCE_RR,
                    "Risk ratio undefined: none detected in the second group where the first has animals.");
        }
        double ratio = ratioAbove / ratioBelow;
        if (ratioAbove == 0) {
            return Estimate.withoutLimits(
                    ratio, METHOD_RR, SOURCE_RR, "No interval: none detected in the first group.");
        }
        double error = Math.sqrt(Math.max(0, ratioVariance) / (ratioAbove * ratioBelow));
        return Estimate.onLogScale(ratio, error, z, METHOD_RR, SOURCE_RR);
    }

    /** Null when no stratum holds both groups. */
    Double riskDifferenceError() {
        if (differenceBelow == 0) {
            return null;
        }
        double difference = differenceAbove / differenceBelow;
        return Math.sqrt(Math.max(0, difference * satoP + satoQ)) / differenceBelow;
    }

    Estimate riskDifferenceEstimate(double z) {
        if (differenceBelow == 0) {
            return Estimate.undefined(METHOD_RD, SOURCE_RD, "Risk difference undefined: no stratum holds both groups.");
        }
        double difference = differenceAbove / differenceBelow;
        double half = z * riskDifferenceError();
        return Estimate.of(difference, difference - half, difference + half, METHOD_RD, SOURCE_RD);
    }

    TestStatistic test() {
        if (testBelow == 0) {
            return TestStatistic.undefined(
                    METHOD_TEST, SOURCE, "No contrast possible: no stratum has two groups and two outcomes.");
        }
        return TestStatistic.chiSquare(testAbove * testAbove / testBelow, 1, METHOD_TEST, SOURCE);
    }
}
