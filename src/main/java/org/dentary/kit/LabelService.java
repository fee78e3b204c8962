package org.dentary.kit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.dentary.kit.chain.BlockChain;
import org.dentary.kit.print.Printing;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;

/** What happens to a single label after its block was printed: voiding, printing again. */
@ApplicationScoped
public class LabelService {
    private static final String REPRINT = "label-reprint";
    private static final String VOIDING = "label-voiding";

    private final KitService kits;
    private final BlockService blocks;
    private final KitQueries queries;
    private final KitWrites writes;
    private final BlockChain chain;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Clock clock;

    LabelService(
            KitService kits,
            BlockService blocks,
            KitQueries queries,
            KitWrites writes,
            BlockChain chain,
            RepeatableRequests requests,
            CurrentAccount current,
            Clock clock) {
        this.kits = kits;
        this.blocks = blocks;
        this.queries = queries;
        this.writes = writes;
        this.chain = chain;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    /** Asked while the label is locked: what it is bound to, in words, or null where it is free. */
    @FunctionalInterface
    public interface BoundTo {
        String of(LabelView label);
    }

    /**
     * Voids a label, so that it cannot be used any more.
     *
     * @param bound what the label is bound to; asked while nobody else can bind it
     * @return whether this voided it; false where the same request came before
     * @throws RuleBroken {@code LABEL_BOUND} where it is bound, {@code ALREADY_RECORDED} where it was voided for another
     *     reason
     */
    @Transactional
    public boolean voidLabel(String typed, VoidLabel voiding, BoundTo bound) {
        String code = kits.label(typed).code();
        writes.lock(List.of(code));
        LabelView label = kits.label(code);
        blocks.requireServes(label.station());
        if (requests.compare(VOIDING, code, voiding, label.voided()) == RepeatableRequests.Seen.REPLAY) {
            return false;
        }
        String to = bound.of(label);
        if (to != null) {
            throw new RuleBroken(
                    "LABEL_BOUND",
                    "Label " + code + " is bound to " + to
                            + " and cannot be voided; where it sits on the wrong thing, ask for a re-attribution");
        }
        writes.voidLabel(code, voiding.reason(), current.get().actor(), clock.instant());
        chain.voided(code, voiding.reason());
        requests.accept(VOIDING, code, voiding);
        return true;
    }

    /**
     * Keeps that a label is printed again. The new print carries the old one's code, so whatever is recorded under it
     * stays; the trail says that there are two.
     *
     * @throws RuleBroken {@code LABEL_VOID} where the label was voided
     */
    @Transactional
    public Reprinted reprint(String typed, UUID id, ReprintLabel reprint) {
        Printing.stock(reprint.stock());
        kits.hold(List.of(typed));
        LabelView label = kits.label(typed);
        blocks.requireServes(label.station());
        ReprintView there = queries.reprint(id).orElse(null);
        Asked asked = new Asked(label.code(), reprint);
        if (requests.compare(REPRINT, id.toString(), asked, there != null) == RepeatableRequests.Seen.REPLAY) {
            return new Reprinted(false, there);
        }
        requireUsable(label);
        writes.reprint(
                id,
                label.code(),
                reprint.stock(),
                reprint.reason(),
                current.get().actor(),
                clock.instant());
        ReprintView made = queries.reprint(id).orElseThrow();
        chain.reprinted(label.code(), id, made.printNumber(), reprint.stock(), reprint.reason());
        requests.accept(REPRINT, id.toString(), asked);
        return new Reprinted(true, made);
    }

    /**
     * A reprint of a label.
     *
     * @throws NotFound where the label was not printed again under this id
     */
    public ReprintView reprint(String typed, UUID id) {
        LabelView label = kits.label(typed);
        blocks.requireServes(label.station());
        return queries.reprint(id)
                .filter(reprint -> reprint.label().equals(label.code()))
                .orElseThrow(() -> new NotFound(
                        "REPRINT_UNKNOWN", "Label " + label.code() + " was not printed again under " + id));
    }

    /** @throws RuleBroken {@code LABEL_VOID} where the label must not be used any more */
    public void requireUsable(String code) {
        requireUsable(kits.label(code));
    }

    private static void requireUsable(LabelView label) {
        if (label.voided()) {
            throw new RuleBroken(
                    "LABEL_VOID",
                    "Label " + label.code() + " was voided; take another label instead of printing it again");
        }
    }

    /** Every reprint of a label, oldest first. */
    public List<ReprintView> reprints(String code) {
        return queries.reprints(code);
    }

    /** What printing again answered: whether it is new, and the trail. */
    public record Reprinted(boolean created, ReprintView reprint) {}

    /** The request as its digest sees it. */
    private record Asked(String label, ReprintLabel reprint) {}
}
