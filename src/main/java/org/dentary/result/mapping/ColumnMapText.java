package org.dentary.result.mapping;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.dentary.platform.problem.InvalidInput;

/** A map as it is typed: one pair a line, theirs = ours; a word's column stands before it, apart by a colon. */
final class ColumnMapText {
    private ColumnMapText() {}

    /** Reads what was typed; every line that is no pair is named. */
    static ColumnMap read(String columns, String fixed, String dateFormat, String words) {
        Map<String, Map<String, String>> byColumn = new LinkedHashMap<>();
        pairs("words", words).forEach((head, ours) -> {
            int colon = head.indexOf(':');
            if (colon < 1) {
                throw InvalidInput.field(
                        "words", "NOT_A_PAIR", "'" + head + "' names no column; such as finding: ND = NOT_DETECTED");
            }
            byColumn.computeIfAbsent(head.substring(0, colon).strip(), column -> new LinkedHashMap<>())
                    .put(head.substring(colon + 1).strip(), ours);
        });
        return new ColumnMap(
                pairs("columns", columns),
                pairs("fixed", fixed),
                dateFormat == null || dateFormat.isBlank() ? null : dateFormat.strip(),
                byColumn);
    }

    private static Map<String, String> pairs(String field, String typed) {
        Map<String, String> pairs = new LinkedHashMap<>();
        for (String line : typed == null ? List.<String>of() : typed.lines().toList()) {
            if (line.isBlank()) {
                continue;
            }
            int equals = line.lastIndexOf('=');
            if (equals < 1) {
                throw InvalidInput.field(field, "NOT_A_PAIR", "'" + line.strip() + "' is no pair; write theirs = ours");
            }
            if (pairs.put(
                            line.substring(0, equals).strip(),
                            line.substring(equals + 1).strip())
                    != null) {
                throw InvalidInput.field(
                        field, "TWICE", "'" + line.substring(0, equals).strip() + "' stands twice");
            }
        }
        return pairs;
    }

    /** The pairs of a map, one a line. */
    static String lines(Map<String, String> pairs) {
        List<String> lines = new ArrayList<>();
        new TreeMap<>(pairs).forEach((theirs, ours) -> lines.add(theirs + " = " + ours));
        return String.join("\n", lines);
    }

    static String words(ColumnMap map) {
        List<String> lines = new ArrayList<>();
        new TreeMap<>(map.words())
                .forEach((column, pairs) -> new TreeMap<>(pairs)
                        .forEach((theirs, ours) -> lines.add(column + ": " + theirs + " = " + ours)));
        return String.join("\n", lines);
    }
}
