package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
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
import org.dentary.custody.chain.Rights;
import org.dentary.custody.evidence.EvidenceWriter;
import org.dentary.ledger.Redacted;
import org.dentary.people.Custodian;
import org.dentary.people.PeopleService;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;

/** Custody that goes to carriers and laboratories: what lies in a box goes with it, and the box with what lies in it. */
@ApplicationScoped
public class ParcelService {
    private final Moments moments;
    private final Rights rights;
    private final ChainWriter chains;
    private final CustodyQueries queries;
    private final PeopleService people;
    private final EvidenceWriter entries;

    ParcelService(
            Moments moments,
            Rights rights,
            ChainWriter chains,
            CustodyQueries queries,
            PeopleService people,
            EvidenceWriter entries) {
        this.moments = moments;
        this.rights = rights;
        this.chains = chains;
        this.queries = queries;
        this.people = people;
        this.entries = entries;
    }

    /**
     * The boxes that hold some of these codes and no specimen beside them: where all of them go, so do these.
     *
     * @throws RuleBroken (409) if one that has to go holds others as well
     */
    public Set<String> boxesAlong(Collection<String> codes, Collection<String> mustGo) {
        Set<String> boxes = new TreeSet<>(queries.around(codes));
        boxes.addAll(mustGo);
        Map<String, String> lies = new HashMap<>();
        List<CustodyQueries.InsideRow> inside = queries.inside(boxes);
        inside.forEach(one -> lies.put(one.code(), one.box()));
        Set<String> going = Set.copyOf(codes);
        Map<String, CustodyQueries.LabelRow> labels = queries.labels(lies.keySet());
        Set<String> along = new TreeSet<>(boxes);
        Set<String> others = new TreeSet<>();
        for (CustodyQueries.InsideRow one : inside) {
            if (!going.contains(one.code()) && !labels.get(one.code()).isBox()) {
                for (String box = one.box(); box != null; box = lies.get(box)) {
                    along.remove(box);
                    if (mustGo.contains(box)) {
                        others.add(one.code());
                    }
                }
            }
        }
        if (!others.isEmpty()) {
            throw new RuleBroken(
                    "BOX_HOLDS_OTHERS",
                    "A box that goes also holds " + Labels.shown(List.copyOf(others))
                            + ", which are not on the list; take them out of the box, or pack them");
        }
        return along;
    }

    /**
     * Gives codes to a carrier, who is custodian by the waybill. A box all of whose contents go, goes with them.
     *
     * @return the codes that went, what lay in boxes included, sorted
     * @throws InvalidInput for times that cannot be, or a late entry without a reason
     * @throws RuleBroken (409) if the account did not hold one, or one is offered to somebody
     */
    @Transactional
    public List<String> ship(Shipment shipment) {
        Set<String> going = new TreeSet<>(shipment.codes());
        going.addAll(boxesAlong(shipment.codes(), shipment.boxes()));
        Map<String, Head> heads = chains.lockWithContents(going);
        Moment moment = moment(shipment.occurredAt(), shipment.enteredAt(), shipment.reason(), shipment.place(), heads);
        Past past = rights.past(heads.values(), moment.occurredAt());
        Rights.requireNotOffered(heads.values());
        rights.requireHeld(heads.values(), past);
        Custodian known = people.custodians(List.of(shipment.carrier())).get(shipment.carrier());
        boolean isParty = known != null && known.kind() == Custodian.Kind.PARTY;
        Holder carrier = new Holder(Holder.PARTY, isParty ? known.code() : Holder.CARRIER);
        rights.requireTheirsToDestroy(heads.values(), past, carrier);
        Redacted name = Moments.redacted("carrier", shipment.carrier());
        Redacted waybill = Moments.redacted("waybill", shipment.waybill());
        chains.append(heads.values().stream()
                .map(head -> Planned.moving(
                        Planned.from(moment.draft(CustodyKind.SHIPPED, head), past.holder(head))
                                .withCounterparty(carrier.code())
                                .withHandOver(shipment.act())
                                .with("carrier", name)
                                .with("waybill", waybill),
                        carrier,
                        past.moved(head, carrier, moment.place().shown(), heads.keySet())))
                .toList());
        return List.copyOf(heads.keySet());
    }

    /**
     * Counts codes in at a laboratory or other organisation, which has custody from then on. A code that it has already
     * is passed over; an open offer of one ends. A box that was sent arrives with what lies in it.
     *
     * @return the codes that came, sorted
     * @throws InvalidInput for times that cannot be, or a late entry without a reason
     * @throws RuleBroken (409) if custody of one never began
     */
    @Transactional
    public List<String> receive(Arrival arrival) {
        Holder receiver =
                new Holder(Holder.PARTY, people.custodian(arrival.receiver()).code());
        Set<String> arriving = new TreeSet<>(arrival.codes());
        Set<String> boxes = new TreeSet<>(queries.around(arrival.codes()));
        boxes.removeAll(arriving);
        arriving.addAll(boxes);
        Map<String, Head> heads = new TreeMap<>(chains.lock(arriving));
        Rights.requireInCustody(arrival.codes(), heads);
        // A box that was never sent stays where it is; what came was taken out of it.
        heads.values()
                .removeIf(head ->
                        boxes.contains(head.code()) && !head.holder().kind().equals(Holder.PARTY));
        Set<String> there = Set.copyOf(heads.keySet());
        heads.values().removeIf(head -> head.holder().equals(receiver));
        if (heads.isEmpty()) {
            return List.of();
        }
        Moment moment = moment(arrival.receivedAt(), arrival.enteredAt(), arrival.reason(), arrival.receiver(), heads);
        Past past = rights.past(heads.values(), moment.occurredAt());
        heads.values()
                .forEach(head ->
                        CustodyRules.requireAfterCollection(head.code(), moment.occurredAt(), head.collectedAt()));
        entries.append(
                heads.values().stream()
                        .map(head -> Planned.moving(
                                Planned.from(moment.draft(CustodyKind.RECEIVED, head), past.holder(head))
                                        .withCounterparty(receiver.code())
                                        .withHandOver(arrival.act()),
                                receiver,
                                past.moved(head, receiver, moment.place().shown(), there)
                                        .offeredIn(null)))
                        .toList(),
                arrival.photos());
        return List.copyOf(heads.keySet());
    }

    private Moment moment(Instant occurredAt, Instant enteredAt, String reason, String place, Map<String, Head> heads) {
        ZoneId zone = Labels.zone(List.copyOf(
                queries.labels(List.of(heads.keySet().iterator().next())).values()));
        return moments.moment(occurredAt, enteredAt, reason, moments.place(place), zone);
    }
}
