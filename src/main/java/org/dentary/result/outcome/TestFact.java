package org.dentary.result.outcome;

import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;

/**
 * A finding as the outcome rules see it.
 *
 * @param specimens this animal's specimens that it names; never empty
 * @param accepted whether the method's word counts on that tissue
 * @param pool whether it names specimens of other animals too
 * @param adjunctCounts whether the plan lets this method's adjunct findings move an outcome
 * @param corrects the finding it replaces, or null
 * @param where tissue and side in words, such as "left node"
 */
record TestFact(
        UUID id,
        String method,
        Stage stage,
        FindingWord word,
        FindingStatus status,
        LocalDate testedOn,
        Set<String> specimens,
        boolean accepted,
        boolean pool,
        boolean adjunctCounts,
        UUID corrects,
        String where) {
    TestFact {
        specimens = Set.copyOf(specimens);
    }

    /** Where it ranks among the stages; an adjunct that counts ranks as a screening. */
    int rank() {
        return stage == Stage.ADJUNCT ? Stage.SCREENING.ordinal() : stage.ordinal();
    }

    /** As an explanation names it. */
    String told() {
        return word.words() + ": " + where + ", " + stage.name().toLowerCase(java.util.Locale.ROOT) + " " + method
                + ", "
                + status.name().toLowerCase(java.util.Locale.ROOT)
                + (testedOn == null ? "" : ", tested " + testedOn);
    }
}
