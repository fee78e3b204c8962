package org.dentary.result.imports;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipInputStream;
import org.dentary.platform.problem.InvalidInput;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;

/** Reads a laboratory's table, CSV (RFC 4180, UTF-8) or XLSX (first sheet), into rows by the names in its first line. */
public final class TableReader {
    static final int MOST_ROWS = 200_000;
    private static final long MOST_UNPACKED = 256L * 1024 * 1024;
    /** Columns that every line fills, or that a map fixes. */
    public static final List<String> REQUIRED =
            List.of("specimen_code", "accession_number", "test_method", "stage", "finding", "tested_on", "reported_on");
    /** Columns that may be missing. */
    public static final List<String> OPTIONAL = List.of(
            "status",
            "unsuitable_reason",
            "measured_value",
            "laboratory_item",
            "performing_laboratory",
            "corrects",
            "run");

    private TableReader() {}

    /**
     * Reads CSV.
     *
     * @throws InvalidInput if it is no UTF-8, no CSV, or a needed column is missing
     */
    static ImportFile csv(byte[] file) {
        return csv(file, null);
    }

    /** Reads CSV by the laboratory's map; null, or a first line in our own names, needs none. */
    static ImportFile csv(byte[] file, ColumnMap map) {
        String text = decode(file);
        List<ImportRow> rows = new ArrayList<>();
        Map<String, Integer> columns = null;
        ColumnMap used = null;
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .skipEmptyLines(true)
                .ignoreDifferentFieldCount(true)
                .ofCsvRecord(text)) {
            for (CsvRecord line : csv) {
                if (columns == null) {
                    used = isOurs(line.getFields()) ? null : map;
                    columns = columns(line.getFields(), used);
                } else {
                    rows.add(row((int) line.getStartingLineNumber(), columns, line.getFields(), used));
                    limit(rows);
                }
            }
        } catch (CsvParseException | IllegalArgumentException e) {
            throw new InvalidInput("NOT_A_TABLE", "The file cannot be read as CSV: " + e.getMessage());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (columns == null) {
            throw new InvalidInput("FILE_EMPTY", "The file is empty; its first line must name the columns");
        }
        return new ImportFile(rows, List.of(), used != null);
    }

    /**
     * Reads the first sheet of a workbook.
     *
     * @throws InvalidInput if it is no workbook, or a needed column is missing
     */
    static ImportFile xlsx(byte[] file) {
        return xlsx(file, null);
    }

    /** Reads a workbook by the laboratory's map; null, or a first line in our own names, needs none. */
    static ImportFile xlsx(byte[] file, ColumnMap map) {
        requireModestSize(file);
        List<ImportRow> rows = new ArrayList<>();
        List<RowProblem> problems = new ArrayList<>();
        boolean mapped;
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(file));
                Stream<Row> lines = workbook.getFirstSheet().openStream()) {
            Map<String, Integer>[] columns = newArray();
            ColumnMap[] used = new ColumnMap[1];
            lines.forEach(line -> {
                List<String> cells = new ArrayList<>();
                for (int i = 0; i < line.getCellCount(); i++) {
                    cells.add(text(line, i, columns[0], problems));
                }
                if (columns[0] == null) {
                    used[0] = isOurs(cells) ? null : map;
                    columns[0] = columns(cells, used[0]);
                } else if (cells.stream().anyMatch(cell -> cell != null && !cell.isBlank())) {
                    rows.add(row(line.getRowNum(), columns[0], cells, used[0]));
                    limit(rows);
                }
            });
            mapped = used[0] != null;
            if (columns[0] == null) {
                throw new InvalidInput("FILE_EMPTY", "The first sheet is empty; its first row must name the columns");
            }
        } catch (InvalidInput e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            throw new InvalidInput(
                    "NOT_A_WORKBOOK",
                    "The file cannot be read as an XLSX workbook; save it as XLSX or CSV and send it again");
        }
        return new ImportFile(rows, problems, mapped);
    }

    /** A small file may unpack to more than the memory holds: it is counted, not kept, and refused in time. */
    private static void requireModestSize(byte[] file) {
        byte[] some = new byte[64 * 1024];
        long unpacked = 0;
        try (ZipInputStream parts = new ZipInputStream(new ByteArrayInputStream(file))) {
            while (parts.getNextEntry() != null) {
                for (int read = parts.read(some); read >= 0; read = parts.read(some)) {
                    unpacked += read;
                    if (unpacked > MOST_UNPACKED) {
                        throw new InvalidInput(
                                "UNPACKS_TOO_LARGE",
                                "The workbook unpacks to more than " + MOST_UNPACKED / (1024 * 1024)
                                        + " MB; send it as CSV, or in parts. Nothing was stored");
                    }
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            throw new InvalidInput(
                    "NOT_A_WORKBOOK",
                    "The file cannot be read as an XLSX workbook; save it as XLSX or CSV and send it again");
        }
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Integer>[] newArray() {
        return new Map[1];
    }

    /** A cell's text; a date cell as its day; a code that became a number is named as spreadsheet damage. */
    private static String text(Row line, int index, Map<String, Integer> columns, List<RowProblem> problems) {
        Cell cell = line.getCell(index);
        if (cell == null || cell.getType() == CellType.EMPTY) {
            return null;
        }
        if (cell.getType() != CellType.NUMBER) {
            return cell.getText();
        }
        if (columns == null) {
            return cell.getText();
        }
        String column = columns.entrySet().stream()
                .filter(e -> e.getValue() == index)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse("");
        if (column.endsWith("_on")) {
            LocalDateTime day = cell.asDate();
            return day.toLocalDate().toString();
        }
        if (column.equals("specimen_code")) {
            problems.add(new RowProblem(
                    line.getRowNum(),
                    column,
                    "SPREADSHEET_NUMBER",
                    "the code was turned into the number " + cell.getText()
                            + " by a spreadsheet; format the column as text and enter the code from the label"));
        }
        return cell.asNumber().toPlainString();
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
    private static boolean isOurs(List<String> heads) {
        return heads.stream()
                .filter(head -> head != null)
                .map(head -> head.trim().toLowerCase(Locale.ROOT))
                .toList()
                .containsAll(REQUIRED);
    }

    private static Map<String, Integer> columns(List<String> given, ColumnMap map) {
        List<String> heads = map == null ? given : map.names(given);
        Map<String, Integer> columns = new HashMap<>();
        for (int i = 0; i < heads.size(); i++) {
            if (heads.get(i) != null && !heads.get(i).isBlank()) {
                columns.put(heads.get(i).trim().toLowerCase(Locale.ROOT), i);
            }
        }
        List<String> missing = REQUIRED.stream()
                .filter(c ->
                        !columns.containsKey(c) && (map == null || !map.fixed().containsKey(c)))
                .toList();
        if (!missing.isEmpty()) {
            throw new InvalidInput(
                    "COLUMN_MISSING",
                    "The first line lacks " + String.join(", ", missing) + "; it must name "
                            + String.join(", ", REQUIRED) + " and may name " + String.join(", ", OPTIONAL));
        }
        List<String> unknown = columns.keySet().stream()
                .filter(c -> !REQUIRED.contains(c) && !OPTIONAL.contains(c))
                .sorted()
                .toList();
        if (!unknown.isEmpty()) {
            throw new InvalidInput(
                    "COLUMN_UNKNOWN",
                    "The first line names " + String.join(", ", unknown) + ", which this import does not know; take it"
                            + " away so that nothing is lost unseen. Known: " + String.join(", ", REQUIRED) + ", "
                            + String.join(", ", OPTIONAL));
        }
        return columns;
    }

    private static ImportRow row(int line, Map<String, Integer> columns, List<String> cells, ColumnMap map) {
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

    private static void limit(List<ImportRow> rows) {
        if (rows.size() > MOST_ROWS) {
            throw new InvalidInput("TOO_MANY_ROWS", "The file has more than " + MOST_ROWS + " rows; send it in parts");
        }
    }
}
