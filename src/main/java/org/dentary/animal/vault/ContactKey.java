package org.dentary.animal.vault;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** By what a caller's animals are found without anything being readable; the index holds keyed digests of the folded value. */
public enum ContactKey {
    /** Letters and digits in capitals: "wt 26-0417" and "WT260417" are one number. */
    REGISTRATION {
        @Override
        String foldGiven(String given) {
            return plain(given).replaceAll("[^\\p{L}\\p{N}]", "");
        }
    },
    /** Digits only, without the North American long-distance 1. */
    PHONE {
        @Override
        String foldGiven(String given) {
            String digits = Normalizer.normalize(given, Normalizer.Form.NFKD).replaceAll("[^0-9]", "");
            return digits.length() == 11 && digits.startsWith("1") ? digits.substring(1) : digits;
        }
    },
    /** Words in capitals without accents, sorted, so that "Mora, Inés" is "INES MORA". */
    NAME {
        @Override
        String foldGiven(String given) {
            return Arrays.stream(plain(given).split("[^\\p{L}\\p{N}]+"))
                    .filter(word -> !word.isEmpty())
                    .sorted()
                    .collect(Collectors.joining(" "));
        }
    };

    /** Raise it whenever a folding above changes: every start indexes anew what was indexed under another. */
    static final int FOLDING = 2;

    abstract String foldGiven(String given);

    /** The value as it is indexed; null for null, empty where nothing is left. */
    String fold(String given) {
        return given == null ? null : foldGiven(given);
    }

    /** Compatibility decomposition (Unicode Standard Annex 15) without marks; letters with a stroke have none and are named. */
    private static String plain(String given) {
        return Normalizer.normalize(given, Normalizer.Form.NFKD)
                .replaceAll("[\\p{M}'’]", "")
                .toUpperCase(Locale.ROOT)
                .replace('Ø', 'O')
                .replace('Ł', 'L')
                .replace('Đ', 'D')
                .replace("Æ", "AE")
                .replace("Œ", "OE");
    }
}
