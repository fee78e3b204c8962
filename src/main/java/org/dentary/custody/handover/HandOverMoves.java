package org.dentary.custody.handover;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Holder;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Past;
import org.dentary.custody.chain.Planned;
import org.dentary.custody.discrepancy.Discrepancies;
import org.dentary.custody.evidence.EvidenceWriter;
import org.dentary.custody.handover.HandOverQueries.HandOverRow;
import org.dentary.ledger.EventDraft;
import org.dentary.ledger.Redacted;

/** What a hand-over writes on the chains of its codes: one event a code, all at once. */
@ApplicationScoped
class HandOverMoves {
    private static final String NOT_COUNTED = "offered and not counted";
    private static final String NOT_OFFERED = "counted and not offered";

    private final EvidenceWriter chains;
    private final Discrepancies discrepancies;

    HandOverMoves(EvidenceWriter chains, Discrepancies discrepancies) {
        this.chains = chains;
        this.discrepancies = discrepancies;
    }

    void offer(HandOverRow row, OfferHandOver offer, Map<String, Head> heads, Past past, Moment moment) {
        chains.append(
                heads.values().stream()
                        .map(head -> new Planned(
                                Planned.from(moment.draft(CustodyKind.HANDOVER_OFFERED, head), past.holder(head))
                                        .withCounterparty(row.toCustodian())
                                        .withHandOver(row.uuid()),
                                head.offeredIn(row.uuid())))
                        .toList(),
                offer.photos());
    }

    /** Into or out of a store, or signed by both: custody moves now. */
    void atOnce(HandOverRow row, OfferHandOver offer, Map<String, Head> heads, Past past, Moment moment) {
        boolean stored = row.toKind().equals(Holder.STORE);
        boolean signed = offer.isSigned() || offer.isOnPaper();
        Redacted name = Moments.redacted("signedBy", offer.signedBy());
        Redacted strokes = Signature.redacted(offer.signature());
        String place = stored ? row.toCustodian() : moment.place().shown();
        List<Planned> planned = new ArrayList<>();
        for (Head head : heads.values()) {
            Holder from = past.holder(head);
            if (signed && !stored) {
                planned.add(new Planned(
                        Planned.from(moment.draft(CustodyKind.HANDOVER_OFFERED, head), from)
                                .withCounterparty(row.toCustodian())
                                .withHandOver(row.uuid()),
                        head));
            }
            CustodyKind kind = stored ? CustodyKind.STORED : CustodyKind.HANDOVER_ACCEPTED;
            EventDraft draft = Planned.from(moment.draft(kind, head), from)
                    .withCounterparty(stored || signed ? row.toCustodian() : row.fromCustodian())
                    .withHandOver(row.uuid())
                    .with("relinquishedAt", signed ? row.occurredAt() : null)
                    .with("signedBy", name)
                    .with("signature", strokes)
                    .with("paperForm", offer.isOnPaper() ? offer.paperForm().strip() : null);
            planned.add(Planned.moving(
                    stored ? draft.atPlace(row.toCustodian()) : draft,
                    row.to(),
                    past.moved(head, row.to(), place, heads.keySet())));
        }
        chains.append(planned, offer.photos());
    }

    void accept(HandOverRow row, Count count, Map<String, Head> heads, Past past, Moment moment, List<UUID> photos) {
        String subject = row.id();
        Map<String, UUID> shorts =
                discrepancies.open(count.missing(), "SHORT", row.offeredBy(), NOT_COUNTED, subject, moment);
        Map<String, UUID> overs =
                discrepancies.open(count.over(), "OVER", moment.actor(), NOT_OFFERED, subject, moment);
        discrepancies.show(shorts.values(), photos);
        discrepancies.show(overs.values(), photos);
        List<Planned> planned = new ArrayList<>();
        for (String code : count.accepted()) {
            Head head = heads.get(code);
            planned.add(Planned.moving(
                    moment.draft(CustodyKind.HANDOVER_ACCEPTED, head)
                            .withCounterparty(row.fromCustodian())
                            .withHandOver(row.uuid())
                            .with("fromKind", row.fromKind())
                            .with("from", row.fromCustodian())
                            .with("relinquishedAt", row.occurredAt()),
                    row.to(),
                    past.moved(head, row.to(), moment.place().shown(), count.accepted())
                            .offeredIn(null)));
        }
        shorts.forEach((code, id) -> {
            Head head = heads.get(code);
            Head left = head.box() != null && count.accepted().contains(head.box()) ? head.in(null) : head;
            planned.add(new Planned(
                    Discrepancies.draft(moment, head, "SHORT", id, NOT_COUNTED).withHandOver(row.uuid()),
                    row.uuid().equals(head.offered()) ? left.offeredIn(null) : left));
        });
        overs.forEach((code, id) -> {
            Head head = heads.get(code);
            if (head != null) {
                planned.add(new Planned(
                        Discrepancies.draft(moment, head, "OVER", id, NOT_OFFERED)
                                .withHandOver(row.uuid()),
                        head));
            }
        });
        chains.append(planned, photos);
    }

    void refuse(HandOverRow row, Collection<String> codes, Map<String, Head> heads, Moment moment, List<UUID> photos) {
        chains.append(
                codes.stream()
                        .map(heads::get)
                        .map(head -> new Planned(
                                moment.draft(CustodyKind.HANDOVER_REFUSED, head)
                                        .withCounterparty(
                                                row.offeredBy().equals(moment.actor())
                                                        ? row.toCustodian()
                                                        : row.fromCustodian())
                                        .withHandOver(row.uuid()),
                                row.uuid().equals(head.offered()) ? head.offeredIn(null) : head))
                        .toList(),
                photos);
    }
}
