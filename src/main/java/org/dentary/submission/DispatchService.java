package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.UUID;
import org.dentary.custody.ParcelService;
import org.dentary.custody.Shipment;
import org.dentary.kit.KitService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.state.States;
import org.dentary.submission.packing.PackedView;
import org.dentary.submission.packing.PackingCheck;
import org.dentary.submission.packing.Verdict;

/** Sends what is packed, judged once more by the rules of packing, for much may have become known since. */
@ApplicationScoped
class DispatchService {
    private final SubmissionService submissions;
    private final SubmissionQueries queries;
    private final SubmissionWrites writes;
    private final PackingCheck check;
    private final KitService kits;
    private final ParcelService parcels;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Clock clock;
    private final Event<OrdersChanged> ordersChanged;

    DispatchService(
            SubmissionService submissions,
            SubmissionQueries queries,
            SubmissionWrites writes,
            PackingCheck check,
            KitService kits,
            ParcelService parcels,
            RepeatableRequests requests,
            CurrentAccount account,
            Clock clock,
            Event<OrdersChanged> ordersChanged) {
        this.submissions = submissions;
        this.queries = queries;
        this.writes = writes;
        this.check = check;
        this.kits = kits;
        this.parcels = parcels;
        this.requests = requests;
        this.account = account;
        this.clock = clock;
        this.ordersChanged = ordersChanged;
    }

    /**
     * Gives the parcel to the carrier, whose custody begins.
     *
     * @throws InvalidInput (422) naming every code against which something speaks that no reason passed at packing
     * @throws RuleBroken (409) if it is empty or has left, or somebody else holds a piece of it
     */
    @Transactional
    public SubmissionView dispatch(UUID id, Dispatch command) {
        writes.lock(id);
        SubmissionQueries.Head head = submissions.require(id);
        String key = id + "/dispatch";
        if (!head.state().equals("PACKING")
                && account.get().actor().equals(head.dispatchedBy())
                && requests.compare("dispatch", key, command, "*", 0) == Seen.REPLAY) {
            return submissions.view(id);
        }
        States.require("submission", String.valueOf(head.number()), head.state(), "dispatch");
        if (head.packed() == 0) {
            throw new RuleBroken("NOTHING_PACKED", "submission " + head.number() + " is empty; pack it first");
        }
        List<PackedView> packed = queries.packed(id, Sight.of(account.get()));
        List<String> codes = packed.stream().map(PackedView::code).toList();
        kits.hold(codes);
        judge(id, head, packed, command);
        parcels.ship(new Shipment(
                codes,
                command.carrier(),
                command.waybill(),
                command.occurredAt().toInstant(),
                command.enteredAt() == null ? null : command.enteredAt().toInstant(),
                command.reason(),
                id,
                null,
                List.copyOf(new TreeSet<>(packed.stream()
                        .map(PackedView::box)
                        .filter(Objects::nonNull)
                        .toList()))));
        writes.dispatch(
                id,
                command.carrier(),
                command.waybill(),
                command.shipper(),
                command.occurredAt().toInstant(),
                account.get().actor());
        requests.accept("dispatch", key, command);
        ordersChanged.fire(new OrdersChanged(codes));
        return submissions.view(id);
    }

    private void judge(UUID id, SubmissionQueries.Head head, List<PackedView> packed, Dispatch command) {
        Instant left = command.occurredAt().toInstant();
        List<Verdict> verdicts = check.leaving(id, head.laboratory(), packed, left);
        boolean isReasoned =
                command.overrideReason() != null && !command.overrideReason().isBlank();
        List<FieldProblem> faults = verdicts.stream()
                .flatMap(one -> one.named().faults(isReasoned).stream())
                .toList();
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        if (!verdicts.isEmpty()) {
            writes.pass(id, verdicts, command.overrideReason().strip());
        }
    }

    /**
     * What would speak against sending it now, by code; nothing once it has left.
     *
     * @throws org.dentary.platform.problem.NotFound for an id that is none
     */
    List<Verdict> standing(UUID id) {
        SubmissionQueries.Head head = submissions.require(id);
        return head.state().equals("PACKING")
                ? check.standing(id, head.laboratory(), queries.packed(id, Sight.of(account.get())), clock.instant())
                : List.of();
    }
}
