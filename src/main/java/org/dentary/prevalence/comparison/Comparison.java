package org.dentary.prevalence.comparison;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;

/**
 * One comparison, told.
 *
 * @param kind which of the comparisons
 * @param about what it is of, such as an age class or two
 * @param groups its sides; for a trend every class in order
 * @param figures the first is the one that the sentence tells
 * @param tests the first is the one that decides
 * @param verdict what it comes to
 * @param sentence all of it in plain words
 * @param notes what to mind about it
 */
public record Comparison(
        ComparisonKind kind,
        String about,
        List<Group> groups,
        List<Figure> figures,
        List<TestResult> tests,
        Verdict verdict,
        String sentence,
        List<String> notes) {
    /** The figure told first, or null. */
    @JsonIgnore
    public Figure figure() {
        return figures.isEmpty() ? null : figures.get(0);
    }

    /** The test that decides, or null. */
    @JsonIgnore
    public TestResult test() {
        return tests.isEmpty() ? null : tests.get(0);
    }
}
