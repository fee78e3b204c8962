package org.dentary.custody.chain;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.dentary.custody.handover.OfferHandOver;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.people.Custodian;
import org.dentary.people.PeopleService;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;

/** Who acts, and whether they held what they want to move. */
@ApplicationScoped
public class Rights {
    private final LedgerStore ledger;
    private final PeopleService people;
    private final CurrentAccount current;

    Rights(LedgerStore ledger, PeopleService people, CurrentAccount current) {
        this.ledger = ledger;
        this.people = people;
        this.current = current;
    }

    public Account account() {
        return current.get();
    }

    /** The opaque id of who acts now. */
    public String actor() {
        return account().actor();
    }

    /** @throws RuleBroken naming the codes that have no chain yet */
    public static void requireInCustody(Collection<String> codes, Map<String, Head> heads) {
        List<String> missing =
                codes.stream().filter(code -> !heads.containsKey(code)).toList();
        if (!missing.isEmpty()) {
            throw new RuleBroken(
                    "NOT_IN_CUSTODY",
                    "Not collected yet: " + Labels.shown(missing) + ". Take the specimen in, or open the box, first");
        }
    }

    /** How things stood at a moment, in one query for the codes that tell of later things already. */
    public Past past(Collection<Head> heads, Instant at) {
        List<String> later = heads.stream()
                .filter(head -> head.lastOccurredAt().isAfter(at))
                .map(Head::code)
                .toList();
        if (later.isEmpty()) {
            return new Past(at, Map.of());
        }
        return new Past(at, steps(later));
    }

    /**
     * The steps of chains, by code.
     *
     * @throws RuleBroken (409) for a chain with an entry that was changed so that it cannot be read: nothing is judged by what
     *     is left of it
     */
    public Map<String, List<Step>> steps(Collection<String> codes) {
        Map<String, List<Step>> steps = new TreeMap<>();
        ledger.chains(codes)
                .forEach((code, events) ->
                        steps.put(code, events.stream().map(Rights::readable).toList()));
        return steps;
    }

    private static Step readable(LedgerEvent event) {
        return RecordedEvent.readable(event)
                .orElseThrow(() -> new RuleBroken(
                        "RECORD_DAMAGED",
                        "The entry at position " + event.sequence() + " of " + event.chain()
                                + " was changed so that it cannot be read. Keep the database as it is and tell whoever"
                                + " answers for the records"))
                .step();
    }

    /**
     * @throws InvalidInput before collection
     * @throws RuleBroken (409) naming every code that neither the account nor a store, laboratory or organisation that
     *     it acts for held then
     */
    public void requireHeld(Collection<Head> heads, Past past) {
        requireThere(heads, past);
        Map<Holder, Boolean> may = new HashMap<>();
        List<FieldProblem> faults = new ArrayList<>();
        for (Head head : heads) {
            Holder holder = past.holder(head);
            if (holder == null || !may.computeIfAbsent(holder, this::mayActFor)) {
                faults.add(new FieldProblem(
                        head.code(),
                        "NOT_HELD",
                        head.code()
                                + (holder == null ? " was held by nobody" : " was held by " + holder.code())
                                + (past.isPast(head) ? " then" : "")));
            }
        }
        if (!faults.isEmpty()) {
            throw new RuleBroken(
                    "NOT_HELD",
                    actor() + " did not hold "
                            + Labels.shown(
                                    faults.stream().map(FieldProblem::field).toList())
                            + " then; only who has custody can record this. Ask the custodian to hand over first",
                    faults);
        }
    }

    /**
     * @throws InvalidInput before collection
     * @throws RuleBroken (409) for what was destroyed by then
     */
    public static void requireThere(Collection<Head> heads, Past past) {
        for (Head head : heads) {
            CustodyRules.requireAfterCollection(head.code(), past.at(), head.collectedAt());
            if (past.isDestroyed(head)) {
                throw new RuleBroken(
                        "DESTROYED",
                        head.code() + " was destroyed by " + past.at()
                                + "; only corrections and what happened before that can still be recorded");
            }
        }
    }

    /**
     * A late move must leave what came later possible: who destroyed it had it.
     *
     * @throws RuleBroken (409) naming what would have been destroyed while somebody else had it
     */
    public void requireTheirsToDestroy(Collection<Head> heads, Past past, Holder to) {
        for (Head head : heads) {
            String by = past.destroyedLaterBy(head).orElse(null);
            if (by != null && !to.isPerson(by) && !(to.kind().equals(Holder.STORE) && people.mayUse(to.code(), by))) {
                throw new RuleBroken(
                        "DESTROYED_BY_ANOTHER",
                        head.code() + " was destroyed later by " + by + ", who would not have had it after it went to "
                                + to.code()
                                + ". Record first how it came back, or correct the entry of its destruction");
            }
        }
    }

    /** Whether the account acts for a custodian: itself, a store it may use, or an organisation. */
    public boolean mayActFor(Holder holder) {
        Account account = account();
        return switch (holder.kind()) {
            case Holder.PERSON -> holder.isPerson(account.actor());
            case Holder.STORE -> account.person() != null && people.mayUse(holder.code(), account.person());
            default ->
                account.role() == Role.LIAISON
                        || account.role() == Role.COORDINATOR
                        || (account.person() != null
                                && holder.code()
                                        .equals(people.person(account.person()).organisation()));
        };
    }

    /**
     * Whether a move needs no acceptance: into or out of a store that the account may use, to a party that signed on the
     * screen, or signed by both on paper.
     */
    public boolean movesAtOnce(Holder from, Holder to, OfferHandOver offer) {
        boolean isParty = to.kind().equals(Holder.PARTY);
        if (offer.isSigned() && !isParty) {
            throw InvalidInput.field(
                    "signedBy",
                    "SIGNATURE_NOT_TAKEN",
                    "only a party or laboratory signs on the giver's screen; " + to.code()
                            + " accepts under an account of their own");
        }
        if (!offer.isSigned() && offer.signature() != null && !offer.signature().isBlank()) {
            throw InvalidInput.field("signedBy", "REQUIRED", "write the name of who signed beside the signature");
        }
        boolean intoStore = to.kind().equals(Holder.STORE) && mayActFor(to);
        boolean outOfStore = from.kind().equals(Holder.STORE) && to.isPerson(actor());
        return intoStore || outOfStore || offer.isSigned() || offer.isOnPaper();
    }

    /** A custodian as the chain names it. */
    public static Holder holder(Custodian custodian) {
        return new Holder(custodian.kind().name(), custodian.code());
    }

    /** @throws RuleBroken naming the codes that are offered to somebody who has not answered */
    public static void requireNotOffered(Collection<Head> heads) {
        List<String> offered = heads.stream()
                .filter(head -> head.offered() != null)
                .map(Head::code)
                .toList();
        if (!offered.isEmpty()) {
            throw new RuleBroken(
                    "ALREADY_OFFERED",
                    "Offered to somebody who has not answered yet: " + Labels.shown(offered)
                            + ". Let them accept or refuse, or withdraw the offer, first");
        }
    }
}
