package org.dentary.result;

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
final class TableReader {
    static final int MOST_ROWS = 200_000;
    private static final long MOST_UNPACKED = 256L * 1024 * 1024;
    private static final List<String> REQUIRED =
            List.of("specimen_code", "accession_number", "test_method", "stage", "finding", "tested_on", "reported_on");
    private static final List<String> OPTIONAL = List.of(
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
        String text = decode(file);
        List<ImportRow> rows = new ArrayList<>();
        Map<String, Integer> columns = null;
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .skipEmptyLines(true)
                .ignoreDifferentFieldCount(true)
                .ofCsvRecord(text)) {
            for (CsvRecord line : csv) {
                if (columns == null) {
                    columns = columns(line.getFields());
                } else {
                    rows.add(row((int) line.getStartingLineNumber(), columns, line.getFields()));
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
        return new ImportFile(rows, List.of());
    }

    /**
     * Reads the first sheet of a workbook.
     *
     * @throws InvalidInput if it is no workbook, or a needed column is missing
     */
    static ImportFile xlsx(byte[] file) {
        requireModestSize(file);
        List<ImportRow> rows = new ArrayList<>();
        List<RowProblem> problems = new ArrayList<>();
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(file));
                Stream<Row> lines = workbook.getFirstSheet().openStream()) {
            Map<String, Integer>[] columns = newArray();
            lines.forEach(line -> {
                List<String> cells = new ArrayList<>();
                for (int i = 0; i < line.getCellCount(); i++) {
                    cells.add(text(line, i, columns[0], problems));
                }
                if (columns[0] == null) {
                    columns[0] = columns(cells);
                } else if (cells.stream().anyMatch(cell -> cell != null && !cell.isBlank())) {
                    rows.add(row(line.getRowNum(), columns[0], cells));
                    limit(rows);
                }
            });
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
        return new ImportFile(rows, problems);
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

    private static Map<String, Integer> columns(List<String> heads) {
        Map<String, Integer> columns = new HashMap<>();
        for (int i = 0; i < heads.size(); i++) {
            if (heads.get(i) != null && !heads.get(i).isBlank()) {
                columns.put(heads.get(i).trim().toLowerCase(Locale.ROOT), i);
            }
        }
        List<String> missing =
                REQUIRED.stream().filter(c -> !columns.containsKey(c)).toList();
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

    private static ImportRow row(int line, Map<String, Integer> columns, List<String> cells) {
        return new ImportRow(
                line,
                cell(columns, cells, "specimen_code"),
                cell(columns, cells, "accession_number"),
                cell(columns, cells, "laboratory_item"),
                cell(columns, cells, "test_method"),
                cell(columns, cells, "stage"),
                cell(columns, cells, "finding"),
                cell(columns, cells, "status"),
                cell(columns, cells, "tested_on"),
                cell(columns, cells, "reported_on"),
                cell(columns, cells, "unsuitable_reason"),
                cell(columns, cells, "measured_value"),
                cell(columns, cells, "performing_laboratory"),
                cell(columns, cells, "corrects"),
                cell(columns, cells, "run"));
    }

    private static String cell(Map<String, Integer> columns, List<String> cells, String name) {
        Integer at = columns.get(name);
        if (at == null || at >= cells.size() || cells.get(at) == null) {
            return null;
        }
        String text = cells.get(at).trim();
        return text.isEmpty() ? null : text;
    }

    private static void limit(List<ImportRow> rows) {
        if (rows.size() > MOST_ROWS) {
            throw new InvalidInput("TOO_MANY_ROWS", "The file has more than " + MOST_ROWS + " rows; send it in parts");
        }
    }
}
