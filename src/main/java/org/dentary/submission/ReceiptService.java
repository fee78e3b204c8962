package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.custody.Arrival;
import org.dentary.custody.ParcelService;
import org.dentary.custody.discrepancy.DiscrepancyService;
import org.dentary.custody.discrepancy.PutDiscrepancy;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.kit.KitService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.ETags;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.state.States;
import org.dentary.submission.packing.PackedView;

/** Counts in what a laboratory received, and what its results imply that it has. */
@ApplicationScoped
public class ReceiptService {
    private final SubmissionService submissions;
    private final SubmissionQueries queries;
    private final SubmissionWrites writes;
    private final KitService kits;
    private final ParcelService parcels;
    private final DiscrepancyService discrepancies;
    private final EvidenceService evidence;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Event<OrdersChanged> ordersChanged;

    ReceiptService(
            SubmissionService submissions,
            SubmissionQueries queries,
            SubmissionWrites writes,
            KitService kits,
            ParcelService parcels,
            DiscrepancyService discrepancies,
            EvidenceService evidence,
            RepeatableRequests requests,
            CurrentAccount account,
            Event<OrdersChanged> ordersChanged) {
        this.submissions = submissions;
        this.queries = queries;
        this.writes = writes;
        this.kits = kits;
        this.parcels = parcels;
        this.discrepancies = discrepancies;
        this.evidence = evidence;
        this.requests = requests;
        this.account = account;
        this.ordersChanged = ordersChanged;
    }

    /**
     * Counts in what arrived. What is missing becomes short, what is on no list over, each a discrepancy; a later receipt
     * adds codes and removes none. What was said to have come back and is counted in all the same is a discrepancy too: the
     * laboratory has it from then on, unless it was packed for another since; then it is over, and custody is left alone.
     * Photographs go with every entry that the count makes.
     *
     * @throws InvalidInput for photographs that no entry can hold, because nothing new was counted
     * @throws RuleBroken (409) if it has not left, or other content was received and no If-Match is sent
     */
    @Transactional
    public SubmissionService.Done receive(UUID id, Receipt command, String ifMatch) {
        writes.lock(id);
        SubmissionQueries.Head head = submissions.require(id);
        boolean counted = head.state().equals("RECEIVED");
        // The first count may name the submission that was read; its tag is the only one there is.
        boolean first = !counted && ifMatch != null && ETags.matches(ifMatch, head.version());
        Seen seen = requests.compare(
                "receipt of submission",
                id.toString(),
                command,
                first ? null : ifMatch,
                counted ? head.version() : null);
        if (seen == Seen.REPLAY) {
            return new SubmissionService.Done(submissions.view(id), false);
        }
        States.require("submission", String.valueOf(head.number()), head.state(), "receive");
        submissions.refuseFuture("receivedAt", command.receivedAt());
        List<PackedView> packed = queries.packed(id, Sight.of(account.get()));
        Set<String> listed = packed.stream().map(PackedView::code).collect(Collectors.toCollection(TreeSet::new));
        Set<String> takenBack = packed.stream()
                .filter(piece -> "RECALLED".equals(piece.receipt()))
                .map(PackedView::code)
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> arrived = new TreeSet<>();
        Set<String> over = new TreeSet<>();
        for (String typed : command.codes()) {
            String code = Typed.code(typed);
            (listed.contains(code) ? arrived : over).add(code);
        }
        Set<String> damaged = command.damaged() == null
                ? Set.of()
                : command.damaged().stream().map(Typed::code).collect(Collectors.toSet());
        // What arrived damaged did arrive, on a list or not.
        damaged.forEach(code -> (listed.contains(code) ? arrived : over).add(code));
        takenBack.retainAll(arrived);
        Set<String> elsewhere = takenBack.isEmpty() ? Set.of() : new TreeSet<>(queries.packedSince(id, takenBack));
        arrived.removeAll(elsewhere);
        over.addAll(elsewhere);
        takenBack.removeAll(elsewhere);
        int entries = count(id, head.laboratory(), arrived, damaged, over, command)
                + discrepancies.openAll(
                        takenBack,
                        PutDiscrepancy.Kind.OVER,
                        "taken back before, and counted in all the same",
                        id.toString(),
                        command.photos());
        requireShown(command.photos(), entries);
        requests.accept("receipt of submission", id.toString(), command);
        ordersChanged.fire(new OrdersChanged(listed));
        return new SubmissionService.Done(submissions.view(id), seen == Seen.NEW);
    }

    private int count(
            UUID id, String laboratory, Set<String> arrived, Set<String> damaged, Set<String> over, Receipt command) {
        Instant at = command.receivedAt().toInstant();
        writes.receive(
                id, arrived, damaged, over, at, command.source() == null ? Receipt.Source.SCAN : command.source());
        int entries = 0;
        if (!arrived.isEmpty()) {
            entries += parcels.receive(new Arrival(
                            List.copyOf(arrived),
                            laboratory,
                            at,
                            command.enteredAt() == null
                                    ? null
                                    : command.enteredAt().toInstant(),
                            command.reason() == null ? "counted in at the laboratory" : command.reason(),
                            id,
                            command.photos()))
                    .size();
        }
        List<String> missing = queries.packed(id, Sight.of(account.get())).stream()
                .filter(piece -> "SHORT".equals(piece.receipt()))
                .map(PackedView::code)
                .toList();
        String subject = id.toString();
        List<UUID> photos = command.photos();
        entries +=
                discrepancies.openAll(missing, PutDiscrepancy.Kind.SHORT, "sent and not counted in", subject, photos);
        // A discrepancy hangs on a label of ours; what is none stays in the list of what came over.
        entries +=
                discrepancies.openAll(ours(damaged), PutDiscrepancy.Kind.DAMAGED, "arrived damaged", subject, photos);
        return entries
                + discrepancies.openAll(
                        ours(over),
                        PutDiscrepancy.Kind.OVER,
                        "counted in, and on no list or taken back and packed for another laboratory since",
                        subject,
                        photos);
    }

    /** The same count sent twice names photographs that entries show already. */
    private void requireShown(List<UUID> photos, int entries) {
        if (entries == 0 && !evidence.isEachShown(photos)) {
            throw InvalidInput.field(
                    "photos",
                    "NO_ENTRY_FOR_PHOTOS",
                    "Nothing new was counted, so that no entry can hold a photo; record it as an event of the"
                            + " specimens, or with what does not add up");
        }
    }

    private Set<String> ours(Set<String> given) {
        return kits.find(given).values().stream()
                .map(label -> label.code())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /**
     * Marks specimens as received because a result says that the laboratory has them. What was counted and custody stay as
     * they were recorded.
     */
    @Transactional
    public void impliedReceipt(Collection<String> codes, String laboratory, Instant at) {
        writes.implied(codes, laboratory, at);
    }
}
