package org.dentary.custody.event;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;

/** What each kind of custody event needs to be told. */
final class EventRules {
    private static final Set<CustodyKind> NEED_REASON =
            Set.of(CustodyKind.LOST, CustodyKind.DESTROYED, CustodyKind.HOLD_PLACED, CustodyKind.CORRECTED);
    private static final Set<CustodyKind> NEED_PLACE =
            Set.of(CustodyKind.STORED, CustodyKind.MOVED, CustodyKind.FORWARDED);

    private EventRules() {}

    /** @throws InvalidInput naming every field that is missing or does not belong to the kind */
    static void require(RecordCustodyEvent event) {
        List<FieldProblem> faults = new ArrayList<>();
        CustodyKind kind = event.kind();
        if (!kind.isByHand()) {
            faults.add(new FieldProblem(
                    "kind",
                    "KIND_NOT_BY_HAND",
                    kind + " comes about by its own act (intake, hand-over, box, submission, discrepancy) and is not"
                            + " recorded by itself"));
        }
        need(faults, "reason", NEED_REASON.contains(kind), event.reason(), kind + " needs a reason");
        need(faults, "place", NEED_PLACE.contains(kind), event.place(), kind + " needs a place");
        need(
                faults,
                "temperatureCelsius",
                kind == CustodyKind.TEMPERATURE_READ,
                event.temperatureCelsius(),
                "TEMPERATURE_READ needs the temperature in degrees Celsius");
        need(
                faults,
                "tamperSeal",
                kind == CustodyKind.TAMPER_SEAL_APPLIED,
                event.tamperSeal(),
                "TAMPER_SEAL_APPLIED needs the seal's number");
        need(
                faults,
                "corrects",
                kind == CustodyKind.CORRECTED,
                event.corrects(),
                "CORRECTED needs the id of the event that it corrects");
        if (kind != CustodyKind.DESTROYED
                && event.witness() != null
                && !event.witness().isBlank()) {
            faults.add(new FieldProblem("witness", "NOT_FOR_THIS_KIND", "only for DESTROYED is said who stood by"));
        }
        if (kind != CustodyKind.CORRECTED && event.corrects() != null) {
            faults.add(new FieldProblem("corrects", "NOT_FOR_THIS_KIND", "only CORRECTED corrects another event"));
        }
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
    }

    private static void need(List<FieldProblem> faults, String field, boolean needed, Object value, String message) {
        if (needed && (value == null || value.toString().isBlank())) {
            faults.add(new FieldProblem(field, "REQUIRED", message));
        }
    }
}
