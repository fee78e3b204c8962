package org.dentary.custody.event;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.CustodyRules;
import org.dentary.custody.chain.DestructionRules;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.chain.Labels;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Past;
import org.dentary.custody.chain.Place;
import org.dentary.custody.chain.RecordedEvent;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.chain.Step;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.RuleBroken;

/** Who may record what of which codes, as things stood when it happened. */
@ApplicationScoped
class EventRights {
    private static final Set<CustodyKind> END_AN_OFFER = Set.of(
            CustodyKind.STORED, CustodyKind.FORWARDED, CustodyKind.RETURNED, CustodyKind.FOUND, CustodyKind.DESTROYED);

    private final Rights rights;
    private final LedgerStore ledger;

    EventRights(Rights rights, LedgerStore ledger) {
        this.rights = rights;
        this.ledger = ledger;
    }

    /**
     * Lets pass what the account at hand may record.
     *
     * @throws InvalidInput for a place of the wrong kind, or a correction of what is no entry of the code
     * @throws NotAllowed for a store that the account may not use, or a correction of somebody else's entry
     * @throws RuleBroken (409) for what the account did not hold then, was not lost or away then, or is on hold
     */
    void require(RecordCustodyEvent command, Map<String, Head> heads, Past past, Moment moment) {
        if (END_AN_OFFER.contains(command.kind())) {
            Rights.requireNotOffered(heads.values());
        }
        switch (command.kind()) {
            case CORRECTED -> {
                requireOwnEntry(command, heads);
                heads.values()
                        .forEach(head ->
                                CustodyRules.requireAfterCollection(head.code(), past.at(), head.collectedAt()));
            }
            case FOUND -> {
                Rights.requireThere(heads.values(), past);
                requireLost(heads, past);
            }
            case RETURNED -> {
                Rights.requireThere(heads.values(), past);
                requireWithParty(heads, past);
            }
            case STORED -> {
                rights.requireHeld(heads.values(), past);
                requireStore(moment.place());
            }
            case FORWARDED -> {
                rights.requireHeld(heads.values(), past);
                requireParty(moment.place());
            }
            case DESTROYED -> {
                rights.requireHeld(heads.values(), past);
                requireNoHold(heads);
                requireNothingSince(heads, past);
            }
            default -> rights.requireHeld(heads.values(), past);
        }
    }

    private void requireOwnEntry(RecordCustodyEvent command, Map<String, Head> heads) {
        LedgerEvent corrected = ledger.find(command.corrects())
                .filter(event -> heads.size() == 1 && heads.containsKey(event.chain()))
                .orElseThrow(() -> InvalidInput.field(
                        "corrects",
                        "NO_SUCH_EVENT",
                        command.corrects() + " is no event of this code; a correction names one event of one code"));
        Role role = rights.account().role();
        boolean own = RecordedEvent.of(corrected).text("actor").equals(rights.actor());
        if (!own && role != Role.LIAISON && role != Role.COORDINATOR) {
            throw new NotAllowed(
                    "NOT_YOURS", "Somebody else recorded that event; they, the liaison or the coordinator correct it");
        }
    }

    private void requireLost(Map<String, Head> heads, Past past) {
        Map<String, List<Step>> steps = rights.steps(heads.keySet());
        List<String> there = steps.entrySet().stream()
                .filter(chain -> !CustodyRules.isLost(chain.getValue(), past.at()))
                .map(Map.Entry::getKey)
                .toList();
        if (!there.isEmpty()) {
            throw new RuleBroken(
                    "NOT_LOST", "Not reported lost then: " + Labels.shown(there) + "; hand it over instead");
        }
    }

    private static void requireWithParty(Map<String, Head> heads, Past past) {
        List<String> others = heads.values().stream()
                .filter(head ->
                        past.holder(head) == null || !past.holder(head).kind().equals(Holder.PARTY))
                .map(Head::code)
                .toList();
        if (!others.isEmpty()) {
            throw new RuleBroken(
                    "NOT_WITH_A_PARTY",
                    "Not with a laboratory, carrier or other organisation then: " + Labels.shown(others)
                            + "; only they return something");
        }
    }

    private void requireStore(Place place) {
        if (!Holder.STORE.equals(place.kind())) {
            throw InvalidInput.field("place", "NOT_A_STORE", "STORED names a store of the plan as its place");
        }
        if (!rights.mayActFor(new Holder(Holder.STORE, place.code()))) {
            throw new NotAllowed(
                    "STORE_NOT_YOURS",
                    "You may not put into store " + place.code() + "; offer it to the store instead");
        }
    }

    private static void requireParty(Place place) {
        if (!Holder.PARTY.equals(place.kind())) {
            throw InvalidInput.field(
                    "place", "NOT_A_LABORATORY", "FORWARDED names a laboratory or party of the plan as its place");
        }
    }

    private void requireNoHold(Map<String, Head> heads) {
        List<String> held = rights.steps(heads.keySet()).entrySet().stream()
                .filter(chain -> CustodyRules.isOnHold(chain.getValue()))
                .map(Map.Entry::getKey)
                .toList();
        if (!held.isEmpty()) {
            throw new RuleBroken("ON_HOLD", "On hold and not to be destroyed: " + Labels.shown(held));
        }
    }

    /** What was given on, cut or tested later was not destroyed before. */
    private static void requireNothingSince(Map<String, Head> heads, Past past) {
        past.chains()
                .forEach((code, steps) -> DestructionRules.outlives(steps, past.at())
                        .ifPresent(later -> {
                            throw new RuleBroken(
                                    "NOT_DESTROYED_THEN",
                                    code + " was not destroyed at " + past.at() + ": entry " + later.sequence()
                                            + " tells what"
                                            + " happened to it at " + later.occurredAt() + " ("
                                            + later.kind().words()
                                            + "). Check the time, or correct that entry and destroy it after");
                        }));
    }
}
