package org.dentary.story.dossier;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.custody.CustodyView;
import org.dentary.custody.chain.Concerns;
import org.dentary.custody.discrepancy.DiscrepancyView;
import org.dentary.custody.event.CustodyEventView;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.custody.identity.IdentityExceptionView;
import org.dentary.kit.chain.LabelEvent;
import org.dentary.story.Words;

/** How a dossier says in words what a chain shows: what is wrong first, then what each event tells. */
final class DossierRules {
    private DossierRules() {}

    /** What is wrong or must not be missed, the gravest first. */
    static List<String> concerns(Dossier dossier) {
        CustodyView chain = dossier.custody();
        List<String> concerns = new ArrayList<>();
        chain.differences().forEach(one -> concerns.add("The record no longer agrees with itself: " + one + "."));
        if (dossier.proof() == null && isSealed(dossier)) {
            concerns.add("The last entry is not what a checkpoint sealed. Keep the database as it is and tell whoever"
                    + " answers for the records.");
        }
        dossier.label().differences().forEach(one -> concerns.add("The record of its label: " + one + "."));
        if (chain.lost()) {
            concerns.add("It is reported lost and not found.");
        }
        if (dossier.identity().swapOpen()) {
            concerns.add("A swapped label is unresolved: it is not known which animal this came from.");
        }
        if (dossier.identity().enteredInError()) {
            concerns.add("The animal was entered in error; it is kept and counted nowhere.");
        }
        if (dossier.identity().voided()) {
            concerns.add("This label is void.");
        }
        chain.discrepancies().forEach(one -> concerns.add(discrepancy(one)));
        chain.sealMismatches().forEach(one -> concerns.add(sealMismatch(one)));
        chain.gaps().forEach(one -> concerns.add(gap(dossier, one)));
        chain.excursions().forEach(one -> concerns.add(excursion(one)));
        concerns.addAll(late(chain));
        if (chain.offer() != null && chain.offer().overdue()) {
            concerns.add("Offered to " + chain.offer().toName() + " on "
                    + dossier.local(chain.offer().offeredAt())
                    + " and not accepted within the hours that the plan allows.");
        }
        return List.copyOf(concerns);
    }

    /** An identity exception in one sentence, which names who stands for it. */
    static String exception(Dossier dossier, IdentityExceptionView one) {
        String of = one.code().equals(dossier.custody().code())
                ? ""
                : " of " + grouped(one.code()) + ", which it was cut from";
        String vouched = one.askedByName() + " vouched for it on " + dossier.local(one.askedAt());
        String wrong = ": at the laboratory " + one.problemWords() + ". ";
        if (one.isOpen()) {
            return "Its identity is in doubt" + of + wrong + vouched
                    + "; a second person has not decided. Until then its animal is counted nowhere.";
        }
        String by = one.decidedByName() + " on " + dossier.local(one.decidedAt());
        return one.isGranted()
                ? "Accepted by a signed identity exception" + of + wrong + vouched + ", granted by " + by
                        + ". This stays on its report for ever."
                : "An identity exception was refused" + of + wrong + vouched + ", refused by " + by
                        + ". What is found in it speaks of no animal, unless another exception was granted.";
    }

    /** Late entries, one sentence each; those that only stand out of order are told together. */
    private static List<String> late(CustodyView chain) {
        List<String> told = new ArrayList<>();
        List<Concerns.LateEntry> outOfOrder = new ArrayList<>();
        for (Concerns.LateEntry late : chain.lateEntries()) {
            String paper = paperForm(chain, late);
            boolean laterBefore = chain.events().stream()
                    .anyMatch(event -> event.sequence() < late.sequence()
                            && event.occurredAt().isAfter(late.occurredAt()));
            if (paper == null && laterBefore) {
                outOfOrder.add(late);
            } else {
                told.add("Entry " + late.sequence() + " (" + late.kind().words() + ") was entered "
                        + (paper == null ? "late: " : "from paper form " + paper + ", ") + Words.asAge(late.hours())
                        + " after it happened.");
            }
        }
        if (!outOfOrder.isEmpty()) {
            String entries = outOfOrder.stream()
                    .map(late -> late.sequence() + " (" + late.kind().words() + ")")
                    .collect(Collectors.joining(", "));
            BigDecimal most = outOfOrder.stream()
                    .map(Concerns.LateEntry::hours)
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
            told.add((outOfOrder.size() == 1 ? "Entry " + entries + " was" : "Entries " + entries + " were")
                    + " entered when something later had been recorded already, "
                    + (outOfOrder.size() == 1 || most.compareTo(BigDecimal.ONE) < 0 ? "" : "at most ")
                    + Words.asAge(most) + " after it happened.");
        }
        return told;
    }

    private static String paperForm(CustodyView chain, Concerns.LateEntry late) {
        UUID act = chain.events().stream()
                .filter(event -> event.sequence() == late.sequence() && event.handOver() != null)
                .map(CustodyEventView::handOver)
                .findFirst()
                .orElse(null);
        return chain.events().stream()
                .filter(event -> act != null && act.equals(event.handOver()) && event.paperForm() != null)
                .map(CustodyEventView::paperForm)
                .findFirst()
                .orElse(null);
    }

    private static boolean isSealed(Dossier dossier) {
        List<CustodyEventView> events = dossier.custody().events();
        return !events.isEmpty()
                && dossier.seals().containsKey(events.get(events.size() - 1).id());
    }

    private static String discrepancy(DiscrepancyView one) {
        return "Open discrepancy: " + words(one.kind()) + "; " + one.ownerName() + " settles it by "
                + Words.asDay(one.dueOn()) + (one.overdue() ? ", which has passed" : "") + ".";
    }

    private static String sealMismatch(Concerns.SealMismatch one) {
        return "Entry " + one.sequence() + ": "
                + (one.expected() == null
                        ? "a tamper seal was looked for that was never put on"
                        : "tamper seal " + one.expected() + " was expected")
                + ", "
                + (one.found() == null ? "none was found" : one.found() + " was found") + ".";
    }

    private static String gap(Dossier dossier, Concerns.Gap gap) {
        String from = dossier.local(gap.from());
        if (gap.why() == Concerns.Why.GIVEN_BY_SOMEBODY_ELSE) {
            return "Entry " + gap.sequence() + ": by the times given, who gave it away on " + from
                    + " did not have it.";
        }
        String why = switch (gap.why()) {
            case BETWEEN_GIVING_AND_RECEIVING -> "given, and received only later";
            case BETWEEN_DELIVERY_AND_COUNT -> "delivered, and counted only later";
            default -> "lost";
        };
        return "Nobody is known to have had it for " + gap.hours() + " h, from " + from
                + (gap.to() == null ? " on" : " to " + dossier.local(gap.to())) + ": " + why + ".";
    }

    private static String excursion(Concerns.Excursion one) {
        String allowed = one.lowestCelsius() == null
                ? "at most " + celsius(one.highestCelsius())
                : one.highestCelsius() == null
                        ? "at least " + celsius(one.lowestCelsius())
                        : celsius(one.lowestCelsius()) + " to " + celsius(one.highestCelsius());
        return "Entry " + one.sequence() + ": " + celsius(one.temperatureCelsius())
                + " was read; kept as it was, it should be " + allowed + ".";
    }

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
        add(details, "Condition", event.condition() == null ? null : words(event.condition()));
        add(details, "Signed on the giver's screen", event.signedBy());
        add(details, "Signed on paper form", event.paperForm());
        add(details, "Discrepancy", event.discrepancy() == null ? null : words(event.discrepancy()));
        add(details, "Outcome", event.outcome() == null ? null : words(event.outcome()));
        add(details, "Reason", event.reason());
        add(details, "Evidence", event.evidence());
        event.erasures()
                .forEach(one -> details.add("The " + one.words() + " was erased on "
                        + Dossier.local(one.at(), event.zone()) + " by " + one.byName() + ": " + one.reason()));
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

    /** What the check of the record says of photographs that are gone; null where none is. */
    static String erasures(Dossier dossier) {
        long erased = dossier.custody().events().stream()
                .flatMap(event -> event.photos().stream())
                .filter(EvidenceView::isErased)
                .map(EvidenceView::id)
                .distinct()
                .count();
        return erased == 0
                ? null
                : (erased == 1 ? "1 photo that is evidence was" : erased + " photos that are evidence were")
                        + " erased since. The entries that hold the digest are unchanged and verify; what was erased can"
                        + " no longer be compared with it.";
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

    private static String celsius(BigDecimal degrees) {
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
