package org.dentary.codes;

import java.security.SecureRandom;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.random.RandomGenerator;

/**
 * Makes new kits from a random source. Random rather than sequential, so that a slipped character cannot name a
 * neighbor's kit. There are 19 x 29^7 (3.3 x 10^11) kits; two callers may still draw the same one, so whoever issues
 * them keeps a unique constraint and draws again.
 */
public final class Minting {

    /** Beginnings that a spreadsheet might take for a date. */
    private static final Set<String> MONTHS = Set.of("JAN", "MAR", "APR", "MAY");

    private final RandomGenerator random;

    /** Mints from the platform's cryptographically strong source. */
    public Minting() {
        this(new SecureRandom());
    }

    /** Mints from a given source; anything but a {@link SecureRandom} is for tests and demonstrations. */
    public Minting(RandomGenerator random) {
        this.random = random;
    }

    /** One new kit. */
    public KitStem mint() {
        String alphabet = CheckSystem.LABELS.alphabet();
        String letters = alphabet.replaceAll("[0-9]", "");
        while (true) {
            StringBuilder stem = new StringBuilder().append(letters.charAt(random.nextInt(letters.length())));
            while (stem.length() < KitStem.LENGTH) {
                stem.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            if (!MONTHS.contains(stem.substring(0, 3))) {
                return new KitStem(stem.toString());
            }
        }
    }

    /**
     * Several new kits, all different.
     *
     * @param count how many, at least 0
     * @return in the order drawn
     */
    public List<KitStem> mint(int count) {
        Set<KitStem> kits = new LinkedHashSet<>();
        while (kits.size() < count) {
            kits.add(mint());
        }
        return List.copyOf(kits);
    }
}
