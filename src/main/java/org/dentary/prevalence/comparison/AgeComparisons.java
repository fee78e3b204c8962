package org.dentary.prevalence.comparison;

import static org.dentary.prevalence.comparison.ClassCounts.AGES;
import static org.dentary.prevalence.comparison.ClassCounts.SEXES;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dentary.prevalence.Words;
import org.dentary.statistics.comparison.Stratified.Stratum;
import org.dentary.statistics.comparison.Trend;

/**
 * Age classes against each other, adjusted for sex, and the trend with age in each sex. A trend is asked of real ages that
 * the reader states: adults are an open class, and its mean age is nowhere in the counts.
 */
final class AgeComparisons {
    private static final double DEPARTS = 0.05;
    private static final int FEWEST_CLASSES = 3;

    private AgeComparisons() {}

    /** @param scores years of age by class, as stated; a class may be missing */
    static List<Draft> of(ClassCounts counts, Map<String, Double> scores, double confidence) {
        List<Draft> drafts = new ArrayList<>();
        for (int older = AGES.size() - 1; older > 0; older--) {
            for (int younger = older - 1; younger >= 0; younger--) {
                drafts.add(pair(counts, AGES.get(older), AGES.get(younger), confidence));
            }
        }
        SEXES.forEach(sex -> drafts.add(trend(counts, sex, scores)));
        return drafts;
    }

    private static Draft pair(ClassCounts counts, String older, String younger, double confidence) {
        List<Stratum> strata = SEXES.stream()
                .map(sex -> TwoGroups.stratum(
                        Words.of(sex),
                        Group.of("", counts.counted(older, sex), counts.detected(older, sex)),
                        Group.of("", counts.counted(younger, sex), counts.detected(younger, sex))))
                .toList();
        return TwoGroups.adjusted(
                ComparisonKind.AGE_ADJUSTED_FOR_SEX,
                Words.of(older) + " and " + younger.toLowerCase(Locale.ROOT),
                counts.group(List.of(older), SEXES, ClassCounts.plural(older)),
                counts.group(List.of(younger), SEXES, ClassCounts.plural(younger)),
                "sex",
                "sexes",
                strata,
                confidence);
    }

    private static Draft trend(ClassCounts counts, String sex, Map<String, Double> scores) {
        String about = Words.of(ClassCounts.plural(sex).toUpperCase(Locale.ROOT));
        List<String> tested =
                AGES.stream().filter(age -> counts.counted(age, sex) > 0).toList();
        List<Group> groups = AGES.stream()
                .map(age -> counts.group(List.of(age), List.of(sex), ClassCounts.words(age, sex)))
                .toList();
        String who = ClassCounts.plural(sex);
        if (tested.size() < FEWEST_CLASSES) {
            return not(
                    about,
                    groups,
                    "No trend is given for " + who + ": it takes at least three age classes with counted animals, and"
                            + " there are " + tested.size() + ".");
        }
        List<String> unstated =
                tested.stream().filter(age -> !scores.containsKey(age)).toList();
        if (!unstated.isEmpty()) {
            return not(
                    about,
                    groups,
                    "No trend is given for " + who + ": state the mean age in years of "
                            + String.join(
                                    ", ",
                                    unstated.stream().map(ClassCounts::plural).toList())
                            + ". Adults are an open class, so their mean age is not in the counts.");
        }
        Trend trend = Trend.of(AGES.stream()
                .map(age -> new Trend.Group(age, scores.get(age), counts.detected(age, sex), counts.counted(age, sex)))
                .toList());
        if (trend.slope() == null || trend.trend().p() == null) {
            return not(about, groups, "No trend is given for " + who + ": " + lower(trend.warnings()));
        }
        return told(about, groups, trend, scores, who);
    }

    private static Draft told(String about, List<Group> groups, Trend trend, Map<String, Double> scores, String who) {
        TestResult line = TestResult.of(trend.trend());
        TestResult departure = TestResult.of(trend.departure());
        TestResult heterogeneity = TestResult.of(trend.heterogeneity());
        boolean departs = departure.p() != null && departure.p() < DEPARTS;
        String facts = "Detected in "
                + String.join(", ", groups.stream().map(Group::told).toList())
                + ". With ages taken as " + stated(scores) + " years, " + Say.points(trend.slope())
                + " percentage points for each year of age, trend p " + Say.p(line.p()) + ", departure from a line p "
                + Say.p(departure.p()) + ".";
        return new Draft(
                ComparisonKind.AGE_TREND,
                about,
                groups,
                List.of(new Figure(
                        Figure.SLOPE,
                        trend.slope(),
                        null,
                        null,
                        "Least-squares slope, each class weighted by its size",
                        line.source(),
                        List.of("No interval is given for the slope."))),
                List.of(line, departure, heterogeneity),
                facts,
                0,
                departs
                        ? "A straight line does not describe these classes: read them one by one."
                        : (trend.slope() > 0 ? "more" : "less") + " often detected in older " + who,
                "",
                departs ? Verdict.READ_ONE_BY_ONE : null,
                trend.warnings());
    }

    private static Draft not(String about, List<Group> groups, String why) {
        return Draft.not(ComparisonKind.AGE_TREND, about, groups, why);
    }

    private static String stated(Map<String, Double> scores) {
        return String.join(
                ", ",
                AGES.stream()
                        .map(age -> String.format(Locale.ROOT, "%s", scores.get(age)))
                        .toList());
    }

    private static String lower(List<String> warnings) {
        String first = warnings.isEmpty() ? "undefined." : warnings.get(0);
        return Character.toLowerCase(first.charAt(0)) + first.substring(1);
    }
}
