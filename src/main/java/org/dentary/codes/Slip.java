package org.dentary.codes;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A slip of eye or finger that would turn a right code into the one typed. It is a place to look at again, never a
 * correction: of codes with two random faults, seven in ten have such an explanation by chance alone.
 *
 * @param position the place, from 1; of a swap, the first of the two
 * @param typed the character, or the two, found there
 * @param perhaps what would make the check right
 * @param kind how such a slip comes about
 */
public record Slip(int position, String typed, String perhaps, Kind kind) {

    /** How a slip comes about, likeliest first. */
    public enum Kind {
        /** Two characters that look alike in print or handwriting. */
        LOOK_ALIKE,
        /** Two neighbours in the wrong order. */
        SWAPPED,
        /** Two keys that lie side by side. */
        NEIGHBORING_KEY
    }

    /** Groups whose members are read for one another in smeared print or handwriting; common practice, no source. */
    private static final List<String> LOOK_ALIKES = List.of(
            "0DQ", "0C", "CG", "6G", "17", "1T", "1J", "2Z", "7Z", "38", "56", "49", "4A", "9G", "VY", "VW", "MN", "HN",
            "KX", "PR", "FP", "KR", "HM", "7T", "XY");

    /** The letters and digits of the keyboards sold in North America (ANSI X3.154 arrangement). */
    private static final List<String> KEY_ROWS = List.of("1234567890", "QWERTYUIOP", "ASDFGHJKL", "ZXCVBNM");

    private static final Map<String, Kind> CONFUSIONS = confusions();

    /** What to look at again, in words. */
    public String hint() {
        return switch (kind) {
            case LOOK_ALIKE -> "character %d: is the %s perhaps %s?".formatted(position, typed, article(perhaps));
            case SWAPPED -> "characters %d and %d: is %s perhaps %s?".formatted(position, position + 1, typed, perhaps);
            case NEIGHBORING_KEY ->
                "character %d: was %s typed for its neighbor %s?".formatted(position, typed, perhaps);
        };
    }

    /**
     * The slips that explain a string that is not acceptable.
     *
     * @param whole characters of the label alphabet
     * @param acceptable tells whether a corrected string is a code
     * @return likeliest first, then by position; empty where none explains it
     */
    static List<Slip> explaining(String whole, Predicate<String> acceptable) {
        List<Slip> slips = new ArrayList<>();
        for (int i = 0; i < whole.length(); i++) {
            String typed = whole.substring(i, i + 1);
            for (char other : CheckSystem.LABELS.alphabet().toCharArray()) {
                Kind kind = CONFUSIONS.get(typed + other);
                if (kind != null && acceptable.test(whole.substring(0, i) + other + whole.substring(i + 1))) {
                    slips.add(new Slip(i + 1, typed, String.valueOf(other), kind));
                }
            }
            if (i + 1 < whole.length()) {
                String swapped = "" + whole.charAt(i + 1) + whole.charAt(i);
                if (acceptable.test(whole.substring(0, i) + swapped + whole.substring(i + 2))) {
                    slips.add(new Slip(i + 1, whole.substring(i, i + 2), swapped, Kind.SWAPPED));
                }
            }
        }
        slips.sort(Comparator.comparing(Slip::kind).thenComparing(Slip::position));
        return slips;
    }

    private static String article(String character) {
        return "a " + character;
    }

    private static Map<String, Kind> confusions() {
        Map<String, Kind> confusions = new TreeMap<>();
        for (String row : KEY_ROWS) {
            for (int i = 0; i + 1 < row.length(); i++) {
                put(confusions, row.charAt(i), row.charAt(i + 1), Kind.NEIGHBORING_KEY);
            }
        }
        for (String group : LOOK_ALIKES) {
            for (int i = 0; i < group.length(); i++) {
                for (int j = i + 1; j < group.length(); j++) {
                    put(confusions, group.charAt(i), group.charAt(j), Kind.LOOK_ALIKE);
                }
            }
        }
        return Map.copyOf(confusions);
    }

    private static void put(Map<String, Kind> confusions, char one, char other, Kind kind) {
        Stream.of("" + one + other, "" + other + one).forEach(pair -> confusions.put(pair, kind));
    }
}
