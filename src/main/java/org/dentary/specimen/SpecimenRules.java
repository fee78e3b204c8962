package org.dentary.specimen;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.dentary.codes.Part;
import org.dentary.platform.problem.FieldProblem;

/** What must hold of a specimen, and what is worth a second look. */
final class SpecimenRules {
    private static final Set<Part> HOLD_NO_TISSUE = EnumSet.of(Part.FORM, Part.STUB, Part.BOX, Part.SUBMISSION);

    private static final Set<Tissue> NODES = EnumSet.of(
            Tissue.MEDIAL_RETROPHARYNGEAL_NODE,
            Tissue.LATERAL_RETROPHARYNGEAL_NODE,
            Tissue.PAROTID_NODE,
            Tissue.SUBMANDIBULAR_NODE);

    /** Which tissue a label's words promise; a part that is not here promises none. */
    private static final Map<Part, Set<Tissue>> PROMISED = Map.of(
            Part.NODE_LEFT, NODES,
            Part.NODE_RIGHT, NODES,
            Part.NODES, NODES,
            Part.OBEX, Set.of(Tissue.OBEX),
            Part.TONSIL, Set.of(Tissue.TONSIL),
            Part.HEAD, Set.of(Tissue.WHOLE_HEAD),
            Part.EAR, Set.of(Tissue.EAR),
            Part.BLOOD, Set.of(Tissue.BLOOD),
            Part.LUNG, Set.of(Tissue.LUNG),
            Part.INCISOR, Set.of(Tissue.INCISOR));

    private SpecimenRules() {}

    /**
     * What is known beside the specimen itself.
     *
     * @param part what the label was printed for; null until a label is looked at
     * @param diedOn day of death where known to the day, else null
     * @param station zone of the animal's station
     * @param parentCollectedAt when the specimen was taken from which this piece was cut, or null
     * @param skew how far a device's clock may run ahead
     */
    record Surroundings(
            Part part, LocalDate diedOn, ZoneId station, Instant parentCollectedAt, Instant now, Duration skew) {
        Surroundings under(Part label) {
            return new Surroundings(label, diedOn, station, parentCollectedAt, now, skew);
        }
    }

    /**
     * Everything that does not hold.
     *
     * @param at path of the specimen in the request with its dot, or empty
     */
    static List<FieldProblem> problems(TakeSpecimen given, Surroundings around, String at) {
        List<FieldProblem> problems = new ArrayList<>();
        if (HOLD_NO_TISSUE.contains(around.part())) {
            problems.add(new FieldProblem(
                    at + "code",
                    "PART_HOLDS_NO_TISSUE",
                    given.code() + " is the kit's \"" + around.part().label()
                            + "\" label; scan the label on the jar or bag that holds the tissue"));
        }
        if (given.tissue() == Tissue.OTHER
                && (given.tissueText() == null || given.tissueText().isBlank())) {
            problems.add(new FieldProblem(at + "tissueText", "REQUIRED", "Say in words which tissue it is"));
        }
        if (isOtherSide(around.part(), given.side())) {
            problems.add(new FieldProblem(
                    at + "side",
                    "LABEL_OF_OTHER_SIDE",
                    "The label says \"" + around.part().label() + "\" and the side given is " + given.side()
                            + "; use the label of that side, or a spare one"));
        }
        Instant collected = given.collectedAt().toInstant();
        if (collected.isAfter(around.now().plus(around.skew()))) {
            problems.add(new FieldProblem(
                    at + "collectedAt", "FUTURE", given.collectedAt() + " is still to come; check the time"));
        }
        if (around.diedOn() != null
                && collected.atZone(around.station()).toLocalDate().isBefore(around.diedOn())) {
            problems.add(new FieldProblem(
                    at + "collectedAt",
                    "BEFORE_DEATH",
                    "Taken at " + given.collectedAt() + ", before the animal died on " + around.diedOn()
                            + "; correct the one that is wrong"));
        }
        if (around.parentCollectedAt() != null && collected.isBefore(around.parentCollectedAt())) {
            problems.add(new FieldProblem(
                    at + "collectedAt",
                    "BEFORE_PARENT",
                    "Cut at " + given.collectedAt() + ", before the specimen itself was taken at "
                            + around.parentCollectedAt() + "; correct the one that is wrong"));
        }
        if (given.preservedAt() != null && given.preservedAt().toInstant().isBefore(collected)) {
            problems.add(new FieldProblem(
                    at + "preservedAt",
                    "BEFORE_COLLECTED",
                    "Kept like this since before it was taken; check the time"));
        }
        return problems;
    }

    /** What is allowed and worth a second look, as a sentence. */
    static Optional<String> warning(Part part, TakeSpecimen given) {
        Set<Tissue> promised = PROMISED.get(part);
        if (promised != null && !promised.contains(given.tissue())) {
            return Optional.of("Label " + given.code() + " says \"" + part.label() + "\" and the tissue given is "
                    + given.tissue().words()
                    + "; a laboratory may refuse it. Relabel it, or check what is in the jar.");
        }
        if (given.tissue() == Tissue.LATERAL_RETROPHARYNGEAL_NODE) {
            return Optional.of("Specimen " + given.code()
                    + " is the lateral node; most laboratories test the medial one, which lies deeper. Look again.");
        }
        return Optional.empty();
    }

    private static boolean isOtherSide(Part part, Side side) {
        return (part == Part.NODE_LEFT && side == Side.RIGHT) || (part == Part.NODE_RIGHT && side == Side.LEFT);
    }
}
