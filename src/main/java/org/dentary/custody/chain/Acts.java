package org.dentary.custody.chain;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.codes.LabelCode;
import org.dentary.codes.NotACode;
import org.dentary.custody.handover.OfferHandOver;
import org.dentary.ledger.LedgerStore;
import org.dentary.ledger.Redacted;
import org.dentary.people.Custodian;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.PlanSetting;
import org.dentary.plan.PlanSettings;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;

/** What every custody act needs before it is recorded: who, when, where, which codes, and by what right. */
@ApplicationScoped
public class Acts {
    private static final int MOST_CODES = 5_000;
    private static final int LONGEST_TEXT = 2_000;

    private final CustodyQueries queries;
    private final LedgerStore ledger;
    private final PlanService plan;
    private final PeopleService people;
    private final CurrentAccount current;
    private final Clock clock;

    Acts(
            CustodyQueries queries,
            LedgerStore ledger,
            PlanService plan,
            PeopleService people,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.ledger = ledger;
        this.plan = plan;
        this.people = people;
        this.current = current;
        this.clock = clock;
    }

    public Account account() {
        return current.get();
    }

    public String actor() {
        return account().actor();
    }

    public Instant now() {
        return clock.instant();
    }

    /** The plan's limits on a day. */
    public Limits limits(Instant at, ZoneId zone) {
        PlanSettings settings = plan.settings();
        String season = plan.seasonOn(at.atZone(zone).toLocalDate())
                .map(SeasonView::code)
                .orElse(null);
        return new Limits(
                Duration.ofHours(settings.wholeNumber(PlanSetting.CUSTODY_LATE_HOURS, season, null, null)),
                Duration.ofHours(settings.wholeNumber(PlanSetting.CUSTODY_GAP_HOURS, season, null, null)),
                Duration.ofHours(settings.wholeNumber(PlanSetting.HAND_OVER_UNACCEPTED_HOURS, season, null, null)),
                Duration.ofMinutes(settings.wholeNumber(PlanSetting.CLOCK_SKEW_MINUTES, season, null, null)),
                settings.wholeNumber(PlanSetting.DISCREPANCY_DAYS, season, null, null));
    }

    /**
     * The frame of an act of the present account.
     *
     * @param occurredAt null: now
     * @param enteredAt null: when it is received
     * @param place as typed, or null
     * @param zone of the labels, where the place has none
     * @throws InvalidInput if the times cannot be, or the act is late without a reason
     */
    public Moment moment(
            OffsetDateTime occurredAt, OffsetDateTime enteredAt, String reason, String place, ZoneId zone) {
        return moment(
                occurredAt == null ? now() : occurredAt.toInstant(),
                enteredAt == null ? null : enteredAt.toInstant(),
                reason,
                place(place),
                zone);
    }

    /** The same from plain times; enteredAt null: when it is received. */
    public Moment moment(Instant occurredAt, Instant enteredAt, String reason, Place place, ZoneId zone) {
        Limits limits = limits(occurredAt, place.zone() == null ? zone : place.zone());
        Moment moment = momentWithoutReason(occurredAt, enteredAt, reason, place, zone, limits);
        CustodyRules.requireReasonIfLate(moment.occurredAt(), moment.enteredAt(), limits.late(), reason);
        return moment;
    }

    /** The same where lateness is marked but never refused. */
    public Moment momentWithoutReason(
            Instant occurredAt, Instant enteredAt, String reason, Place place, ZoneId zone, Limits limits) {
        Instant receivedAt = now();
        Instant entered = enteredAt == null ? receivedAt : enteredAt;
        ZoneId at = place.zone() == null ? zone : place.zone();
        CustodyRules.requirePossible(occurredAt, entered, receivedAt, limits.skew());
        return new Moment(
                occurredAt,
                entered,
                receivedAt,
                at,
                actor(),
                place,
                redacted("reason", reason),
                CustodyRules.isLate(occurredAt, entered, limits.late()));
    }

    /** Free text for the ledger: only its digest enters; null for none. */
    public static Redacted redacted(String field, String text) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.length() > LONGEST_TEXT) {
            throw InvalidInput.field(
                    field, "TOO_LONG", field + " has " + text.length() + " characters; up to " + LONGEST_TEXT);
        }
        return Redacted.of(text.strip());
    }

    /** The place that was typed: a code of the plan, or words. */
    public Place place(String typed) {
        return typed == null || typed.isBlank()
                ? Place.NOT_SAID
                : places(List.of(typed)).get(typed);
    }

    /** The places that were typed, in one query. */
    public Map<String, Place> places(Collection<String> typed) {
        Set<String> asked = new LinkedHashSet<>();
        typed.forEach(text -> asked.add(text.strip()));
        Map<String, CustodyQueries.PlaceRow> known = asked.isEmpty() ? Map.of() : queries.places(asked);
        Map<String, Place> places = new HashMap<>();
        for (String text : typed) {
            CustodyQueries.PlaceRow row = known.get(text.strip());
            places.put(
                    text,
                    row == null
                            ? Place.inWords(redacted("place", text).text())
                            : new Place(
                                    row.code(),
                                    null,
                                    row.kind(),
                                    row.timeZone() == null ? null : ZoneId.of(row.timeZone())));
        }
        return places;
    }

    /**
     * The labels that were scanned or typed, each once, in the order given.
     *
     * @throws InvalidInput naming each that is no code or no label of ours
     */
    public List<CustodyQueries.LabelRow> labels(String field, List<String> typed) {
        if (typed.size() > MOST_CODES) {
            throw InvalidInput.field(
                    field, "TOO_MANY", typed.size() + " codes; up to " + MOST_CODES + " at once. Send them in parts");
        }
        List<FieldProblem> faults = new ArrayList<>();
        Map<String, String> codes = new java.util.LinkedHashMap<>();
        for (int i = 0; i < typed.size(); i++) {
            String at = field + "[" + i + "]";
            try {
                codes.putIfAbsent(LabelCode.parse(typed.get(i)).value(), at);
            } catch (NotACode fault) {
                faults.add(new FieldProblem(at, "NOT_A_CODE", fault.getMessage()));
            }
        }
        Map<String, CustodyQueries.LabelRow> known = codes.isEmpty() ? Map.of() : queries.labels(codes.keySet());
        codes.forEach((code, at) -> {
            if (!known.containsKey(code)) {
                faults.add(new FieldProblem(
                        at, "LABEL_UNKNOWN", code + " is well formed but no label of ours; it was never issued here"));
            }
        });
        if (!faults.isEmpty()) {
            throw InvalidInput.of(faults);
        }
        return codes.keySet().stream().map(known::get).toList();
    }

    /** One label. */
    public CustodyQueries.LabelRow label(String field, String typed) {
        List<CustodyQueries.LabelRow> labels;
        try {
            labels = labels("code", typed == null ? List.of() : List.of(typed));
        } catch (InvalidInput fault) {
            throw InvalidInput.field(field, fault.code(), fault.getMessage());
        }
        return labels.get(0);
    }

    /**
     * The label that an address names.
     *
     * @throws InvalidInput if it is no code
     * @throws NotFound if it is no label of ours
     */
    public CustodyQueries.LabelRow existingLabel(String typed) {
        try {
            return label("code", typed);
        } catch (InvalidInput fault) {
            if (fault.code().equals("LABEL_UNKNOWN")) {
                throw new NotFound(fault.code(), fault.getMessage());
            }
            throw fault;
        }
    }

    /** The zone of the first label's station, UTC without any. */
    public static ZoneId zone(List<CustodyQueries.LabelRow> labels) {
        return labels.isEmpty() ? ZoneOffset.UTC : ZoneId.of(labels.get(0).timeZone());
    }

    /** @throws RuleBroken naming the codes that have no chain yet */
    public static void requireInCustody(Collection<String> codes, Map<String, Head> heads) {
        List<String> missing =
                codes.stream().filter(code -> !heads.containsKey(code)).toList();
        if (!missing.isEmpty()) {
            throw new RuleBroken(
                    "NOT_IN_CUSTODY",
                    "Not collected yet: " + shown(missing) + ". Take the specimen in, or open the box, first");
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
        Map<String, List<Step>> chains = new HashMap<>();
        ledger.chains(later)
                .forEach((code, events) -> chains.put(
                        code,
                        events.stream()
                                .map(event -> RecordedEvent.of(event).step())
                                .toList()));
        return new Past(at, chains);
    }

    /**
     * @throws InvalidInput before collection
     * @throws RuleBroken (409) naming every code that neither the account nor a store, laboratory or organisation that
     *     it acts for held then
     */
    public void requireHeld(Collection<Head> heads, Past past) {
        for (Head head : heads) {
            CustodyRules.requireAfterCollection(head.code(), past.at(), head.collectedAt());
            if (head.isDestroyed()) {
                throw new RuleBroken(
                        "DESTROYED", head.code() + " was destroyed; only corrections can still be recorded");
            }
        }
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
                            + shown(faults.stream().map(FieldProblem::field).toList())
                            + " then; only who has custody can record this. Ask the custodian to hand over first",
                    faults);
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
                    "Offered to somebody who has not answered yet: " + shown(offered)
                            + ". Let them accept or refuse, or withdraw the offer, first");
        }
    }

    public static String shown(List<String> codes) {
        int most = 10;
        return codes.size() <= most
                ? String.join(", ", codes)
                : String.join(", ", codes.subList(0, most)) + " and " + (codes.size() - most) + " more";
    }
}
