package org.dentary.intake.putright;

import java.util.List;
import org.dentary.specimen.ReAttributionView;
import org.dentary.specimen.SpecimenView;
import org.dentary.story.AnimalStory;

/**
 * One animal, or two side by side, with the swaps that wait for a second person.
 *
 * @param other null where only one is looked at
 * @param between swaps between the two shown, oldest first
 * @param elsewhere swaps of the first with a third animal
 */
public record Comparison(Side one, Side other, List<Swap> between, List<Swap> elsewhere) {
    /**
     * An animal under every kit that it has.
     *
     * @param story of the kit that was asked for
     * @param kits every kit of the animal, the one that counts first
     * @param tissue under whichever of them
     */
    public record Side(AnimalStory story, List<String> kits, List<SpecimenView> tissue) {
        boolean has(String kit) {
            return kits.contains(kit);
        }

        /** The kit that counts for it in reports. */
        public String getCounted() {
            return kits.get(0);
        }

        /** Its kits but the one that was asked for. */
        public List<String> getOthers() {
            return kits.stream().filter(kit -> !kit.equals(story.kit())).toList();
        }

        public List<SpecimenView> tissueOf(String kit) {
            return tissue.stream().filter(one -> one.kit().equals(kit)).toList();
        }
    }

    /**
     * A swap that waits.
     *
     * @param pieces what was cut from the tissue and goes with it
     */
    public record Swap(ReAttributionView asked, List<String> pieces) {}

    /** What an animal will have once every swap between the two is confirmed; codes. */
    public List<String> tissueAfter(Side side) {
        return java.util.stream.Stream.concat(
                        side.tissue().stream().map(SpecimenView::code).filter(code -> !moves(code)),
                        between.stream()
                                .filter(swap -> side.has(swap.asked().toKit()))
                                .flatMap(Comparison::moved))
                .sorted()
                .toList();
    }

    /** Whether both directions are asked for, as of two jars exchanged. */
    public boolean isCrossed() {
        return between.stream()
                        .map(swap -> one.has(swap.asked().fromKit()))
                        .distinct()
                        .count()
                > 1;
    }

    private boolean moves(String code) {
        return between.stream().flatMap(Comparison::moved).anyMatch(code::equals);
    }

    private static java.util.stream.Stream<String> moved(Swap swap) {
        return java.util.stream.Stream.concat(
                java.util.stream.Stream.of(swap.asked().code()), swap.pieces().stream());
    }
}
