package org.dentary.prevalence.truth;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import org.dentary.prevalence.Words;

/**
 * Which tests the counted animals had, held against a set of test performance.
 *
 * @param counted all of them
 * @param within tested only by the set's methods on its tissues
 * @param partly tested so, and by other tests as well
 * @param outside tested by none of them: other methods or tissues, in pools only, or without a finding on record
 * @param tests what they had, most animals first; an animal with several tests is in several
 */
public record Tested(int counted, int within, int partly, int outside, List<Test> tests) {
    /**
     * Animals tested in one way.
     *
     * @param method code of the test method
     * @param methodName its name
     * @param tissue what was tested
     * @param pool together with other animals' tissue
     * @param inSet whether the set speaks of it
     */
    public record Test(String method, String methodName, String tissue, Boolean pool, Boolean inSet, Integer animals) {
        /** The tissue as a table says it. */
        @JsonIgnore
        public String getTissueWords() {
            return Words.of(tissue);
        }
    }

    public Tested {
        tests = List.copyOf(tests);
    }

    /** Whether the set speaks of every test that they had. */
    @JsonIgnore
    public boolean isWhole() {
        return within == counted;
    }
}
