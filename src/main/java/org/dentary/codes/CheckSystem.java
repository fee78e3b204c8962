package org.dentary.codes;

import java.math.BigInteger;

/**
 * A pure check character system after ISO/IEC 7064:2003, clause "Pure systems": the characters of a protected string,
 * weighted by powers of the radix from the right (weight 1 for the last), sum to 1 modulo the modulus.
 *
 * <p>One implementation serves every pure system. Where the modulus is no larger than the alphabet with its supplement,
 * one check character is written (MOD 11-2, MOD 37-2, our MOD 29-2); where it is larger, two are, as the check value's
 * digits in base radix (MOD 97-10, MOD 1271-36).
 *
 * <p>A system whose radix, radix - 1 and radix + 1 have no factor in common with its modulus catches every single
 * substitution, every transposition of neighbours and every jump transposition (first and third of three swapped); the
 * constructor refuses any other.
 *
 * @param alphabet the characters that data may hold, each once; a character's value is its index
 * @param supplement further characters that only a check character may take, valued after the alphabet; often empty
 * @param modulus the modulus, at least the length of the alphabet
 * @param radix the weight of a place relative to the place right of it
 */
public record CheckSystem(String alphabet, String supplement, int modulus, int radix) {

    /** The system of our label codes: the 29 characters with few look-alikes, modulus 29, radix 2. */
    public static final CheckSystem LABELS = new CheckSystem("0123456789ACDFGHJKMNPQRTVWXYZ", "", 29, 2);

    /** @throws IllegalArgumentException where the numbers make no system that catches what the class promises */
    public CheckSystem {
        String all = alphabet + supplement;
        if (alphabet.isEmpty() || all.chars().distinct().count() != all.length()) {
            throw new IllegalArgumentException("An alphabet holds each character once: " + all);
        }
        if (modulus < alphabet.length()) {
            throw new IllegalArgumentException(
                    "Modulus " + modulus + " cannot tell " + alphabet.length() + " characters apart");
        }
        long blind = (long) radix * (radix - 1) * (radix + 1);
        if (radix < 2
                || !BigInteger.valueOf(blind).gcd(BigInteger.valueOf(modulus)).equals(BigInteger.ONE)) {
            throw new IllegalArgumentException(
                    "Radix " + radix + " with modulus " + modulus + " would miss substitutions or transpositions");
        }
        if (modulus > all.length() && (alphabet.length() != radix || modulus > radix * radix)) {
            throw new IllegalArgumentException("Modulus " + modulus + " needs two check digits of base " + radix
                    + ", which this alphabet cannot write");
        }
    }

    /** The number of check characters, 1 or 2. */
    public int checkLength() {
        return modulus <= alphabet.length() + supplement.length() ? 1 : 2;
    }

    /**
     * The check character, or the two, to write after a payload.
     *
     * @param payload characters of the alphabet, in writing order; may be empty
     * @throws IllegalArgumentException where a character is outside the alphabet
     */
    public String check(String payload) {
        int sum = 0;
        for (int i = 0; i < payload.length(); i++) {
            sum = Math.floorMod((sum + value(payload.charAt(i), alphabet)) * radix, modulus);
        }
        if (checkLength() == 1) {
            return String.valueOf((alphabet + supplement).charAt(Math.floorMod(1 - sum, modulus)));
        }
        int value = Math.floorMod(1 - sum * radix, modulus);
        return "" + alphabet.charAt(value / radix) + alphabet.charAt(value % radix);
    }

    /**
     * Whether a string that ends in its check characters is congruent to 1.
     *
     * @param whole payload and check together; anything else, a string too short or with foreign characters included,
     *     is simply no match
     */
    public boolean matches(String whole) {
        int data = whole.length() - checkLength();
        if (data < 0) {
            return false;
        }
        String written = alphabet + supplement;
        int sum = 0;
        for (int i = 0; i < whole.length(); i++) {
            int value = (i < data ? alphabet : written).indexOf(whole.charAt(i));
            if (value < 0) {
                return false;
            }
            sum = Math.floorMod(sum * radix + value, modulus);
        }
        return sum == 1;
    }

    private static int value(char character, String among) {
        int value = among.indexOf(character);
        if (value < 0) {
            throw new IllegalArgumentException("'" + character + "' is not one of " + among);
        }
        return value;
    }
}
