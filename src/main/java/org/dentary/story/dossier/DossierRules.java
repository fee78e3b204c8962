package org.dentary.story.dossier;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.custody.CustodyView;
import org.dentary.custody.event.CustodyEventView;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.kit.chain.LabelEvent;

/** How a dossier says in words what each event of a chain tells. */
final class DossierRules {
    private DossierRules() {}

    /** What an event tells beside its times and its two sides, in the order in which a reader asks. */
    static List<String> details(CustodyEventView event, boolean droppedOff) {
        List<String> details = new ArrayList<>();
        if (droppedOff && event.kind().equals("COLLECTED")) {
            details.add("Left at a drop-off; who put it in is not recorded. Custody begins with who emptied it");
        }
        add(details, "Place", event.placeName());
        add(details, "Box", grouped(event.box()));
        add(details, "SPLIT".equals(event.kind()) ? "Piece" : "Cut from", grouped(event.otherCode()));
        boolean named = event.carrier() != null && event.carrier().equals(event.custodian());
        add(details, "Carrier", named ? event.custodianName() : event.carrier());
        add(details, "Waybill", event.waybill());
        if (event.temperatureCelsius() != null) {
            details.add("Temperature " + celsius(event.temperatureCelsius())
                    + (event.sensor() == null ? "" : ", read on " + event.sensor()));
        }
        if (event.kind().startsWith("TAMPER_SEAL")) {
            details.add("Tamper seal before: " + said(event.tamperSealBefore()) + "; "
                    + (event.kind().equals("TAMPER_SEAL_APPLIED") ? "put on: " : "found: ") + said(event.tamperSeal()));
        } else {
            add(details, "Tamper seal", event.tamperSeal());
        }
        add(details, "Stood by", event.kind().equals("DESTROYED") ? event.counterpartyName() : null);
        add(details, "Condition", event.condition() == null ? null : words(event.condition()));
        add(details, "Signed on the giver's screen", event.signedBy());
        add(details, "Signed on paper form", event.paperForm());
        add(details, "Discrepancy", event.discrepancy() == null ? null : words(event.discrepancy()));
        add(details, "Outcome", event.outcome() == null ? null : words(event.outcome()));
        add(details, "Reason", event.reason());
        add(details, "Evidence", event.evidence());
        event.erasures().forEach(one -> details.add("The " + one.words() + " was " + one.told(event.zone())));
        if (event.corrects() != null) {
            details.add("Corrects entry " + event.corrects() + "; both stay");
        }
        if (event.correctedBy() != null) {
            details.add("Corrected by entry " + event.correctedBy());
        }
        if (event.late()) {
            details.add("Entered late");
        }
        return List.copyOf(details);
    }

    /** A photograph's caption: who added it and, where it is gone, who erased it and why. */
    static String photo(Dossier dossier, EvidenceView photo) {
        return "Photo added by " + photo.addedByName() + ", " + dossier.local(photo.addedAt())
                + (photo.isErased() ? "; " + erased(dossier, photo) : "") + "; its digest "
                + (photo.isErased() ? "stays" : "is") + " part of this entry:";
    }

    /** Who erased a photograph, when and why. */
    static String erased(Dossier dossier, EvidenceView photo) {
        EvidenceView.Erasure erasure = photo.erasure();
        return erasure == null
                ? "erased, nobody recorded by whom"
                : "erased on " + dossier.local(erasure.at()) + " by " + erasure.byName() + ": " + erasure.reason();
    }

    /** What the check of the record says of photographs and texts that are gone; null where none is. */
    static String erasures(Dossier dossier) {
        long photos = dossier.custody().events().stream()
                .flatMap(event -> event.photos().stream())
                .filter(EvidenceView::isErased)
                .map(EvidenceView::id)
                .distinct()
                .count();
        long texts = dossier.custody().events().stream()
                .mapToLong(event -> event.erasures().size())
                .sum();
        if (photos + texts == 0) {
            return null;
        }
        String gone = Stream.of(
                        count(photos, "photo that is evidence", "photos that are evidence"),
                        count(texts, "text", "texts"))
                .filter(Objects::nonNull)
                .collect(Collectors.joining(" and "));
        return gone + (photos + texts == 1 ? " was" : " were")
                + " erased since. The entries that hold the digest are unchanged and verify; what was erased can no longer"
                + " be compared with it.";
    }

    private static String count(long number, String one, String several) {
        return number == 0 ? null : number + " " + (number == 1 ? one : several);
    }

    /** Which texts of an event could be erased: field to what people call it; empty where none is there. */
    static Map<String, String> erasable(CustodyEventView event) {
        Map<String, String> there = new TreeMap<>();
        boolean inWords = event.place() != null && event.place().equals(event.placeName());
        put(there, "reason", event.reason());
        put(there, "evidence", event.evidence());
        put(there, "signedBy", event.signedBy());
        put(there, "signature", event.signature());
        put(there, "placeText", inWords ? event.place() : null);
        put(there, "carrier", event.carrier());
        put(there, "waybill", event.waybill());
        return there;
    }

    private static void put(Map<String, String> there, String field, String text) {
        if (text != null) {
            there.put(field, ErasedText.FIELDS.get(field));
        }
    }

    /** Who kept what was refused or withdrawn: who had offered it in the same hand-over; null where that is not told. */
    static String keeper(CustodyView chain, CustodyEventView refusal) {
        return chain.events().stream()
                .filter(event -> event.kind().equals("HANDOVER_OFFERED")
                        && refusal.handOver() != null
                        && refusal.handOver().equals(event.handOver()))
                .map(CustodyEventView::fromName)
                .findFirst()
                .orElse(null);
    }

    /** What happened to a label, one sentence without its time. */
    static String told(LabelEvent event) {
        return switch (event.kind()) {
            case LABEL_ISSUED ->
                "Issued by " + event.actorName() + " to " + event.placeName()
                        + (event.personName() == null ? "" : ", " + event.personName() + " answering,") + " with "
                        + event.labels() + " labels in all.";
            case LABEL_REPRINTED ->
                "Printed again by " + event.actorName() + ", print " + event.printNumber() + because(event);
            case LABEL_VOIDED -> "Voided by " + event.actorName() + because(event);
        };
    }

    private static String because(LabelEvent event) {
        return event.reason() == null ? "." : ": " + event.reason() + ".";
    }

    /** A coded value in words, lower case. */
    static String words(String code) {
        return code.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** A label code as it is printed; other texts as they are; null of null. */
    static String grouped(String code) {
        return code == null || code.length() != 10
                ? code
                : code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8);
    }

    /** A temperature with its unit. */
    static String celsius(BigDecimal degrees) {
        return degrees.stripTrailingZeros().toPlainString().replace('-', '\u2212') + "\u00a0\u00b0C";
    }

    private static String said(String seal) {
        return seal == null ? "none" : seal;
    }

    private static void add(List<String> details, String what, String value) {
        if (value != null && !value.isBlank()) {
            details.add(what + ": " + value);
        }
    }
}
