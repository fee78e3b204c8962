package org.dentary.story.dossier;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.dentary.custody.CustodyView;
import org.dentary.custody.event.CustodyEventView;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.kit.chain.LabelEvent;
import org.dentary.kit.chain.LabelHistory;
import org.dentary.ledger.InclusionProof;
import org.dentary.ledger.Seal;

/**
 * All there is to say about one specimen's or box's custody.
 *
 * @param label how its label was issued, printed again, voided
 * @param preservations how it was kept, oldest first
 * @param reAttributions asked, confirmed and refused ones of this label and of what it was cut from, oldest first
 * @param corrections of the specimen's record, oldest first
 * @param seals where its events lie under checkpoints, by event; those that none seals yet are left out
 * @param proof that its last event lies under a checkpoint, or null while none seals it; as each event holds the hash of
 *     the one before it, this vouches for all of them
 */
public record Dossier(
        Identity identity,
        CustodyView custody,
        LabelHistory label,
        List<Preservation> preservations,
        List<ReAttribution> reAttributions,
        List<Correction> corrections,
        Map<UUID, Seal> seals,
        InclusionProof proof) {
    private static final DateTimeFormatter LOCAL = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", Locale.US);

    /** How a specimen was kept from a moment on. */
    public record Preservation(String code, String preservation, Instant since, String by, String reason) {}

    /** A correction of a specimen's record; the old values stand in the history. */
    public record Correction(String code, Instant at, String by, String reason) {}

    /**
     * That what is under a label came from another animal.
     *
     * @param of the code whose dossier it is
     * @param code the label that was asked about: the same, or that of what it was cut from
     * @param state {@code ASKED}, {@code CONFIRMED} or {@code REFUSED}
     */
    public record ReAttribution(
            String of,
            String code,
            String fromKit,
            String toKit,
            String reason,
            String evidence,
            String askedBy,
            Instant askedAt,
            String state,
            String decidedBy,
            Instant decidedAt,
            String decisionReason) {
        public boolean isOfWhatItWasCutFrom() {
            return !of.equals(code);
        }
    }

    public Dossier {
        preservations = List.copyOf(preservations);
        reAttributions = List.copyOf(reAttributions);
        corrections = List.copyOf(corrections);
        seals = Map.copyOf(seals);
    }

    /**
     * An identity exception in one sentence.
     *
     * @param id where it is told whole
     */
    public record ExceptionTold(String id, String sentence) {}

    /** The identity exceptions on its papers, the oldest first: what is said before anything else. */
    public List<ExceptionTold> exceptions() {
        return custody.identityExceptions().stream()
                .map(one -> new ExceptionTold(one.id(), ConcernRules.exception(this, one)))
                .toList();
    }

    /** Whether an identity exception could be asked for: it is tissue, and none of its own waits or stands. */
    public boolean mayBeVouchedFor() {
        return identity.isSpecimen()
                && custody.identityExceptions().stream()
                        .noneMatch(one -> one.code().equals(custody.code()) && (one.isOpen() || one.isGranted()));
    }

    /** What is wrong or must not be missed, one sentence each; empty where nothing is. */
    public List<String> concerns() {
        return ConcernRules.concerns(this);
    }

    /** What an event tells beside its times and its two sides, one sentence each. */
    public List<String> details(CustodyEventView event) {
        return DossierRules.details(event, identity.isDroppedOff());
    }

    /** What it is in a few words, lower case: the side and tissue, a box, or the label's part. */
    public String what() {
        if (identity.isBox()) {
            return "box";
        }
        return identity.isSpecimen()
                ? DossierRules.words(identity.side()) + " " + DossierRules.words(identity.tissue())
                : "label of part " + DossierRules.words(identity.part());
    }

    /** Which texts of an event could be erased: field to what people call it. */
    public Map<String, String> erasable(CustodyEventView event) {
        return DossierRules.erasable(event);
    }

    /** Who erased a photograph, when and why. */
    public String erased(EvidenceView photo) {
        return DossierRules.erased(this, photo);
    }

    /** What the check of the record says of photographs that were erased; null where none was. */
    public String erasures() {
        return DossierRules.erasures(this);
    }

    /** Where its entries are as CSV. */
    public String csv() {
        return "/api/v1/specimens/" + custody.code() + "/custody.csv";
    }

    /** Where an event lies under a checkpoint, or null. */
    public Seal seal(CustodyEventView event) {
        return seals.get(event.id());
    }

    /** Where an event of its label lies under a checkpoint, or null. */
    public Seal seal(LabelEvent event) {
        return seals.get(event.id());
    }

    /** What an event of its label tells, one sentence. */
    public String told(LabelEvent event) {
        return DossierRules.told(event);
    }

    /** When an event of its label was, on the clock of the station. */
    public String local(LabelEvent event) {
        return local(event.occurredAt(), event.zone());
    }

    /** A moment on the clock of the station, with its zone. */
    public String local(Instant at) {
        return local(at, identity.zone());
    }

    /** A moment on the clock of an event's place, with its zone. */
    public String local(CustodyEventView event, Instant at) {
        return local(at, event.zone());
    }

    static String local(Instant at, String zone) {
        return LOCAL.withZone(ZoneId.of(zone)).format(at);
    }
}
