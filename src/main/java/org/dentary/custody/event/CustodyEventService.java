package org.dentary.custody.event;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Predicate;
import org.dentary.custody.box.BoxQueries;
import org.dentary.custody.chain.ChainWriter;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.CustodyRules;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.chain.Labels;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Past;
import org.dentary.custody.chain.Planned;
import org.dentary.custody.chain.RecordedEvent;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.chain.Stored;
import org.dentary.custody.discrepancy.Discrepancies;
import org.dentary.custody.evidence.EvidenceWriter;
import org.dentary.ledger.EventDraft;
import org.dentary.ledger.LedgerEvent;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Custody events that a person records as such: temperatures, seals, stores, losses, corrections. */
@ApplicationScoped
public class CustodyEventService {
    private static final String RESOURCE = "custody-event";

    private final CustodyQueries queries;
    private final BoxQueries boxes;
    private final Labels labels;
    private final Moments moments;
    private final Rights rights;
    private final EventRights allowed;
    private final Disposal disposal;
    private final ChainWriter chains;
    private final Discrepancies discrepancies;
    private final EvidenceWriter evidence;
    private final RepeatableRequests requests;

    CustodyEventService(
            CustodyQueries queries,
            BoxQueries boxes,
            Labels labels,
            Moments moments,
            Rights rights,
            EventRights allowed,
            Disposal disposal,
            ChainWriter chains,
            Discrepancies discrepancies,
            EvidenceWriter evidence,
            RepeatableRequests requests) {
        this.queries = queries;
        this.boxes = boxes;
        this.labels = labels;
        this.moments = moments;
        this.rights = rights;
        this.allowed = allowed;
        this.disposal = disposal;
        this.chains = chains;
        this.discrepancies = discrepancies;
        this.evidence = evidence;
        this.requests = requests;
    }

    /**
     * Records what happened, one event per code; what happens to a box happens to what is in it.
     *
     * @throws InvalidInput for what the kind needs and was not told, and for times that cannot be
     * @throws NotAllowed for a store that the account may not use, or a correction of somebody else's entry
     * @throws RuleBroken (409) for what the account did not hold then, is destroyed, or is on hold
     */
    @Transactional
    public Stored<RecordedAct> record(UUID id, RecordCustodyEvent command, String ifMatch) {
        return record(id, command, there -> isReplay(id, command, ifMatch, there));
    }

    /** @param isReplay whether what is there, if anything is, came from the same */
    private Stored<RecordedAct> record(UUID id, RecordCustodyEvent command, Predicate<Boolean> isReplay) {
        if (isReplay.test(queries.isActRecorded(id))) {
            return new Stored<>(act(id, command.kind()), false);
        }
        EventRules.require(command);
        List<CustodyQueries.LabelRow> labels = this.labels.labels("codes", command.codes());
        List<String> codes = labels.stream().map(CustodyQueries.LabelRow::code).toList();
        Map<String, Head> heads =
                command.kind() == CustodyKind.CORRECTED ? lock(codes) : chains.lockWithContents(codes);
        // Who sent the very same at this moment had the chains first; it is recorded now.
        if (isReplay.test(queries.isActRecorded(id))) {
            return new Stored<>(act(id, command.kind()), false);
        }
        Moment moment = moments.moment(
                command.occurredAt(), command.enteredAt(), command.reason(), command.place(), Labels.zone(labels));
        Past past = rights.past(heads.values(), moment.occurredAt());
        allowed.require(command, heads, past, moment);
        String witness =
                command.kind() == CustodyKind.DESTROYED ? disposal.witness(command.witness(), heads.keySet()) : null;
        List<Planned> planned = new ArrayList<>();
        for (Head head : heads.values()) {
            planned.add(plan(id, heads, command, head, past, moment, witness));
        }
        planned.addAll(sealMismatches(id, command, codes, heads, past, moment));
        evidence.append(planned, command.photos());
        if (command.kind() == CustodyKind.TAMPER_SEAL_APPLIED) {
            boxes.seal(codes, command.tamperSeal().strip());
        }
        requests.accept(RESOURCE, id.toString(), command);
        return new Stored<>(act(id, command.kind()), true);
    }

    /**
     * Records what a form says, once however often the form is sent.
     *
     * @param id the form's own
     * @param timed whether the form names the time; else it is whenever the form is sent
     * @throws RuleBroken (409) {@code FORM_SENT} where it was sent before and said something else
     */
    @Transactional
    public void recordForm(UUID id, RecordCustodyEvent command, boolean timed) {
        RecordCustodyEvent said = timed ? command : command.untimed();
        if (record(id, command, there -> there && requests.isFormSent(RESOURCE, id.toString(), said))
                .created()) {
            requests.acceptForm(RESOURCE, id.toString(), said);
        }
    }

    /** What was recorded under an id; empty if nothing was. */
    public Optional<RecordedAct> find(UUID id) {
        List<LedgerEvent> events = queries.eventsOf(id);
        return events.isEmpty()
                ? Optional.empty()
                : Optional.of(act(id, RecordedEvent.of(events.get(0)).kind()));
    }

    private boolean isReplay(UUID id, RecordCustodyEvent command, String ifMatch, boolean there) {
        Seen seen = requests.compare(RESOURCE, id.toString(), command, ifMatch, there ? 0 : null);
        if (seen == Seen.CHANGE) {
            throw new RuleBroken(
                    "EVENT_FIXED",
                    "A recorded event is never changed; record a CORRECTED event that points at it, under a new id");
        }
        return seen == Seen.REPLAY;
    }

    private Map<String, Head> lock(List<String> codes) {
        Map<String, Head> heads = new TreeMap<>(chains.lock(codes));
        Rights.requireInCustody(codes, heads);
        return heads;
    }

    private Planned plan(
            UUID id,
            Map<String, Head> heads,
            RecordCustodyEvent command,
            Head head,
            Past past,
            Moment moment,
            String witness) {
        UUID eventId =
                heads.size() == 1 ? id : UUID.nameUUIDFromBytes((id + head.code()).getBytes(StandardCharsets.UTF_8));
        EventDraft draft = moment.draft(command.kind(), head)
                .withId(eventId)
                .withHandOver(id)
                .with("temperatureCelsius", command.temperatureCelsius())
                .with("sensor", blankToNull(command.sensor()))
                .with("tamperSeal", blankToNull(command.tamperSeal()))
                .with("condition", command.condition())
                .with("corrects", command.corrects())
                .with("evidence", Moments.redacted("evidence", command.evidence()));
        Holder to = switch (command.kind().custody()) {
            case TO_ACTOR -> Holder.person(moment.actor());
            case TO_STORE -> new Holder(Holder.STORE, moment.place().code());
            case TO_PLACE -> new Holder(Holder.PARTY, moment.place().code());
            default -> null;
        };
        if (to != null) {
            rights.requireTheirsToDestroy(List.of(head), past, to);
            return Planned.moving(
                    Planned.from(draft, past.holder(head)).withCounterparty(to.code()),
                    to,
                    past.moved(head, to, moment.place().shown(), heads.keySet()));
        }
        return new Planned(
                witness == null ? draft : draft.withCounterparty(witness),
                command.kind() == CustodyKind.CORRECTED
                        ? head
                        : past.at(head, moment.place().shown()));
    }

    /** A seal that is not the one put on opens a discrepancy for each code named, never in silence. */
    private List<Planned> sealMismatches(
            UUID id,
            RecordCustodyEvent command,
            List<String> codes,
            Map<String, Head> heads,
            Past past,
            Moment moment) {
        if (command.kind() != CustodyKind.TAMPER_SEAL_CHECKED) {
            return List.of();
        }
        Map<String, Head> named = new HashMap<>(heads);
        named.keySet().retainAll(codes);
        List<String> broken = rights.steps(named.keySet()).entrySet().stream()
                .filter(chain -> !CustodyRules.sameSeal(
                        CustodyRules.sealAt(chain.getValue(), moment.occurredAt()), command.tamperSeal()))
                .map(Map.Entry::getKey)
                .toList();
        String found = "seal found: " + (command.tamperSeal() == null ? "none" : command.tamperSeal());
        Map<String, UUID> opened =
                discrepancies.open(broken, "SEAL_MISMATCH", moment.actor(), found, id.toString(), moment);
        List<Planned> planned = new ArrayList<>();
        discrepancies.show(opened.values(), command.photos());
        opened.forEach((code, discrepancy) -> planned.add(new Planned(
                Discrepancies.draft(moment, heads.get(code), "SEAL_MISMATCH", discrepancy, found)
                        .withHandOver(id),
                past.at(heads.get(code), moment.place().shown()))));
        return planned;
    }

    private RecordedAct act(UUID id, CustodyKind kind) {
        return new RecordedAct(
                id,
                kind,
                queries.eventsOf(id).stream()
                        .map(RecordedEvent::of)
                        .map(RecordedAct.Item::of)
                        .toList());
    }

    private static String blankToNull(String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }
}
