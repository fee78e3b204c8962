package org.dentary.submission.packing;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.custody.HeadView;
import org.dentary.plan.AcceptanceView;
import org.dentary.platform.problem.FieldProblem;

/** Whether a laboratory takes a specimen on the packing day. The laboratory's own current instructions stand above. */
public final class PackingRules {
    private static final List<String> AGES = List.of("FAWN", "YEARLING", "ADULT");

    private PackingRules() {}

    /**
     * Faults that an override with a reason can pass: the laboratory's rules.
     *
     * @param rules what the laboratory accepts on that day
     */
    public static List<FieldProblem> laboratory(
            PackingFacts specimen, String laboratory, List<AcceptanceView> rules, LocalDate packedOn) {
        List<FieldProblem> faults = new ArrayList<>();
        List<AcceptanceView> tissue =
                rules.stream().filter(r -> r.tissue().equals(specimen.tissue())).toList();
        if (tissue.isEmpty()) {
            faults.add(fault(
                    "TISSUE_NOT_ACCEPTED",
                    laboratory + " does not take " + words(specimen.tissue()) + "; it takes "
                            + list(rules.stream().map(r -> words(r.tissue())).toList())
                            + ". Send it elsewhere, or give an override reason agreed with the laboratory"));
            return faults;
        }
        List<AcceptanceView> kept = tissue.stream()
                .filter(r -> r.preservation().equals(specimen.preservation()))
                .toList();
        if (kept.isEmpty()) {
            faults.add(fault(
                    "PRESERVATION_NOT_ACCEPTED",
                    laboratory + " takes " + words(specimen.tissue()) + " "
                            + list(tissue.stream()
                                    .map(r -> words(r.preservation()))
                                    .toList()) + ", not "
                            + words(specimen.preservation())
                            + ". Ask the laboratory, or give an override reason agreed with it"));
            return faults;
        }
        List<AcceptanceView> side = kept.stream()
                .filter(r -> r.side() == null || r.side().equals(specimen.side()))
                .toList();
        if (side.isEmpty()) {
            faults.add(fault(
                    "SIDE_NOT_ACCEPTED",
                    laboratory + " takes the side "
                            + list(kept.stream().map(r -> words(r.side())).toList()) + ", this is "
                            + words(specimen.side()) + ". Take the other piece, or give an override reason"));
            return faults;
        }
        long days = ChronoUnit.DAYS.between(specimen.collectedOn(), packedOn);
        if (side.stream().noneMatch(r -> r.maxDays() == null || days <= r.maxDays())) {
            int most = side.stream().mapToInt(AcceptanceView::maxDays).max().orElse(0);
            faults.add(fault(
                    "TOO_OLD",
                    laboratory + " takes it up to " + most + " days from collection; this was collected "
                            + specimen.collectedOn() + ", " + days
                            + " days ago. Call the laboratory, then give an override reason"));
        }
        List<AcceptanceView> fresh = side.stream()
                .filter(r -> r.maxDays() == null || days <= r.maxDays())
                .toList();
        (fresh.isEmpty() ? side : fresh)
                .stream()
                        .map(rule -> more(specimen, laboratory, rule, packedOn))
                        .min(java.util.Comparator.comparingInt(List::size))
                        .ifPresent(faults::addAll);
        return faults;
    }

    /** What one rule asks beyond tissue, preservation, side and days from collection. */
    private static List<FieldProblem> more(
            PackingFacts specimen, String laboratory, AcceptanceView rule, LocalDate packedOn) {
        List<FieldProblem> faults = new ArrayList<>();
        long kept = ChronoUnit.DAYS.between(specimen.keptSince(), packedOn);
        if (rule.maxDaysKept() != null && kept > rule.maxDaysKept()) {
            faults.add(fault(
                    "KEPT_TOO_LONG",
                    laboratory + " takes it up to " + rule.maxDaysKept() + " days "
                            + words(specimen.preservation()) + "; this is so since " + specimen.keptSince() + ", "
                            + kept
                            + " days. Call the laboratory, then give an override reason"));
        }
        int age = AGES.indexOf(specimen.ageClass());
        if (age < 0 && Boolean.TRUE.equals(rule.unknownAgeStops())) {
            faults.add(fault(
                    "AGE_UNKNOWN",
                    laboratory
                            + " takes no tissue of unknown age; have the jaw read first, or give an override reason"));
        }
        if (age >= 0 && rule.minimumAge() != null && age < AGES.indexOf(rule.minimumAge())) {
            faults.add(fault(
                    "TOO_YOUNG",
                    laboratory + " takes " + words(rule.minimumAge()) + " and older, this is a "
                            + words(specimen.ageClass())
                            + ". Ask the laboratory, or give an override reason agreed with it"));
        }
        return faults;
    }

    /**
     * Formalin and what is kept cold do not share a box: jars of fixed tissue are not set against ice, and a leak spoils
     * the rest. A reason passes it. Common practice of laboratories, no source; how a parcel is classified and marked
     * stays the trained shipper's decision.
     *
     * @param box that it is scanned into, or null
     * @param packed what is in the submission
     */
    public static List<FieldProblem> apart(PackingFacts specimen, String box, List<PackedView> packed) {
        List<String> others = packed.stream()
                .filter(piece -> box != null
                        && box.equals(piece.box())
                        && !piece.code().equals(specimen.code())
                        && isFixed(piece.preservation()) != isFixed(specimen.preservation())
                        && (isFixed(piece.preservation()) || isCold(piece.preservation()))
                        && (isFixed(specimen.preservation()) || isCold(specimen.preservation())))
                .map(PackedView::preservation)
                .toList();
        return others.isEmpty()
                ? List.of()
                : List.of(new FieldProblem(
                        "box",
                        "FORMALIN_APART",
                        "box " + box + " holds " + others.size() + " kept as "
                                + list(others.stream().map(PackingRules::words).toList()) + ", this is "
                                + words(specimen.preservation())
                                + ". Put it into another box, or give an override reason"));
    }

    private static boolean isFixed(String preservation) {
        return preservation.equals("FORMALIN");
    }

    private static boolean isCold(String preservation) {
        return preservation.equals("FRESH_CHILLED") || preservation.equals("FROZEN");
    }

    /** Faults of the packing day that nothing passes. */
    public static List<FieldProblem> day(PackingFacts specimen) {
        return specimen.on().isBefore(specimen.collectedOn())
                ? List.of(new FieldProblem(
                        "packedAt",
                        "PACKED_BEFORE_COLLECTED",
                        "packed on " + specimen.on() + ", but collected on " + specimen.collectedOn()
                                + "; check both days"))
                : List.of();
    }

    /** Faults that nothing passes: what would make a wrong record. */
    public static List<FieldProblem> record(PackingFacts specimen) {
        List<FieldProblem> faults = new ArrayList<>();
        if (specimen.openElsewhere() != null) {
            faults.add(fault(
                    "IN_ANOTHER_SUBMISSION",
                    specimen.code() + " is in submission " + specimen.openElsewhere()
                            + ", which has not been received; take it out there first"));
        }
        if (Boolean.TRUE.equals(specimen.enteredInError())) {
            faults.add(fault(
                    "ENTERED_IN_ERROR",
                    "the animal of " + specimen.code()
                            + " was entered in error, so that a result would belong to none; record the tissue at its own"
                            + " animal first"));
        }
        if (Boolean.TRUE.equals(specimen.excluded())) {
            faults.add(fault(
                    "NOT_ATTRIBUTABLE",
                    "a label of this animal is in doubt (a swap not put right, or an identity exception that was not granted);"
                            + " settle it before anything is sent"));
        }
        if ("DESTROYED".equals(specimen.lastKind()) || "LOST".equals(specimen.lastKind())) {
            faults.add(fault(
                    specimen.lastKind(),
                    specimen.code() + " was recorded as " + words(specimen.lastKind())
                            + (specimen.lastKind().equals("LOST")
                                    ? "; if it lies before you, record in its custody that it was found"
                                    : "; was another tube meant?")));
        }
        return faults;
    }

    /** What somebody else holds is not the packer's to send yet. */
    public static FieldProblem notWithYou(HeadView head) {
        return fault("NOT_WITH_YOU", heldElsewhere(head) + ", or give an override reason. It cannot leave before that");
    }

    /** The same for what is packed and is to leave: no reason passes it. */
    public static FieldProblem cannotLeave(HeadView head) {
        return fault("NOT_WITH_YOU", heldElsewhere(head));
    }

    private static String heldElsewhere(HeadView head) {
        return head.code() + " is in the custody of " + head.custodian()
                + (head.place() == null ? "" : " at " + head.place())
                + (head.offered() ? " and is offered to somebody" : "")
                + "; take it over by a hand-over first";
    }

    private static FieldProblem fault(String rule, String message) {
        return new FieldProblem("code", rule, message);
    }

    private static String list(List<String> words) {
        return words.stream().distinct().sorted().collect(Collectors.joining(", "));
    }

    private static String words(String code) {
        return code == null ? "any" : code.toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }
}
