package org.dentary.prevalence.comparison;

import static org.dentary.prevalence.comparison.ClassCounts.AGES;
import static org.dentary.prevalence.comparison.ClassCounts.SEXES;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.Words;
import org.dentary.statistics.comparison.Stratified.Stratum;
import org.dentary.statistics.standardisation.Standardised;
import org.dentary.statistics.standardisation.StandardisedDifference;

/** One season against another: as counted, adjusted for age class and sex, and standardised to a herd. */
final class SeasonComparisons {
    private SeasonComparisons() {}

    /**
     * Both reports by age class and sex.
     *
     * @param called what people call a season of that code
     */
    static List<Draft> of(
            PrevalenceReport here, PrevalenceReport there, UnaryOperator<String> called, double confidence) {
        Group now = all(here, called);
        Group then = all(there, called);
        String about = called.apply(here.season()) + " and " + called.apply(there.season());
        ClassCounts counts = ClassCounts.of(here);
        ClassCounts others = ClassCounts.of(there);
        List<Stratum> strata = new ArrayList<>();
        for (String age : AGES) {
            for (String sex : SEXES) {
                strata.add(TwoGroups.stratum(
                        ClassCounts.words(age, sex),
                        Group.of("", counts.counted(age, sex), counts.detected(age, sex)),
                        Group.of("", others.counted(age, sex), others.detected(age, sex))));
            }
        }
        return List.of(
                mind(TwoGroups.compare(ComparisonKind.SEASONS_CRUDE, about, now, then, confidence)),
                TwoGroups.adjusted(
                        ComparisonKind.SEASONS_ADJUSTED,
                        about,
                        counts.group(AGES, SEXES, now.label()),
                        others.group(AGES, SEXES, then.label()),
                        "age class and sex",
                        "classes",
                        strata,
                        confidence));
    }

    private static Draft mind(Draft crude) {
        List<String> notes = new ArrayList<>(crude.notes());
        notes.add(
                "The mix of age classes, sexes and places sampled may differ between seasons; this difference holds it"
                        + " in. Animals of unknown age or sex are counted here.");
        return new Draft(
                crude.kind(),
                crude.about(),
                crude.groups(),
                crude.figures(),
                crude.tests(),
                crude.facts(),
                crude.none(),
                crude.shown(),
                crude.compatible(),
                crude.stop(),
                notes);
    }

    /**
     * Each season standardised to the herd, and their difference if there are two.
     *
     * @param there null for one season alone
     * @throws InvalidInput if a class with counted animals has no weight
     */
    static List<Draft> standardised(
            PrevalenceReport here,
            PrevalenceReport there,
            HerdStructure herd,
            UnaryOperator<String> called,
            double confidence) {
        List<Draft> drafts = new ArrayList<>();
        Standardised now = add(drafts, here, herd, called, confidence);
        if (there == null) {
            return drafts;
        }
        Standardised then = add(drafts, there, herd, called, confidence);
        String hereIs = called.apply(here.season());
        String thereIs = called.apply(there.season());
        String about = hereIs + " and " + thereIs;
        List<Group> groups = List.of(all(here, called), all(there, called));
        if (now == null || then == null) {
            drafts.add(Draft.not(
                    ComparisonKind.SEASONS_STANDARDIZED,
                    about,
                    groups,
                    "Not compared: one of the seasons cannot be standardized to this herd."));
            return drafts;
        }
        Figure difference = Figure.of(Figure.DIFFERENCE, StandardisedDifference.of(now, then));
        drafts.add(new Draft(
                ComparisonKind.SEASONS_STANDARDIZED,
                about,
                groups,
                List.of(difference),
                List.of(),
                "Standardized to " + herd.told() + ", " + percent(now.estimate(), groups.get(0)) + " in " + hereIs
                        + " and " + percent(then.estimate(), groups.get(1)) + " in "
                        + thereIs + "; difference " + Say.difference(difference, confidence) + ".",
                0,
                TwoGroups.higher(groups.get(0), groups.get(1), difference.estimate() > 0)
                        + " once both have the herd's age classes and sexes",
                Say.allows(difference, groups.get(0).label(), groups.get(1).label()),
                null,
                List.of("Read by its interval alone; it is not among the tests that were adjusted for their number.")));
        return drafts;
    }

    private static Standardised add(
            List<Draft> drafts,
            PrevalenceReport report,
            HerdStructure herd,
            UnaryOperator<String> called,
            double confidence) {
        String season = called.apply(report.season());
        ClassCounts counts = ClassCounts.of(report);
        weightsForAll(counts, herd, report.season());
        List<String> empty = new ArrayList<>();
        List<Standardised.Stratum> strata = new ArrayList<>();
        for (String age : AGES) {
            for (String sex : SEXES) {
                Integer weight = herd.animals(age, sex);
                if (weight != null && weight > 0) {
                    strata.add(new Standardised.Stratum(
                            ClassCounts.words(age, sex), counts.detected(age, sex), counts.counted(age, sex), weight));
                    if (counts.counted(age, sex) == 0) {
                        empty.add(ClassCounts.words(age, sex));
                    }
                }
            }
        }
        Group known = counts.group(AGES, SEXES, "animals of " + season);
        if (!empty.isEmpty() || strata.isEmpty()) {
            drafts.add(Draft.not(
                    ComparisonKind.STANDARDIZED,
                    season,
                    List.of(known),
                    "Not standardized: the herd has " + String.join(", ", empty) + ", and " + season
                            + " has counted none of them. Nothing stands in for a class that was not sampled."));
            return null;
        }
        Standardised standardised = Standardised.of(strata, confidence);
        drafts.add(new Draft(
                ComparisonKind.STANDARDIZED,
                season,
                List.of(known),
                List.of(new Figure(
                        Figure.PREVALENCE,
                        standardised.estimate(),
                        standardised.lower(),
                        standardised.upper(),
                        standardised.method(),
                        standardised.source(),
                        List.of())),
                List.of(),
                "",
                0,
                "Standardized to " + herd.told() + ", prevalence in " + season + " is "
                        + percent(standardised.estimate(), known) + " (" + Say.level(confidence) + " interval "
                        + percent(standardised.lower(), known) + " to " + percent(standardised.upper(), known)
                        + "); as counted it is " + percent(standardised.crude(), known) + ".",
                "",
                Verdict.ESTIMATE,
                standardised.warnings()));
        return standardised;
    }

    private static void weightsForAll(ClassCounts counts, HerdStructure herd, String season) {
        for (String age : AGES) {
            for (String sex : SEXES) {
                if (counts.counted(age, sex) > 0 && herd.animals(age, sex) == null) {
                    throw InvalidInput.field(
                            "herd",
                            "WEIGHT_MISSING",
                            "herd structure '" + herd.code() + "' has no row for " + ClassCounts.words(age, sex)
                                    + ", of which season " + season + " counted " + counts.counted(age, sex)
                                    + "; import a structure with that class under a code of its own (0 animals leave the"
                                    + " class out openly), or choose another herd");
                }
            }
        }
    }

    private static Group all(PrevalenceReport report, UnaryOperator<String> called) {
        PrevalenceCell total = report.total();
        return Group.of("animals of " + called.apply(report.season()), total.counted(), total.detected());
    }

    private static String percent(double share, Group of) {
        return String.format(Locale.ROOT, "%s", Words.percent(share, of.counted()));
    }
}
