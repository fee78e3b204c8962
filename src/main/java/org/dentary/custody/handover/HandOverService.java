package org.dentary.custody.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.chain.ChainWriter;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.chain.Labels;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Past;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.chain.Stored;
import org.dentary.custody.handover.HandOverQueries.HandOverRow;
import org.dentary.people.PeopleService;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/**
 * Hand-overs: offered by who holds, answered through {@link OfferAnswerService}. Custody moves at acceptance; a store's
 * people need no offer, and a party without an account signs on the screen or on paper.
 */
@ApplicationScoped
public class HandOverService {
    private static final String RESOURCE = "hand-over";

    private final HandOverQueries queries;
    private final HandOverViews views;
    private final HandOverMoves moves;
    private final Labels labels;
    private final Moments moments;
    private final Rights rights;
    private final ChainWriter chains;
    private final PeopleService people;
    private final RepeatableRequests requests;

    HandOverService(
            HandOverQueries queries,
            HandOverViews views,
            HandOverMoves moves,
            Labels labels,
            Moments moments,
            Rights rights,
            ChainWriter chains,
            PeopleService people,
            RepeatableRequests requests) {
        this.queries = queries;
        this.views = views;
        this.moves = moves;
        this.labels = labels;
        this.moments = moments;
        this.rights = rights;
        this.chains = chains;
        this.people = people;
        this.requests = requests;
    }

    /**
     * Offers codes to somebody, or moves them at once: into or out of a store that the account may use, to a party that
     * signed, or as both signed on paper.
     *
     * @throws InvalidInput for a code that is not ours, an unknown receiver, times that cannot be, a late entry without
     *     a reason
     * @throws RuleBroken (409) for what is not held, is offered already, or is offered to who holds it
     */
    @Transactional
    public Stored<HandOverView> offer(UUID id, OfferHandOver offer, String ifMatch) {
        return offer(id, offer, version -> isReplay(id, offer, ifMatch, version));
    }

    /**
     * Offers what a form says, once however often and by how many at once the form is sent.
     *
     * @param id the form's own
     * @param timed whether the form names the time; else it is whenever the form is sent
     * @throws RuleBroken (409) {@code FORM_SENT} where it was sent before and said something else
     */
    @Transactional
    public void offerForm(UUID id, OfferHandOver offer, boolean timed) {
        OfferHandOver said = timed ? offer : offer.untimed();
        String key = id + " by " + rights.actor();
        boolean isNew = offer(id, offer, version -> version != null && requests.isFormSent(RESOURCE, key, said))
                .created();
        if (isNew) {
            requests.acceptForm(RESOURCE, key, said);
        }
    }

    /** @param isReplay whether what is there, in that version or none, came from the same */
    private Stored<HandOverView> offer(UUID id, OfferHandOver offer, Predicate<Integer> isReplay) {
        if (isReplay.test(queries.find(id).map(HandOverRow::version).orElse(null))) {
            return new Stored<>(view(id), false);
        }
        List<CustodyQueries.LabelRow> labels = this.labels.labels("codes", offer.codes());
        Holder to = Rights.holder(people.custodian(offer.to()));
        Map<String, Head> heads = chains.lockWithContents(
                labels.stream().map(CustodyQueries.LabelRow::code).toList());
        // Who sent the very same at this moment had the chains first; it is recorded now.
        Optional<HandOverRow> sentAtOnce = queries.find(id);
        if (sentAtOnce.isPresent()) {
            isReplay.test(sentAtOnce.get().version());
            return new Stored<>(view(id), false);
        }
        Moment moment = moments.moment(
                offer.occurredAt(), offer.enteredAt(), offer.reasonGiven(), offer.place(), Labels.zone(labels));
        moment = offer.isOnPaper() ? moment.onPaper() : moment;
        Past past = rights.past(heads.values(), moment.occurredAt());
        Rights.requireNotOffered(heads.values());
        rights.requireHeld(heads.values(), past);
        Holder from = oneHolder(heads, past);
        if (from.equals(to)) {
            throw new RuleBroken("TO_ONESELF", to.code() + " holds them already; a hand-over goes to somebody else");
        }
        boolean atOnce = rights.movesAtOnce(from, to, offer);
        HandOverRow row = row(id, offer, from, to, moment, atOnce);
        queries.insert(row);
        queries.insertItems(id, heads.keySet(), atOnce ? "ACCEPTED" : "OFFERED");
        if (atOnce) {
            rights.requireTheirsToDestroy(heads.values(), past, to);
            moves.atOnce(row, offer, heads, past, moment);
        } else {
            moves.offer(row, offer, heads, past, moment);
        }
        requests.accept(RESOURCE, id.toString(), offer);
        return new Stored<>(view(id), true);
    }

    /** Whether this very offer was accepted before; an offer's content cannot be changed otherwise. */
    private boolean isReplay(UUID id, OfferHandOver offer, String ifMatch, Integer version) {
        Seen seen = requests.compare(RESOURCE, id.toString(), offer, ifMatch, version);
        if (seen == Seen.CHANGE) {
            throw new RuleBroken(
                    "OFFER_FIXED",
                    "Hand-over " + id + " cannot be changed; withdraw it with a reason and offer anew under a new id");
        }
        return seen == Seen.REPLAY;
    }

    private static HandOverRow row(
            UUID id, OfferHandOver offer, Holder from, Holder to, Moment moment, boolean atOnce) {
        return new HandOverRow(
                id.toString(),
                from.kind(),
                from.code(),
                to.kind(),
                to.code(),
                moment.place().shown(),
                moment.occurredAt(),
                moment.actor(),
                moment.receivedAt(),
                offer.reasonGiven(),
                atOnce ? "ACCEPTED" : "OFFERED",
                0,
                0L,
                0L,
                0L,
                0L);
    }

    private static Holder oneHolder(Map<String, Head> heads, Past past) {
        Set<Holder> holders = heads.values().stream().map(past::holder).collect(Collectors.toSet());
        if (holders.size() > 1) {
            throw new RuleBroken(
                    "MIXED_CUSTODY",
                    "These codes are held by "
                            + holders.stream().map(Holder::code).sorted().collect(Collectors.joining(", "))
                            + "; one hand-over has one giver. Offer each custodian's apart");
        }
        return holders.iterator().next();
    }

    /** The hand-over as it stands, with its codes. */
    public HandOverView view(UUID id) {
        return views.one(queries.find(id).orElseThrow(() -> unknown(id)), queries.items(id));
    }

    /**
     * The same for the account at hand.
     *
     * @throws NotFound if there is none, or it tells where tissue went from its first laboratory to who may not know that
     */
    HandOverView read(UUID id) {
        if (!queries.isSeen(id, blind())) {
            throw unknown(id);
        }
        return view(id);
    }

    private String blind() {
        return rights.account().may(Act.DERIVED_OUTCOME) ? null : rights.actor();
    }

    /** Those hand-overs, without their codes; unknown ids are left out. */
    public List<HandOverView> views(Collection<UUID> ids) {
        return views.all(queries.all(ids));
    }

    /** Hand-overs that the account at hand may see, in a state (null: in any), newest first, without their codes. */
    List<HandOverView> list(String state, Mark before, int most) {
        return views.all(queries.list(blind(), state, before, most));
    }

    static NotFound unknown(UUID id) {
        return new NotFound("HAND_OVER_UNKNOWN", "There is no hand-over " + id);
    }
}
