package org.dentary.story.dossier;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.custody.CustodyView;
import org.dentary.custody.chain.Concerns;
import org.dentary.custody.discrepancy.DiscrepancyView;
import org.dentary.custody.event.CustodyEventView;
import org.dentary.custody.identity.IdentityExceptionView;
import org.dentary.story.Words;

/** How a dossier says in words what is wrong with a chain, or must not be missed. */
final class ConcernRules {
    private ConcernRules() {}

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
                : " of " + DossierRules.grouped(one.code()) + ", which it was cut from";
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
        return "Open discrepancy: " + DossierRules.words(one.kind()) + "; " + one.ownerName() + " settles it by "
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
                ? "at most " + DossierRules.celsius(one.highestCelsius())
                : one.highestCelsius() == null
                        ? "at least " + DossierRules.celsius(one.lowestCelsius())
                        : DossierRules.celsius(one.lowestCelsius()) + " to "
                                + DossierRules.celsius(one.highestCelsius());
        return "Entry " + one.sequence() + ": " + DossierRules.celsius(one.temperatureCelsius())
                + " was read; kept as it was, it should be " + allowed + ".";
    }
}
