package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.dentary.custody.ParcelService;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.event.CustodyEventService;
import org.dentary.custody.event.RecordCustodyEvent;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.state.States;
import org.dentary.submission.packing.PackedView;

/** Takes back what was sent. */
@ApplicationScoped
public class RecallService {
    private static final String RECALLED = "RECALLED";

    private final SubmissionService submissions;
    private final SubmissionQueries queries;
    private final SubmissionWrites writes;
    private final CustodyEventService custodyEvents;
    private final ParcelService parcels;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Event<OrdersChanged> ordersChanged;

    RecallService(
            SubmissionService submissions,
            SubmissionQueries queries,
            SubmissionWrites writes,
            CustodyEventService custodyEvents,
            ParcelService parcels,
            RepeatableRequests requests,
            CurrentAccount account,
            Event<OrdersChanged> ordersChanged) {
        this.submissions = submissions;
        this.queries = queries;
        this.writes = writes;
        this.custodyEvents = custodyEvents;
        this.parcels = parcels;
        this.requests = requests;
        this.account = account;
        this.ordersChanged = ordersChanged;
    }

    /**
     * Takes back what was sent, whole or in part: custody is the account's again, and the pieces can be packed for another
     * laboratory.
     *
     * @throws RuleBroken (409) if it has not left, or a code is not in it, or came back already, or is with nobody
     * @throws InvalidInput for times that cannot be, or without a reason
     */
    @Transactional
    public SubmissionView recall(UUID id, Recall command) {
        writes.lock(id);
        SubmissionQueries.Head head = submissions.require(id);
        String key = id + "/" + (command.codes() == null ? "all" : new TreeSet<>(command.codes()));
        String mine = key + "/" + account.get().actor();
        List<PackedView> packed = queries.packed(id, Sight.of(account.get()));
        Set<String> back = new TreeSet<>();
        if (command.codes() == null) {
            packed.stream().filter(piece -> piece.receipt() == null).forEach(piece -> back.add(piece.code()));
        } else {
            command.codes().forEach(typed -> back.add(Typed.code(typed)));
        }
        Map<String, String> receipts = new HashMap<>();
        packed.forEach(piece -> receipts.put(piece.code(), piece.receipt() == null ? "" : piece.receipt()));
        boolean allBack = back.stream().allMatch(code -> RECALLED.equals(receipts.get(code)));
        if (allBack && requests.compare("recall", mine, command, "*", 0) == Seen.REPLAY) {
            return submissions.view(id);
        }
        States.require("submission", String.valueOf(head.number()), head.state(), "recall");
        List<FieldProblem> faults = new ArrayList<>();
        back.stream()
                .filter(code -> !receipts.containsKey(code) || RECALLED.equals(receipts.get(code)))
                .forEach(code -> faults.add(new FieldProblem(
                        "codes",
                        receipts.containsKey(code) ? "RECALLED_ALREADY" : "NOT_IN_IT",
                        code + (receipts.containsKey(code) ? " came back already" : " was not sent with it"))));
        if (!faults.isEmpty() || back.isEmpty()) {
            throw new RuleBroken(
                    "NOTHING_TO_RECALL",
                    back.isEmpty()
                            ? "everything in submission " + head.number() + " was counted in; name what comes back"
                            : faults.get(0).message() + "; take back only what is on its way or at the laboratory",
                    faults);
        }
        custodyEvents.record(
                UUID.nameUUIDFromBytes(("recall/" + key + "/" + command.occurredAt()).getBytes(StandardCharsets.UTF_8)),
                new RecordCustodyEvent(
                        returning(back),
                        CustodyKind.RETURNED,
                        command.occurredAt(),
                        null,
                        null,
                        null,
                        null,
                        null,
                        command.reason(),
                        command.enteredAt(),
                        null,
                        null,
                        List.of(),
                        null),
                null);
        writes.recall(id, back);
        requests.accept("recall", mine, command);
        ordersChanged.fire(new OrdersChanged(back));
        return submissions.view(id);
    }

    /** What comes back, with the boxes that hold nothing else. */
    private List<String> returning(Set<String> back) {
        Set<String> all = new TreeSet<>(back);
        all.addAll(parcels.boxesAlong(back, List.of()));
        return List.copyOf(all);
    }
}
