package org.dentary.animal;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** By what a contact can be found without being readable; the index holds keyed digests of the folded value. */
public enum ContactKey {
    /** Digits only, without the North American long-distance 1. */
    PHONE {
        @Override
        String foldGiven(String given) {
            String digits = given.replaceAll("[^0-9]", "");
            return digits.length() == 11 && digits.startsWith("1") ? digits.substring(1) : digits;
        }
    },
    /** Words in capitals without accents, sorted, so that "Mora, Inés" is "ines mora". */
    NAME {
        @Override
        String foldGiven(String given) {
            String plain = Normalizer.normalize(given, Normalizer.Form.NFKD).replaceAll("\\p{M}", "");
            return Arrays.stream(plain.toUpperCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))
                    .filter(word -> !word.isEmpty())
                    .sorted()
                    .collect(Collectors.joining(" "));
        }
    };

    abstract String foldGiven(String given);

    /** The value as it is indexed; null for null, empty where nothing is left. */
    String fold(String given) {
        return given == null ? null : foldGiven(given);
    }
}
