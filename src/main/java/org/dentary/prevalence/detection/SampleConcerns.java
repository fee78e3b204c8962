package org.dentary.prevalence.detection;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.dentary.prevalence.Words;

/**
 * Why a unit's figures do not hold as they stand: they are those of a random sample of a well-mixed unit, and of a test as
 * good as the plan says.
 *
 * @param sparse fewer tested than this is sparse
 * @param oneSided share of one sex, age class or station above which a sample is one-sided, in (0, 1]
 */
record SampleConcerns(int sparse, double oneSided) {
    /** Below this a share says nothing about sides. */
    private static final int FEWEST_FOR_SIDES = 10;

    /**
     * @param stations how many stations the plan has in the unit
     * @param stationNames names by code
     */
    List<String> of(Sample sample, Assumptions assumptions, int stations, Map<String, String> stationNames) {
        List<String> concerns = new ArrayList<>();
        int tested = sample.tested();
        if (tested == 0) {
            return concerns;
        }
        if (tested < sparse) {
            concerns.add("Sparse: " + ChanceWords.count(tested) + " tested, fewer than " + ChanceWords.count(sparse)
                    + "; a handful more or less moves every figure.");
        }
        side(sample, SampledGroup::sex)
                .ifPresent(s -> concerns.add(s.told(Words.of(s.value()).toLowerCase(java.util.Locale.ROOT))
                        + ": it speaks for them, not for the herd."));
        side(sample, SampledGroup::ageClass)
                .ifPresent(s -> concerns.add(
                        s.told("of age class " + Words.of(s.value()).toLowerCase(java.util.Locale.ROOT))
                                + (s.value().equals("FAWN")
                                        ? ": fawns are the least likely to show the disease."
                                        : ": it speaks for them, not for the herd.")));
        if (stations > 1) {
            side(sample, SampledGroup::station)
                    .ifPresent(s -> concerns.add(s.told("from " + stationNames.getOrDefault(s.value(), s.value()))
                            + ": the rest of the unit may not have been sampled, and the disease clusters."));
        }
        if (assumptions.isMoreThanTheHerd(tested)) {
            concerns.add("More tested (" + ChanceWords.count(tested) + ") than the plan's herd size ("
                    + ChanceWords.count(assumptions.herdSize())
                    + "): put HERD_SIZE right; the figures take a herd much larger than the sample.");
        }
        if (assumptions.sensitivitySource().isEmpty()) {
            concerns.add(
                    assumptions.sensitivity() == 1
                            ? "The plan assumes a test that misses no infected animal and names no source: the figures flatter."
                            : "The plan names no source for the test's sensitivity.");
        }
        return concerns;
    }

    /** The value that more than the share of the tested have, if there is one; unknown is no side. */
    Optional<OneSide> side(Sample sample, Function<SampledGroup, String> property) {
        int tested = sample.tested();
        return sample.testedBy(property).entrySet().stream()
                .filter(e ->
                        tested >= FEWEST_FOR_SIDES && !e.getKey().equals("UNKNOWN") && e.getValue() > oneSided * tested)
                .map(e -> new OneSide(e.getKey(), e.getValue(), tested))
                .findFirst();
    }

    /** So many of the tested have one value. */
    record OneSide(String value, int animals, int tested) {
        String told(String what) {
            return "One-sided: " + ChanceWords.count(animals) + " of " + ChanceWords.count(tested) + " tested are "
                    + what;
        }
    }
}
