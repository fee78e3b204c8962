package org.dentary.result.imports.file;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.result.mapping.ColumnMap;

/** Reads a laboratory's table, CSV (RFC 4180, UTF-8), into rows by the names in its first line. */
public final class TableReader {
    static final int MOST_ROWS = 200_000;

    private TableReader() {}

    /**
     * Reads CSV.
     *
     * @throws InvalidInput if it is no UTF-8, no CSV, or a needed column is missing
     */
    public static ImportFile csv(byte[] file) {
        return csv(file, null);
    }

    /** Reads CSV by the laboratory's map; null, or a first line in our own names, needs none. */
    public static ImportFile csv(byte[] file, ColumnMap map) {
        String text = decode(file);
        List<ImportRow> rows = new ArrayList<>();
        List<RowProblem> problems = new ArrayList<>();
        Map<String, Integer> columns = null;
        ColumnMap used = null;
        int heads = 0;
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .skipEmptyLines(true)
                .ignoreDifferentFieldCount(true)
                .ofCsvRecord(text)) {
            for (CsvRecord line : csv) {
                if (columns == null) {
                    used = isOurs(line.getFields()) ? null : map;
                    columns = columns(line.getFields(), used);
                    heads = line.getFieldCount();
                } else {
                    tooMany(line, heads, problems);
                    rows.add(row((int) line.getStartingLineNumber(), columns, line.getFields(), used));
                    limit(rows);
                }
            }
        } catch (CsvParseException | IllegalArgumentException e) {
            throw new InvalidInput(
                    "NOT_A_TABLE",
                    "The file cannot be read as CSV (RFC 4180): a line has far too many cells, a text is far too long or a"
                            + " quotation mark is not closed; open it in a spreadsheet and save it as CSV UTF-8");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (columns == null) {
            throw new InvalidInput("FILE_EMPTY", "The file is empty; its first line must name the columns");
        }
        return new ImportFile(rows, problems, used != null);
    }

    /** A comma that was not quoted moves what follows it into other columns. Cells missing at the end are empty ones. */
    private static void tooMany(CsvRecord line, int heads, List<RowProblem> problems) {
        if (line.getFields().stream().skip(heads).anyMatch(cell -> !cell.isBlank())) {
            problems.add(new RowProblem(
                    (int) line.getStartingLineNumber(),
                    "line",
                    "CELL_COUNT",
                    "the line has " + line.getFieldCount() + " cells, the first line " + heads
                            + "; put text that holds a comma in quotes"));
        }
    }

    private static String decode(byte[] file) {
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(file))
                    .toString();
            if (text.indexOf('\0') >= 0) {
                throw new InvalidInput("WRONG_CHARACTER_SET", "The file is not text in UTF-8; save it as CSV UTF-8");
            }
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new InvalidInput(
                    "WRONG_CHARACTER_SET",
                    "The file is not in UTF-8; save it as CSV UTF-8 (other character sets garble names and codes)");
        }
    }

    /** Whether the first line names every needed column as we do. */
    static boolean isOurs(List<String> heads) {
        return heads.stream()
                .filter(head -> head != null)
                .map(head -> head.trim().toLowerCase(Locale.ROOT))
                .toList()
                .containsAll(ColumnMap.REQUIRED);
    }

    static Map<String, Integer> columns(List<String> given, ColumnMap map) {
        List<String> heads = map == null ? given : map.names(given);
        Map<String, Integer> columns = new HashMap<>();
        for (int i = 0; i < heads.size(); i++) {
            if (heads.get(i) != null && !heads.get(i).isBlank()) {
                String head = heads.get(i).trim().toLowerCase(Locale.ROOT);
                if (columns.put(head, i) != null) {
                    throw new InvalidInput(
                            "COLUMN_TWICE",
                            "The first line names " + head
                                    + " twice, and which of the two holds is not known; take one of them away");
                }
            }
        }
        List<String> missing = ColumnMap.REQUIRED.stream()
                .filter(c ->
                        !columns.containsKey(c) && (map == null || !map.fixed().containsKey(c)))
                .toList();
        if (!missing.isEmpty()) {
            throw new InvalidInput(
                    "COLUMN_MISSING",
                    "The first line lacks " + String.join(", ", missing) + "; it must name "
                            + String.join(", ", ColumnMap.REQUIRED) + " and may name "
                            + String.join(", ", ColumnMap.OPTIONAL) + separated(given));
        }
        List<String> unknown = columns.keySet().stream()
                .filter(c -> !ColumnMap.REQUIRED.contains(c) && !ColumnMap.OPTIONAL.contains(c))
                .sorted()
                .toList();
        if (!unknown.isEmpty()) {
            throw new InvalidInput(
                    "COLUMN_UNKNOWN",
                    "The first line names " + String.join(", ", unknown) + ", which this import does not know; take it"
                            + " away so that nothing is lost unseen. Known: " + String.join(", ", ColumnMap.REQUIRED)
                            + ", "
                            + String.join(", ", ColumnMap.OPTIONAL));
        }
        return columns;
    }

    /** What to do about a first line whose names are parted by something else than commas. */
    private static String separated(List<String> heads) {
        String only = heads.size() == 1 && heads.get(0) != null ? heads.get(0) : "";
        return only.contains(";") || only.contains("\t")
                ? ". Its names are parted by " + (only.contains(";") ? "semicolons" : "tabs")
                        + "; save it with commas (CSV UTF-8)"
                : "";
    }

    static ImportRow row(int line, Map<String, Integer> columns, List<String> cells, ColumnMap map) {
        return new ImportRow(
                line,
                cell(columns, cells, map, "specimen_code"),
                cell(columns, cells, map, "accession_number"),
                cell(columns, cells, map, "laboratory_item"),
                cell(columns, cells, map, "test_method"),
                cell(columns, cells, map, "stage"),
                cell(columns, cells, map, "finding"),
                cell(columns, cells, map, "status"),
                cell(columns, cells, map, "tested_on"),
                cell(columns, cells, map, "reported_on"),
                cell(columns, cells, map, "unsuitable_reason"),
                cell(columns, cells, map, "measured_value"),
                cell(columns, cells, map, "performing_laboratory"),
                cell(columns, cells, map, "corrects"),
                cell(columns, cells, map, "run"),
                null);
    }

    private static String cell(Map<String, Integer> columns, List<String> cells, ColumnMap map, String name) {
        Integer at = columns.get(name);
        String text = at == null || at >= cells.size() || cells.get(at) == null
                ? ""
                : cells.get(at).trim();
        String given = text.isEmpty() ? null : text;
        return map == null ? given : map.value(name, given);
    }

    static void limit(List<ImportRow> rows) {
        if (rows.size() > MOST_ROWS) {
            throw new InvalidInput("TOO_MANY_ROWS", "The file has more than " + MOST_ROWS + " rows; send it in parts");
        }
    }
}
