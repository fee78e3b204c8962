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

    /** Every re-attribution that names the kit, oldest first. */
    public List<ReAttributionView> ofKit(String kit) {
        return queries.ofKit(kit);
    }

    /** Those that wait for a second person, oldest first. */
    public List<ReAttributionView> open() {
        return queries.open();
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
        queries.ofKit(label.kitBound()).stream()
                .filter(open -> open.code().equals(label.code()) && open.state().equals("ASKED"))
                .findFirst()
                .ifPresent(open -> {
                    throw new RuleBroken(
                            "ASKED_ALREADY",
                            open.askedBy() + " asked already that label " + label.code() + " be put to kit "
                                    + open.toKit() + "; it waits for a second person");
                });
        queries.ask(
                id, label.code(), label.kitBound(), toKit, ask, current.get().actor(), clock.instant());
        requests.accept(RE_ATTRIBUTION, id.toString(), sent);
        lines.setNotAttributable(List.of(label.kitBound(), toKit), true, "RE_ATTRIBUTION_ASKED");
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
        queries.decide(id, true, null, current.get().actor(), clock.instant());
        specimens.withPieces(asked.code()).forEach(code -> kits.rebind(code, asked.toKit()));
        List<String> both = List.of(asked.fromKit(), asked.toKit());
        List<String> with = specimens.kitsWithSpecimens(both);
        lines.setHasSpecimen(with, true, "RE_ATTRIBUTION");
        lines.setHasSpecimen(both.stream().filter(kit -> !with.contains(kit)).toList(), false, "RE_ATTRIBUTION");
        lines.settleAttribution(both, "RE_ATTRIBUTION");
        recorded.fire(new SpecimensRecorded(both, "RE_ATTRIBUTION"));
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
        queries.decide(id, false, reason, current.get().actor(), clock.instant());
        lines.settleAttribution(List.of(asked.fromKit(), asked.toKit()), "RE_ATTRIBUTION_REFUSED");
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
