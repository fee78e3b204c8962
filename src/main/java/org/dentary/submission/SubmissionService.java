package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.custody.CustodyService;
import org.dentary.custody.box.BoxService;
import org.dentary.custody.box.Packing;
import org.dentary.kit.KitService;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.state.States;
import org.dentary.submission.packing.PackSpecimen;
import org.dentary.submission.packing.PackedView;
import org.dentary.submission.packing.PackingCheck;
import org.dentary.submission.packing.PackingFacts;
import org.dentary.submission.packing.Verdict;

/** Begins and packs; every change of what is ordered is told to whoever derives outcomes. */
@ApplicationScoped
public class SubmissionService {
    private static final String THING = "submission";

    private final SubmissionQueries queries;
    private final SubmissionWrites writes;
    private final PlanService plan;
    private final KitService kits;
    private final CustodyService custody;
    private final PackingCheck check;
    private final BoxService boxes;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Clock clock;
    private final Event<OrdersChanged> ordersChanged;

    SubmissionService(
            SubmissionQueries queries,
            SubmissionWrites writes,
            PlanService plan,
            KitService kits,
            CustodyService custody,
            PackingCheck check,
            BoxService boxes,
            RepeatableRequests requests,
            CurrentAccount account,
            Clock clock,
            Event<OrdersChanged> ordersChanged) {
        this.queries = queries;
        this.writes = writes;
        this.plan = plan;
        this.kits = kits;
        this.custody = custody;
        this.check = check;
        this.boxes = boxes;
        this.requests = requests;
        this.account = account;
        this.clock = clock;
        this.ordersChanged = ordersChanged;
    }

    /** What stands now, and whether the request made something new. */
    public record Done(SubmissionView submission, boolean fresh) {}

    /** What stands now, code and box as they are printed (box null for none), and whether the code is new in it. */
    public record Packed(SubmissionView submission, String code, String box, boolean fresh) {}

    /**
     * Begins a submission, or changes its laboratory while nothing is packed.
     *
     * @throws RuleBroken (409) if the id holds another one, or it is no longer empty
     */
    @Transactional
    public Done put(UUID id, OpenSubmission command, String ifMatch) {
        plan.laboratory(command.laboratory());
        writes.lock(id);
        SubmissionQueries.Head present = queries.find(id, sight()).orElse(null);
        Seen seen =
                requests.compare(THING, id.toString(), command, ifMatch, present == null ? null : present.version());
        String purpose = (command.purpose() == null ? OpenSubmission.Purpose.SURVEILLANCE : command.purpose()).name();
        if (seen == Seen.NEW) {
            writes.open(id, command.laboratory(), purpose, actor(), clock.instant());
        } else if (seen == Seen.CHANGE) {
            if (present.packed() > 0) {
                throw new RuleBroken(
                        "NOT_EMPTY",
                        "submission " + present.number() + " holds " + present.packed()
                                + " specimens checked against " + present.laboratory()
                                + "'s rules; take them out, or begin another submission");
            }
            writes.change(id, command.laboratory(), purpose);
        }
        if (seen != Seen.REPLAY) {
            requests.accept(THING, id.toString(), command);
        }
        return new Done(view(id), seen == Seen.NEW);
    }

    /**
     * Packs a specimen, checked there and then.
     *
     * @throws InvalidInput (422) with whose rule says no and what to do
     * @throws RuleBroken (409) if the submission has left, or the code is in it and in that box already
     */
    @Transactional
    public Packed pack(UUID id, String typed, PackSpecimen command) {
        writes.lock(id);
        SubmissionQueries.Head head = require(id);
        String code = kits.label(typed).code();
        String box = command.box() == null || command.box().isBlank()
                ? null
                : kits.label(command.box()).code();
        if (box != null) {
            boxes.requireOpened(box, "box");
        }
        kits.hold(List.of(code));
        String key = id + "/" + code;
        PackingFacts facts = check.facts(id, code, command.packedAt().toInstant())
                .orElseThrow(() -> InvalidInput.field(
                        "code",
                        "SPECIMEN_UNKNOWN",
                        "no specimen is recorded under " + code + "; record it at its animal first"));
        if (facts.here() && requests.compare("packing", key, command, "*", 0) == Seen.REPLAY) {
            return new Packed(view(id), code, box, false);
        }
        States.require(THING, String.valueOf(head.number()), head.state(), "pack");
        if (facts.here()) {
            requireMove(id, code, box);
        }
        refuseFuture("packedAt", command.packedAt());
        boolean isReasoned =
                command.overrideReason() != null && !command.overrideReason().isBlank();
        Verdict verdict = check.packing(facts, box, head.laboratory(), queries.packed(id, sight()));
        List<FieldProblem> faults = verdict.faults(isReasoned);
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        writes.pack(
                id,
                code,
                box,
                command.packedAt().toInstant(),
                actor(),
                isReasoned ? command.overrideReason() : null,
                isReasoned ? verdict.passable() : List.of(),
                clock.instant());
        // A tube that somebody else still holds is put into the box when they have handed it over.
        if (box != null && custody.heldByAnother(List.of(code)).isEmpty()) {
            String why = command.reason() == null ? "packed for " + head.laboratory() : command.reason();
            boxes.putIn(box, List.of(code), new Packing(command.packedAt(), command.enteredAt(), why));
        }
        requests.accept("packing", key, command);
        ordersChanged.fire(new OrdersChanged(List.of(code)));
        return new Packed(view(id), code, box, !facts.here());
    }

    /** A code that is in already may be put into another box; scanning it again is a slip that is told. */
    private void requireMove(UUID id, String code, String box) {
        boolean moves = box != null
                && queries.packed(id, sight()).stream()
                        .noneMatch(piece -> piece.code().equals(code) && box.equals(piece.box()));
        if (!moves) {
            throw new RuleBroken(
                    "ALREADY_PACKED",
                    code
                            + " is in this submission already; was another tube meant? To move it, scan another box with it");
        }
    }

    /** Takes a specimen out again; taking out what is not in changes nothing. */
    @Transactional
    public SubmissionView takeOut(UUID id, String typed) {
        writes.lock(id);
        SubmissionQueries.Head head = require(id);
        String code = kits.label(typed).code();
        States.require(THING, String.valueOf(head.number()), head.state(), "unpack");
        String box = queries.packed(id, sight()).stream()
                .filter(piece -> piece.code().equals(code) && piece.box() != null)
                .map(PackedView::box)
                .findFirst()
                .orElse(null);
        if (writes.takeOut(id, code) > 0) {
            if (box != null && custody.heldByAnother(List.of(code)).isEmpty()) {
                boxes.takeOut(box, code, Packing.NOW);
            }
            ordersChanged.fire(new OrdersChanged(List.of(code)));
        }
        return view(id);
    }

    /** The laboratories on whose submissions each code is or was; a code on none is left out. */
    public Map<String, List<String>> routes(Collection<String> codes) {
        return codes.isEmpty() ? Map.of() : queries.routes(codes);
    }

    /** The submission with everything in it. */
    public SubmissionView view(UUID id) {
        SubmissionQueries.Head head = require(id);
        return new SubmissionView(
                head.id(),
                head.number(),
                head.laboratory(),
                head.purpose(),
                head.state(),
                head.carrier(),
                head.waybill(),
                head.shipper() == null
                                || head.shipper().isEmpty()
                                || head.shipper().equals("{}")
                        ? null
                        : head.shipper(),
                head.dispatchedAt(),
                head.dispatchedBy(),
                head.receivedAt(),
                head.openedBy(),
                head.openedAt(),
                queries.packed(id, sight()),
                sight().everywhere() ? queries.over(id) : List.of(),
                head.version());
    }

    SubmissionQueries.Head require(UUID id) {
        return queries.find(id, sight())
                .orElseThrow(() -> new NotFound("SUBMISSION_UNKNOWN", "No submission " + id + " was begun"));
    }

    void refuseFuture(String field, OffsetDateTime given) {
        if (given.toInstant().isAfter(clock.instant().plusSeconds(600))) {
            throw InvalidInput.field(
                    field, "IN_THE_FUTURE", given + " is still to come; check the clock of the device");
        }
    }

    private Sight sight() {
        return Sight.of(account.get());
    }

    private String actor() {
        return account.get().actor();
    }
}
