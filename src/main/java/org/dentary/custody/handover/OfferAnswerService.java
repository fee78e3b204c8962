package org.dentary.custody.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.custody.chain.ChainWriter;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.chain.Labels;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Past;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.handover.HandOverQueries.HandOverRow;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.state.States;

/** Answers to hand-overs: accepted by another than who offered, who counts; or refused, or withdrawn, with a reason. */
@ApplicationScoped
public class OfferAnswerService {
    private static final String ACCEPTANCE = "hand-over-acceptance";
    private static final String REFUSAL = "hand-over-refusal";

    private final HandOverQueries queries;
    private final HandOverService handOvers;
    private final HandOverMoves moves;
    private final Labels labels;
    private final Moments moments;
    private final Rights rights;
    private final ChainWriter chains;
    private final RepeatableRequests requests;

    OfferAnswerService(
            HandOverQueries queries,
            HandOverService handOvers,
            HandOverMoves moves,
            Labels labels,
            Moments moments,
            Rights rights,
            ChainWriter chains,
            RepeatableRequests requests) {
        this.queries = queries;
        this.handOvers = handOvers;
        this.moves = moves;
        this.labels = labels;
        this.moments = moments;
        this.rights = rights;
        this.chains = chains;
        this.requests = requests;
    }

    /**
     * Takes over what was counted. What was offered and not counted stays with the giver as a discrepancy SHORT, what was
     * counted and not offered becomes one OVER.
     *
     * @throws NotFound if there is no such hand-over
     * @throws NotAllowed if it was offered to somebody else
     * @throws RuleBroken (409) for one's own offer, one that is answered already, or what the giver held no more
     */
    @Transactional
    public HandOverView accept(UUID id, AcceptHandOver acceptance) {
        HandOverRow row = queries.lock(id).orElseThrow(() -> HandOverService.unknown(id));
        String key = id + " by " + rights.actor();
        if (requests.compare(ACCEPTANCE, key, acceptance, null, null) == Seen.REPLAY) {
            return handOvers.view(id);
        }
        if (row.offeredBy().equals(rights.actor())) {
            throw new RuleBroken(
                    "OWN_OFFER", "You offered this yourself; nobody accepts their own offer. The receiver accepts it");
        }
        requireReceiver(row);
        States.require("hand-over", id.toString(), row.state(), "accept");
        List<CustodyQueries.LabelRow> scanned = labels.labels("codes", acceptance.codes());
        Set<String> expected = offered(id);
        Set<String> all = new TreeSet<>(expected);
        scanned.forEach(label -> all.add(label.code()));
        Map<String, Head> heads = chains.lock(all);
        Moment moment = moments.moment(
                acceptance.occurredAt(),
                acceptance.enteredAt(),
                acceptance.reason(),
                row.place() == null && row.to().kind().equals(Holder.STORE) ? row.toCustodian() : row.place(),
                Labels.zone(scanned));
        requireAfterOffer(row, moment);
        Map<String, String> boxes = new HashMap<>();
        expected.forEach(code -> boxes.put(code, heads.get(code).box()));
        Count count = Count.of(
                boxes, scanned.stream().map(CustodyQueries.LabelRow::code).toList());
        if (count.accepted().isEmpty()) {
            throw InvalidInput.field(
                    "codes", "NONE_OFFERED", "none of these codes was offered; to take none, refuse the hand-over");
        }
        Past past = rights.past(heads.values(), moment.occurredAt());
        requireStillGiven(row, count.accepted(), heads, past);
        List<Head> counted = count.accepted().stream().map(heads::get).toList();
        Rights.requireThere(counted, past);
        rights.requireTheirsToDestroy(counted, past, row.to());
        moves.accept(row, count, heads, past, moment, acceptance.photos());
        queries.setItems(id, count.accepted(), "ACCEPTED");
        queries.setItems(id, count.missing(), "MISSING");
        boolean whole = count.missing().isEmpty();
        queries.setState(
                id,
                States.after(
                        "hand-over",
                        id.toString(),
                        row.state(),
                        whole ? "accept" : "accept-part",
                        whole ? "ACCEPTED" : "PART_ACCEPTED"));
        requests.accept(ACCEPTANCE, key, acceptance);
        return handOvers.view(id);
    }

    /**
     * Takes over what a form says was counted, once however often the form is sent.
     *
     * @throws RuleBroken (409) where the offer is answered already and the form then said something else
     */
    @Transactional
    public void acceptForm(UUID id, AcceptHandOver acceptance) {
        queries.lock(id);
        String key = id + " by " + rights.actor();
        if (!requests.isFormKnown(ACCEPTANCE, key, acceptance.untimed())) {
            accept(id, acceptance);
            requests.acceptForm(ACCEPTANCE, key, acceptance.untimed());
        }
    }

    /** Refuses or withdraws as a form says, in the same way. */
    @Transactional
    public void refuseForm(UUID id, RefuseHandOver refusal) {
        queries.lock(id);
        String key = id + " by " + rights.actor();
        if (!requests.isFormKnown(REFUSAL, key, refusal.untimed())) {
            refuse(id, refusal);
            requests.acceptForm(REFUSAL, key, refusal.untimed());
        }
    }

    /**
     * Refuses what was offered, or part of it; the one who offered withdraws in the same way. Custody stays where it is.
     *
     * @throws NotFound if there is no such hand-over
     * @throws NotAllowed to anybody but receiver and giver
     * @throws RuleBroken (409) if it is answered already
     */
    @Transactional
    public HandOverView refuse(UUID id, RefuseHandOver refusal) {
        HandOverRow row = queries.lock(id).orElseThrow(() -> HandOverService.unknown(id));
        String key = id + " by " + rights.actor();
        if (requests.compare(REFUSAL, key, refusal, null, null) == Seen.REPLAY) {
            return handOvers.view(id);
        }
        boolean withdrawn = row.offeredBy().equals(rights.actor());
        if (!withdrawn) {
            requireReceiver(row);
        }
        States.require("hand-over", id.toString(), row.state(), withdrawn ? "withdraw" : "refuse");
        Set<String> open = offered(id);
        List<CustodyQueries.LabelRow> named = labels.labels("codes", refusal.codes());
        Map<String, Head> heads = chains.lock(open);
        Set<String> refused = refused(open, named, heads);
        Moment moment = moments.moment(
                refusal.occurredAt(), refusal.enteredAt(), refusal.reason(), row.place(), Labels.zone(named));
        moves.refuse(row, refused, heads, moment, refusal.photos());
        queries.setItems(id, refused, "REFUSED");
        String event = withdrawn ? "withdraw" : "refuse";
        String after = withdrawn ? "WITHDRAWN" : "REFUSED";
        boolean all = refused.containsAll(open);
        queries.setState(id, all ? States.after("hand-over", id.toString(), row.state(), event, after) : row.state());
        requests.accept(REFUSAL, key, refusal);
        return handOvers.view(id);
    }

    private static Set<String> refused(Set<String> open, List<CustodyQueries.LabelRow> named, Map<String, Head> heads) {
        if (named.isEmpty()) {
            return open;
        }
        Map<String, String> boxes = new HashMap<>();
        open.forEach(code -> boxes.put(code, heads.get(code).box()));
        Count count = Count.of(
                boxes, named.stream().map(CustodyQueries.LabelRow::code).toList());
        if (!count.over().isEmpty()) {
            throw InvalidInput.field(
                    "codes",
                    "NOT_OFFERED",
                    "not offered in this hand-over: " + Labels.shown(List.copyOf(count.over()))
                            + "; name only codes that are");
        }
        return count.accepted();
    }

    private Set<String> offered(UUID id) {
        return queries.items(id).stream()
                .filter(item -> item.state().equals("OFFERED"))
                .map(HandOverView.Item::code)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private void requireReceiver(HandOverRow row) {
        if (!rights.mayActFor(row.to())) {
            throw new NotAllowed(
                    "NOT_THE_RECEIVER", "Offered to " + row.toCustodian() + ", not to you; only the receiver answers");
        }
    }

    /** An offer does not keep a laboratory from counting in what came to it; from then on it is not the giver's to give. */
    private static void requireStillGiven(HandOverRow row, Set<String> counted, Map<String, Head> heads, Past past) {
        List<String> gone = counted.stream()
                .filter(code -> !row.uuid().equals(heads.get(code).offered())
                        && !row.from().equals(past.holder(heads.get(code))))
                .toList();
        if (!gone.isEmpty()) {
            throw new RuleBroken(
                    "NO_LONGER_HELD",
                    row.fromCustodian() + " did not hold " + Labels.shown(gone)
                            + " any more then: somebody else counted them in after the offer. Say when you counted them, if"
                            + " that was before, or leave them out; to take none, refuse the hand-over");
        }
    }

    private void requireAfterOffer(HandOverRow row, Moment moment) {
        Instant earliest = row.occurredAt()
                .minus(moments.limits(moment.occurredAt(), moment.zone()).skew());
        if (moment.occurredAt().isBefore(earliest)) {
            throw InvalidInput.field(
                    "occurredAt",
                    "BEFORE_OFFER",
                    "occurredAt " + moment.occurredAt() + " is before it was handed over (" + row.occurredAt()
                            + "); check the device's clock");
        }
    }
}
