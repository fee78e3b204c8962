package org.dentary.result;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.dentary.platform.problem.FieldProblem;

/** What every finding must hold, whether typed by hand or read from a file. */
public final class FindingRules {
    private FindingRules() {}

    /**
     * Faults in a finding taken by itself.
     *
     * @param today the service's day; a report of tomorrow is allowed for time zones ahead
     * @return in the order of the fields; empty if there are none
     */
    public static List<FieldProblem> check(
            FindingWord finding,
            FindingStatus status,
            Stage stage,
            FindingReason reason,
            LocalDate testedOn,
            LocalDate reportedOn,
            LocalDate collectedOn,
            LocalDate today) {
        List<FieldProblem> faults = new ArrayList<>();
        boolean needsReason = finding == FindingWord.UNSUITABLE || finding == FindingWord.NOT_TESTED;
        if (needsReason && reason == null) {
            faults.add(new FieldProblem(
                    "reason",
                    "REASON_REQUIRED",
                    finding + " needs a reason; choose one from the list, OTHER with care"));
        }
        if (finding == FindingWord.UNSUITABLE
                && reason != null
                && !reason.isOfTissue()
                && reason != FindingReason.OTHER) {
            faults.add(
                    new FieldProblem(
                            "reason",
                            "REASON_NOT_OF_TISSUE",
                            reason
                                    + " is administrative, not about the tissue; say NOT_TESTED with it, or give a tissue reason"));
        }
        if (finding == FindingWord.SUSPECT && stage == Stage.CONFIRMATORY && status.isFinal()) {
            faults.add(new FieldProblem(
                    "finding",
                    "SUSPECT_IS_NOT_FINAL",
                    "a confirmatory test ends detected, not detected or inconclusive; SUSPECT stands only before it"));
        }
        if (testedOn == null && finding.speaksOfTheAnimal()) {
            faults.add(new FieldProblem("testedOn", "REQUIRED", "the day of the test is missing"));
        }
        if (reportedOn.isAfter(today.plusDays(1))) {
            faults.add(new FieldProblem(
                    "reportedOn",
                    "REPORTED_IN_THE_FUTURE",
                    "reported on " + reportedOn + ", which is still to come (today is " + today + ")"));
        }
        if (testedOn != null && testedOn.isAfter(reportedOn)) {
            faults.add(new FieldProblem(
                    "testedOn",
                    "TESTED_AFTER_REPORT",
                    "tested on " + testedOn + ", after the report of " + reportedOn + "; check both days"));
        }
        if (testedOn != null && collectedOn != null && testedOn.isBefore(collectedOn)) {
            faults.add(new FieldProblem(
                    "testedOn",
                    "TESTED_BEFORE_COLLECTED",
                    "tested on " + testedOn + ", but the tissue was collected on " + collectedOn
                            + "; check the day, or whether the tube is the one named"));
        }
        return faults;
    }
}
