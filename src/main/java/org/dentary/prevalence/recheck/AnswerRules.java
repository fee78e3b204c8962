package org.dentary.prevalence.recheck;

import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which numbers two answers to one question differ in. Words may change from release to release; numbers may not. */
final class AnswerRules {
    private AnswerRules() {}

    /** A number that moved; {@code stored} or {@code computed} null: no number there. */
    record Moved(String figure, String stored, String computed) {}

    /**
     * The numbers of a stored answer that differ from the computed one, in the order of the stored. What only the computed
     * one tells is new, not moved.
     */
    static List<Moved> moved(JsonNode stored, JsonNode computed) {
        Map<String, String> before = new LinkedHashMap<>();
        Map<String, String> now = new LinkedHashMap<>();
        figures("", stored, before);
        figures("", computed, now);
        List<Moved> moved = new ArrayList<>();
        before.forEach((figure, number) -> {
            String other = now.get(figure);
            if (number == null ? other != null : !number.equals(other)) {
                moved.add(new Moved(figure, number, other));
            }
        });
        return moved;
    }

    /**
     * The same of two CSV tables, line by line; columns that only the computed one has are new, not moved, and neither are
     * other words.
     */
    static List<Moved> movedCsv(String stored, String computed) {
        List<List<String>> before = records(stored);
        List<List<String>> now = inColumnsOf(before.get(0), records(computed));
        List<Moved> moved = new ArrayList<>();
        for (int line = 0; line < Math.max(before.size(), now.size()); line++) {
            List<String> was = line < before.size() ? before.get(line) : null;
            List<String> is = line < now.size() ? now.get(line) : null;
            if (was == null || is == null || !withoutProse(was).equals(withoutProse(is))) {
                moved.add(new Moved("line " + (line + 1), told(was), told(is)));
            }
        }
        return moved;
    }

    private static List<List<String>> records(String csv) {
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(csv)) {
            return reader.stream().map(CsvRecord::getFields).toList();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    /** A table in the columns of that header; as it is where it lacks one of them or has none besides. */
    private static List<List<String>> inColumnsOf(List<String> columns, List<List<String>> table) {
        List<String> own = table.get(0);
        if (own.equals(columns) || !own.containsAll(columns)) {
            return table;
        }
        return table.stream()
                .map(record -> columns.stream()
                        .map(column -> record.get(own.indexOf(column)))
                        .toList())
                .toList();
    }

    private static List<String> withoutProse(List<String> record) {
        return record.stream().map(cell -> isProse(cell) ? "" : cell).toList();
    }

    private static String told(List<String> record) {
        return record == null ? null : String.join(",", record);
    }

    private static void figures(String path, JsonNode node, Map<String, String> into) {
        if (node.isNumber()) {
            into.put(path, node.isIntegralNumber() ? node.asText() : String.valueOf(node.doubleValue()));
        } else if (node.isNull()) {
            into.put(path, null);
        } else if (node.isObject()) {
            node.properties().forEach(field -> figures(below(path, field.getKey()), field.getValue(), into));
        } else if (node.isArray()) {
            Map<String, Integer> times = new HashMap<>();
            for (JsonNode item : node) {
                String name = name(item);
                int time = times.merge(name, 1, Integer::sum);
                figures(below(path, name.isEmpty() || time > 1 ? (name + " " + time).trim() : name), item, into);
            }
        }
    }

    private static String below(String path, String name) {
        return path.isEmpty() ? name : path + ": " + name;
    }

    /** An item of a list by its codes, so that neither a new row before it nor other words about it move it. */
    private static String name(JsonNode item) {
        List<String> codes = new ArrayList<>();
        if (item.isObject()) {
            item.properties().stream()
                    .map(Map.Entry::getValue)
                    .filter(JsonNode::isTextual)
                    .map(JsonNode::asText)
                    .filter(text -> !text.isEmpty() && !isProse(text))
                    .forEach(codes::add);
        }
        return String.join(", ", codes);
    }

    /** Words, which may change from release to release: a code has no blank. */
    private static boolean isProse(String text) {
        return text.indexOf(' ') >= 0;
    }
}
