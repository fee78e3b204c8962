package org.dentary.platform.page;

import java.util.List;
import org.dentary.platform.account.Act;

/**
 * One stop of the navigation.
 *
 * @param path where it leads
 * @param words what it is called
 * @param act who sees it: those who may do this act
 * @param here whether the page at hand belongs to it
 */
public record Stop(String path, String words, String act, boolean here) {
    /** The stops in the order a sample travels. */
    static final List<Stop> ALL = List.of(
            new Stop("/season", "Season", Act.SET_UP, false),
            new Stop("/kits", "Kits", Act.LABEL_PRINT, false),
            new Stop("/intake", "Intake", Act.INTAKE, false),
            new Stop("/animals", "Animals", Act.ANIMAL_READ, false),
            new Stop("/jaws", "Jaws", Act.ANIMAL_READ, false),
            new Stop("/custody", "Custody", Act.CUSTODY_WRITE, false),
            new Stop("/ledger", "Ledger", Act.LEDGER_READ, false),
            new Stop("/submissions", "Submissions", Act.SUBMISSION_READ, false),
            new Stop("/results", "Results", Act.RESULT_READ, false),
            new Stop("/notifications", "Telling", Act.NOTIFICATION_READ, false),
            new Stop("/prevalence", "Prevalence", Act.REPORT_READ, false),
            new Stop("/calculators", "Calculators", Act.READ_COMMON, false));

    Stop at(String page) {
        return new Stop(path, words, act, page.equals(path) || page.startsWith(path + "/"));
    }
}
