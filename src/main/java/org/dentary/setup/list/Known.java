package org.dentary.setup.list;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is set up already, as far as a file can refer to it.
 *
 * @param codes codes of each list; a list without any may be missing
 * @param present rows of the file's own list by key, in set-up order: column name to text
 * @param fixedSeasons seasons that are open or closed, whose days no longer change
 */
public record Known(
        Map<SetUpList, Set<String>> codes, Map<String, Map<String, String>> present, Set<String> fixedSeasons) {

    public static Known of(
            SetUpList list,
            Map<SetUpList, Set<String>> codes,
            List<Map<String, String>> present,
            Set<String> fixedSeasons) {
        Map<String, Map<String, String>> byKey = new LinkedHashMap<>();
        present.forEach(row -> byKey.put(list.keyOf(row), row));
        return new Known(codes, byKey, fixedSeasons);
    }

    /** Whether nothing is set up in a list yet. */
    public boolean lacks(SetUpList list) {
        return codes.getOrDefault(list, Set.of()).isEmpty();
    }

    boolean has(SetUpList list, String code) {
        return codes.getOrDefault(list, Set.of()).contains(code);
    }
}
