package org.dentary.story.dossier;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import org.dentary.ledger.Sha256;
import org.dentary.platform.problem.InvalidInput;

/**
 * How an audit sample is drawn: every code gets the number SHA-256(seed, a blank, code), and those with the smallest
 * numbers are the sample. Anybody with the seed and the list of codes draws the same, with any tool that has SHA-256; each
 * code has the same chance, and one that is added later changes the sample only where it gets in itself.
 *
 * <p>Source: simple random sampling by permanent random numbers (E. Ohlsson, Coordination of samples using permanent
 * random numbers, in: Business Survey Methods, Wiley 1995; from memory).
 */
final class SampleRules {
    static final int MOST = 500;
    private static final String SEED = "[0-9A-Za-z-]{1,40}";

    private SampleRules() {}

    /**
     * The sample, in the order drawn.
     *
     * @param population each code once, in any order; fewer than size: all of them
     * @param seed as {@link #requireSeed} takes it
     */
    static List<String> draw(List<String> population, String seed, int size) {
        record Ranked(String number, String code) {}
        return population.stream()
                .map(code -> new Ranked(Sha256.hex(seed + " " + code), code))
                .sorted(Comparator.comparing(Ranked::number).thenComparing(Ranked::code))
                .limit(size)
                .map(Ranked::code)
                .toList();
    }

    /** The digest of a population: SHA-256 of its codes in the order of their bytes, each followed by a line feed. */
    static String digest(List<String> population) {
        StringBuilder lines = new StringBuilder();
        population.stream().sorted().forEach(code -> lines.append(code).append('\n'));
        return Sha256.hex(Sha256.of(lines.toString().getBytes(StandardCharsets.UTF_8)));
    }

    /** @throws InvalidInput unless it is 1 to 40 letters, digits and hyphens */
    static String requireSeed(String seed) {
        if (!seed.matches(SEED)) {
            throw InvalidInput.field(
                    "seed",
                    "INVALID_VALUE",
                    "'" + seed + "' is no seed; give 1 to 40 letters, digits and hyphens, or leave it out");
        }
        return seed;
    }

    /** @throws InvalidInput unless it is a whole number from 1 to 500 */
    static int requireSize(String typed) {
        if (typed != null && typed.strip().matches("[0-9]{1,3}")) {
            int size = Integer.parseInt(typed.strip());
            if (size >= 1 && size <= MOST) {
                return size;
            }
        }
        throw InvalidInput.field(
                "size",
                "INVALID_VALUE",
                (typed == null || typed.isBlank() ? "say how many" : "'" + typed + "' is no size")
                        + "; allowed: a whole number from 1 to " + MOST);
    }
}
