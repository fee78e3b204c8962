package org.dentary.result.incident;

import java.util.List;
import java.util.Optional;
import org.dentary.platform.problem.FieldProblem;

/** What an incident needs before a step, a telling or its closing is taken. */
final class IncidentRules {
    private IncidentRules() {}

    /** What is wrong with a step's settling, if anything. */
    static Optional<FieldProblem> problem(IncidentStep kind, SettleStep step) {
        boolean noted = step.note() != null && !step.note().isBlank();
        boolean needsNote = step.state() == SettleStep.State.NOT_POSSIBLE
                || step.state() == SettleStep.State.DONE && kind == IncidentStep.CONFIRM_IDENTITY;
        return needsNote && !noted
                ? Optional.of(new FieldProblem(
                        "note",
                        "REQUIRED",
                        kind == IncidentStep.CONFIRM_IDENTITY
                                ? "Say how identity was confirmed and by which laboratory, or why no DNA could be had"
                                : "Say why this was not possible"))
                : Optional.empty();
    }

    /** Why an incident cannot be closed so; empty where it can. */
    static List<String> hindrances(IncidentView incident, boolean confirmed) {
        List<String> open = incident.steps().stream()
                .filter(step -> step.state().equals("OPEN"))
                .map(step -> "step " + step.kind() + " is open")
                .toList();
        List<String> untold = confirmed
                ? incident.tellings().stream()
                        .filter(telling -> telling.toldAt() == null)
                        .map(telling -> "not told yet: " + telling.whom())
                        .toList()
                : List.of();
        boolean detected = incident.animals().stream()
                .anyMatch(animal -> animal.derivedOutcome().equals("DETECTED"));
        boolean suspected = incident.animals().stream()
                .anyMatch(animal -> animal.derivedOutcome().equals("SUSPECT"));
        List<String> outcome = confirmed && !detected
                ? List.of("no animal of it is detected")
                : !confirmed && (detected || suspected)
                        ? List.of("an animal of it is still suspect or detected")
                        : List.of();
        return java.util.stream.Stream.of(open, untold, outcome)
                .flatMap(List::stream)
                .toList();
    }
}
