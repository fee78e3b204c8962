package org.dentary.prevalence.comparison;

import static org.dentary.prevalence.comparison.ClassCounts.AGES;

import java.util.ArrayList;
import java.util.List;
import org.dentary.prevalence.Words;
import org.dentary.statistics.comparison.Stratified.Stratum;

/** Males against females: within each age class, and over all of them adjusted for age class. */
final class SexComparisons {
    private SexComparisons() {}

    static List<Draft> of(ClassCounts counts, double confidence) {
        List<Draft> drafts = new ArrayList<>();
        for (String age : AGES) {
            drafts.add(TwoGroups.compare(
                    ComparisonKind.SEX_WITHIN_AGE_CLASS,
                    Words.of(age),
                    counts.group(List.of(age), List.of("MALE"), ClassCounts.words(age, "MALE")),
                    counts.group(List.of(age), List.of("FEMALE"), ClassCounts.words(age, "FEMALE")),
                    confidence));
        }
        List<Stratum> strata = AGES.stream()
                .map(age -> TwoGroups.stratum(
                        Words.of(age),
                        Group.of("", counts.counted(age, "MALE"), counts.detected(age, "MALE")),
                        Group.of("", counts.counted(age, "FEMALE"), counts.detected(age, "FEMALE"))))
                .toList();
        drafts.add(TwoGroups.adjusted(
                ComparisonKind.SEX_ADJUSTED_FOR_AGE,
                "Males and females",
                counts.group(AGES, List.of("MALE"), "males"),
                counts.group(AGES, List.of("FEMALE"), "females"),
                "age class",
                "age classes",
                strata,
                confidence));
        return drafts;
    }
}
