package org.dentary.prevalence.recheck;

import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
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

    /** The same of two CSV tables, line by line; columns that only the computed one has are new, not moved. */
    static List<Moved> movedCsv(String stored, String computed) {
        String[] before = stored.split("\r\n");
        String[] now = inColumnsOf(before[0], computed).split("\r\n");
        List<Moved> moved = new ArrayList<>();
        for (int line = 0; line < Math.max(before.length, now.length); line++) {
            String was = line < before.length ? before[line] : null;
            String is = line < now.length ? now[line] : null;
            if (was == null ? is != null : !was.equals(is)) {
                moved.add(new Moved("line " + (line + 1), was, is));
            }
        }
        return moved;
    }

    /** A table in the columns of that header; as it is where it lacks one of them or has none besides. */
    private static String inColumnsOf(String header, String csv) {
        List<String> columns = List.of(header.split(","));
        List<String> own = List.of(csv.split("\r\n")[0].split(","));
        if (own.equals(columns) || !own.containsAll(columns)) {
            return csv;
        }
        StringWriter kept = new StringWriter();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(csv);
                CsvWriter writer =
                        CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(kept)) {
            reader.forEach(record -> writer.writeRecord(columns.stream()
                    .map(column -> record.getField(own.indexOf(column)))
                    .toList()));
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return kept.toString();
    }

    private static void figures(String path, JsonNode node, Map<String, String> into) {
        if (node.isNumber()) {
            into.put(path, node.isIntegralNumber() ? node.asText() : String.valueOf(node.doubleValue()));
        } else if (node.isNull()) {
            into.put(path, null);
        } else if (node.isObject()) {
            node.properties().forEach(field -> figures(below(path, field.getKey()), field.getValue(), into));
        } else if (node.isArray()) {
            int index = 0;
            for (JsonNode item : node) {
                index++;
                String name = name(item);
                figures(below(path, name.isEmpty() ? String.valueOf(index) : name), item, into);
            }
        }
    }

    private static String below(String path, String name) {
        return path.isEmpty() ? name : path + ": " + name;
    }

    /** An item of a list by its own words, so that a new row before it does not move it. */
    private static String name(JsonNode item) {
        List<String> words = new ArrayList<>();
        if (item.isObject()) {
            item.properties().stream()
                    .filter(field -> field.getValue().isTextual())
                    .forEach(field -> words.add(field.getValue().asText()));
        }
        return String.join(", ", words);
    }
}
