package org.dentary.specimen;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.dentary.animal.AnimalService;
import org.dentary.animal.line.LineService;
import org.dentary.kit.KitService;
import org.dentary.kit.LabelView;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/**
 * Puts swapped labels right: one person asks, another confirms. Until then neither animal is counted; afterwards findings
 * follow the tissue.
 */
@ApplicationScoped
public class ReAttributionService {
    private static final String RE_ATTRIBUTION = "re-attribution";

    private final ReAttributionQueries queries;
    private final SpecimenQueries specimens;
    private final KitService kits;
    private final AnimalService animals;
    private final LineService lines;
    private final RepeatableRequests requests;
    private final Event<SpecimensRecorded> recorded;
    private final CurrentAccount current;
    private final Clock clock;

    ReAttributionService(
            ReAttributionQueries queries,
            SpecimenQueries specimens,
            KitService kits,
            AnimalService animals,
            LineService lines,
            RepeatableRequests requests,
            Event<SpecimensRecorded> recorded,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.specimens = specimens;
        this.kits = kits;
        this.animals = animals;
        this.lines = lines;
        this.requests = requests;
        this.recorded = recorded;
        this.current = current;
        this.clock = clock;
    }

    private record Sent(String code, AskReAttribution ask) {}

    /** Every re-attribution that names the kit, or another of the same animal, oldest first. */
    public List<ReAttributionView> ofAnimal(String kit) {
        return queries.ofAnimal(kit);
    }

    /** Those that wait for a second person, oldest first. */
    public List<ReAttributionView> open(int most) {
        return queries.open(most);
    }

    /**
     * Sees to it that no swap between two animals is open, as while they are made one.
     *
     * @throws RuleBroken if one is
     */
    public void requireNoneOpenBetween(String kit, String other) {
        if (animals.counted(kit).equals(animals.counted(other))) {
            return;
        }
        List<ReAttributionView> ofOther = queries.ofAnimal(other);
        queries.ofAnimal(kit).stream()
                .filter(one -> one.state().equals("ASKED") && ofOther.contains(one))
                .findFirst()
                .ifPresent(one -> {
                    throw new RuleBroken(
                            "SWAP_OPEN_BETWEEN",
                            one.askedBy() + " asked that label " + one.code() + " go from kit " + one.fromKit()
                                    + " to kit " + one.toKit() + ", as of two animals; refuse or withdraw that first"
                                    + " if both are one animal");
                });
    }

    /**
     * The re-attribution of that id and label.
     *
     * @throws NotFound if there is none
     */
    public ReAttributionView reAttribution(String typed, UUID id) {
        String code = kits.label(typed).code();
        return queries.byId(id)
                .filter(found -> found.code().equals(code))
                .orElseThrow(() -> new NotFound(
                        "RE_ATTRIBUTION_UNKNOWN", "No re-attribution " + id + " of label " + code + " was asked for"));
    }

    /**
     * Asks that what is under a label be another animal's. Sent again it changes nothing.
     *
     * @return whether it is new
     */
    @Transactional
    public boolean ask(String typed, UUID id, AskReAttribution ask) {
        kits.hold(List.of(typed));
        LabelView label = kits.label(typed);
        Sent sent = new Sent(label.code(), ask);
        Integer version = queries.byId(id).isPresent() ? 0 : null;
        if (requests.compare(RE_ATTRIBUTION, id.toString(), sent, version != null) == Seen.REPLAY) {
            return false;
        }
        String toKit = kits.kit(ask.kit());
        if (label.kitBound().equals(toKit)) {
            throw new RuleBroken(
                    "ALREADY_BOUND",
                    "Label " + label.code() + " belongs to kit " + toKit + " already; nothing to put right");
        }
        List.of(label.kitBound(), toKit).forEach(animals::animal);
        lines.hold(List.of(label.kitBound(), toKit));
        requireTwoAnimals(label, toKit);
        queries.openOf(label.code()).ifPresent(open -> {
            throw new RuleBroken(
                    "ASKED_ALREADY",
                    open.askedBy() + " asked already that label " + label.code() + " be put to kit " + open.toKit()
                            + "; it waits for a second person");
        });
        queries.ask(
                id, label.code(), label.kitBound(), toKit, ask, current.get().actor(), clock.instant());
        requests.accept(RE_ATTRIBUTION, id.toString(), sent);
        lines.settle(List.of(label.kitBound(), toKit), "RE_ATTRIBUTION_ASKED");
        return true;
    }

    /**
     * Confirms: the label and those of its pieces are bound to the other kit, outcomes and lines follow.
     *
     * @throws NotAllowed if who confirms is who asked
     * @throws RuleBroken if it was decided already, unless by the same person in the same way
     */
    @Transactional
    public void confirm(String typed, UUID id) {
        kits.hold(List.of(typed));
        ReAttributionView asked = reAttribution(typed, id);
        if (isConfirmedAlready(asked)) {
            return;
        }
        LabelView label = kits.label(asked.code());
        if (!label.kitBound().equals(asked.fromKit())) {
            throw new RuleBroken(
                    "BOUND_ELSEWHERE",
                    "Label " + label.code() + " belongs to kit " + label.kitBound()
                            + " by now; refuse this one and ask anew");
        }
        List<String> both = List.of(asked.fromKit(), asked.toKit());
        lines.hold(both);
        queries.decide(id, true, null, current.get().actor(), clock.instant());
        kits.rebind(specimens.withPieces(asked.code(), asked.fromKit()), asked.toKit());
        settle(both, "RE_ATTRIBUTION");
    }

    /**
     * Refuses, or withdraws what one asked oneself.
     *
     * @throws RuleBroken if it was decided already, unless by the same person in the same way
     */
    @Transactional
    public void refuse(String typed, UUID id, String reason) {
        kits.hold(List.of(typed));
        ReAttributionView asked = reAttribution(typed, id);
        boolean repeated = asked.state().equals("REFUSED")
                && asked.decidedBy().equals(current.get().actor())
                && reason.equals(asked.decisionReason());
        if (repeated) {
            return;
        }
        requireOpen(asked);
        requireOwnOrDecider(asked);
        List<String> both = List.of(asked.fromKit(), asked.toKit());
        lines.hold(both);
        queries.decide(id, false, reason, current.get().actor(), clock.instant());
        settle(both, "RE_ATTRIBUTION_REFUSED");
    }

    /** Whether the animals are counted, then what was found in them; in that order, as the second reads the first. */
    private void settle(List<String> kits, String cause) {
        lines.settle(kits, cause);
        recorded.fire(new SpecimensRecorded(kits, cause));
    }

    private void requireTwoAnimals(LabelView label, String toKit) {
        if (animals.counted(label.kitBound()).equals(animals.counted(toKit))) {
            throw new RuleBroken(
                    "SAME_ANIMAL",
                    "Kits " + label.kitBound() + " and " + toKit + " are linked as one animal, so what is under label "
                            + label.code() + " is that animal's already. If they are two animals after all, undo the"
                            + " link first");
        }
    }

    private void requireOwnOrDecider(ReAttributionView asked) {
        if (!current.get().may(Act.PUT_RIGHT)
                && !asked.askedBy().equals(current.get().actor())) {
            throw new NotAllowed(
                    "NOT_YOURS_TO_REFUSE",
                    asked.askedBy()
                            + " asked for this; you may withdraw what you asked yourself. Tell the coordinator or"
                            + " the epidemiologist what speaks against it");
        }
    }

    /** Whether the same person confirmed it before; refuses whoever else may not confirm it now. */
    private boolean isConfirmedAlready(ReAttributionView asked) {
        String actor = current.get().actor();
        if (asked.state().equals("CONFIRMED") && actor.equals(asked.decidedBy())) {
            return true;
        }
        requireOpen(asked);
        if (asked.askedBy().equals(actor)) {
            throw new NotAllowed(
                    "SECOND_PERSON_NEEDED",
                    actor + " asked for this; another person compares both animals and confirms");
        }
        return false;
    }

    private static void requireOpen(ReAttributionView asked) {
        if (!asked.state().equals("ASKED")) {
            throw new RuleBroken(
                    "DECIDED_ALREADY",
                    "This re-attribution was " + asked.state().toLowerCase(java.util.Locale.ROOT) + " by "
                            + asked.decidedBy() + " at " + asked.decidedAt());
        }
    }
}
