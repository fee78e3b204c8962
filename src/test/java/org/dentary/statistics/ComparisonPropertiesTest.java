package org.dentary.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.dentary.statistics.comparison.Estimate;
import org.dentary.statistics.comparison.Stratified;
import org.dentary.statistics.comparison.Stratified.Stratum;
import org.dentary.statistics.comparison.TwoProportions;
import org.dentary.statistics.standardisation.Standardised;

class ComparisonPropertiesTest {

    private static final double ROUNDING = 1e-8;

    @Property(tries = 300, seed = "20261126")
    void changingTheGroupsChangesTheSignOfTheDifferenceAndInvertsTheRatio(
            @ForAll @IntRange(min = 1, max = 60) int a,
            @ForAll @IntRange(min = 1, max = 60) int b,
            @ForAll @IntRange(min = 1, max = 60) int c,
            @ForAll @IntRange(min = 1, max = 60) int d) {
        TwoProportions one = TwoProportions.of(a, a + b, c, c + d, 0.95);
        TwoProportions other = TwoProportions.of(c, c + d, a, a + b, 0.95);
        same(-one.difference().upper(), other.difference().lower());
        same(-one.difference().lower(), other.difference().upper());
        same(1 / one.riskRatio().upper(), other.riskRatio().lower());
        same(1 / one.oddsRatio().woolf().lower(), other.oddsRatio().woolf().upper());
        same(
                1 / one.oddsRatio().conditional().estimate(),
                other.oddsRatio().conditional().estimate());
        same(
                1 / one.oddsRatio().conditional().upper(),
                other.oddsRatio().conditional().lower());
        same(one.fisher().less(), other.fisher().greater());
        same(one.fisher().twoSided(), other.fisher().twoSided());
        same(one.chiSquare().statistic(), other.chiSquare().statistic());
    }

    @Property(tries = 300, seed = "20261126")
    void limitsBracketAndWidenWithConfidence(
            @ForAll @IntRange(min = 1, max = 60) int a,
            @ForAll @IntRange(min = 1, max = 60) int b,
            @ForAll @IntRange(min = 1, max = 60) int c,
            @ForAll @IntRange(min = 1, max = 60) int d,
            @ForAll @IntRange(min = 600, max = 990) int thousandths) {
        TwoProportions narrow = TwoProportions.of(a, a + b, c, c + d, thousandths / 1000.0);
        TwoProportions wide = TwoProportions.of(a, a + b, c, c + d, 0.995);
        brackets(narrow.difference(), wide.difference());
        brackets(narrow.riskRatio(), wide.riskRatio());
        brackets(narrow.oddsRatio().woolf(), wide.oddsRatio().woolf());
        brackets(narrow.oddsRatio().conditional(), wide.oddsRatio().conditional());
    }

    @Property(tries = 200, seed = "20261126")
    void copiesOfOneStratumHaveItsOddsRatioAndNeverDisagree(
            @ForAll @IntRange(min = 1, max = 60) int a,
            @ForAll @IntRange(min = 1, max = 60) int b,
            @ForAll @IntRange(min = 1, max = 60) int c,
            @ForAll @IntRange(min = 1, max = 60) int d) {
        Stratum stratum = new Stratum("", a, b, c, d);
        Stratified result = Stratified.of(List.of(stratum, stratum, stratum), 0.95);
        same((double) a * d / ((double) b * c), result.oddsRatio().estimate());
        same(
                (double) a / (a + b) - (double) c / (c + d),
                result.riskDifference().estimate());
        assertEquals(0, result.breslowDayTarone().statistic(), ROUNDING);
        assertTrue(result.oddsRatio().lower() < result.oddsRatio().estimate());
    }

    @Property(tries = 200, seed = "20261126")
    void oneStratumStandardisedIsItself(
            @ForAll @IntRange(max = 60) int detected, @ForAll @IntRange(min = 1, max = 60) int notDetected) {
        int tested = detected + notDetected;
        Standardised result = Standardised.of(List.of(new Standardised.Stratum("", detected, tested, 17)), 0.95);
        Proportion exact = Proportion.of(detected, tested, IntervalMethod.CLOPPER_PEARSON, 0.95);
        same(exact.estimate(), result.estimate());
        same(exact.lower(), result.lower());
        same(exact.upper(), result.upper());
    }

    private static void brackets(Estimate narrow, Estimate wide) {
        assertTrue(
                wide.lower() <= narrow.lower() && narrow.lower() <= narrow.estimate() + ROUNDING, narrow + " " + wide);
        assertTrue(
                narrow.estimate() <= narrow.upper() + ROUNDING && narrow.upper() <= wide.upper(), narrow + " " + wide);
    }

    private static void same(double expected, double actual) {
        assertEquals(expected, actual, ROUNDING * Math.max(1, Math.abs(expected)));
    }
}
