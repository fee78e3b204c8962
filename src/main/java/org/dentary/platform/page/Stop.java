package org.dentary.platform.page;

import java.util.List;
import java.util.stream.Stream;
import org.dentary.platform.account.Act;

/**
 * One stop of the navigation.
 *
 * @param path where it leads
 * @param words what it is called
 * @param act who sees it: those who may do this act
 * @param also first parts of other paths that belong to it
 * @param here whether the page at hand belongs to it
 */
public record Stop(String path, String words, String act, List<String> also, boolean here) {
    /** The stops in the order a sample travels. */
    static final List<Stop> ALL = List.of(
            new Stop("/season", "Season", Act.SET_UP),
            new Stop("/kits", "Kits", Act.LABEL_PRINT),
            new Stop("/intake", "Intake", Act.INTAKE, "/day"),
            new Stop("/animals", "Animals", Act.ANIMAL_READ),
            new Stop("/jaws", "Jaws", Act.ANIMAL_READ, "/jaw-key", "/practice", "/readers"),
            new Stop("/custody", "Custody", Act.CUSTODY_WRITE, "/specimens", "/boxes"),
            new Stop("/ledger", "Ledger", Act.LEDGER_READ),
            new Stop("/submissions", "Submissions", Act.SUBMISSION_READ, "/unsuitable-tissue"),
            new Stop("/results", "Results", Act.RESULT_READ, "/incidents", "/reviews", "/column-maps", "/code-maps"),
            new Stop("/notifications", "Telling", Act.NOTIFICATION_READ, "/corrections"),
            new Stop(
                    "/prevalence",
                    "Prevalence",
                    Act.REPORT_READ,
                    "/line-list",
                    "/data-cuts",
                    "/true-prevalence",
                    "/chance-of-detection",
                    "/pictures",
                    "/saved-questions"),
            new Stop("/calculators", "Calculators", Act.READ_COMMON));

    private Stop(String path, String words, String act, String... also) {
        this(path, words, act, List.of(also), false);
    }

    Stop at(String page) {
        boolean here = Stream.concat(Stream.of(path), also.stream())
                .anyMatch(part -> page.equals(part) || page.startsWith(part + "/"));
        return new Stop(path, words, act, also, here);
    }
}
