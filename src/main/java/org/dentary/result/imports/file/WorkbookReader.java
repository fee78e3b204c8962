package org.dentary.result.imports.file;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.result.mapping.ColumnMap;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;

/** Reads a laboratory's workbook, XLSX (first sheet), into rows by the names in its first line. */
public final class WorkbookReader {
    private static final ReadingOptions WITH_FORMATS = new ReadingOptions(true, false);
    private static final ReadingOptions WITHOUT_FORMATS = new ReadingOptions(false, false);
    private static final long MOST_UNPACKED = 256L * 1024 * 1024;
    private static final MathContext FIFTEEN_DIGITS = new MathContext(15);
    private static final Pattern DATE_1904 = Pattern.compile("date1904\\s*=\\s*[\"'](1|true)[\"']");
    /** From the first day of one way of counting to that of the other. */
    private static final int DAYS_TO_1904 = 1462;

    private WorkbookReader() {}

    /**
     * Reads the first sheet of a workbook.
     *
     * @throws InvalidInput if it is no workbook, or a needed column is missing
     */
    public static ImportFile read(byte[] file) {
        return read(file, null);
    }

    /** Reads a workbook by the laboratory's map; null, or a first line in our own names, needs none. */
    public static ImportFile read(byte[] file, ColumnMap map) {
        Package parts = parts(file);
        List<ImportRow> rows = new ArrayList<>();
        List<RowProblem> problems = new ArrayList<>();
        boolean mapped;
        try (ReadableWorkbook workbook = new ReadableWorkbook(
                        new ByteArrayInputStream(file), parts.styles() ? WITH_FORMATS : WITHOUT_FORMATS);
                Stream<Row> lines = workbook.getFirstSheet().openStream()) {
            // The library takes date1904="1" for no; what it takes for yes it counts itself.
            int shift = parts.from1904() && !workbook.isDate1904() ? DAYS_TO_1904 : 0;
            Map<String, Integer>[] columns = newArray();
            ColumnMap[] used = new ColumnMap[1];
            lines.forEach(line -> {
                List<String> cells = new ArrayList<>();
                for (int i = 0; i < line.getCellCount(); i++) {
                    cells.add(text(line, i, columns[0], shift, problems));
                }
                if (columns[0] == null) {
                    used[0] = TableReader.isOurs(cells) ? null : map;
                    columns[0] = TableReader.columns(cells, used[0]);
                } else if (cells.stream().anyMatch(cell -> cell != null && !cell.isBlank())) {
                    rows.add(TableReader.row(line.getRowNum(), columns[0], cells, used[0]));
                    TableReader.limit(rows);
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

    /**
     * What must be known of a file before it is read.
     *
     * @param from1904 whether days are counted from 1904 (ECMA-376 part 1, 18.2.28, date1904)
     * @param styles whether it has the part that holds formats; a workbook need not
     */
    private record Package(boolean from1904, boolean styles) {}

    /**
     * Looks into the file. A small file may unpack to more than the
     * memory holds: it is counted, not kept, and refused in time.
     */
    private static Package parts(byte[] file) {
        byte[] some = new byte[64 * 1024];
        long unpacked = 0;
        boolean from1904 = false;
        boolean styles = false;
        try (ZipInputStream parts = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (ZipEntry part = parts.getNextEntry(); part != null; part = parts.getNextEntry()) {
                styles |= part.getName().equals("xl/styles.xml");
                boolean isWorkbook = part.getName().equals("xl/workbook.xml");
                StringBuilder head = new StringBuilder();
                for (int read = parts.read(some); read >= 0; read = parts.read(some)) {
                    unpacked += read;
                    if (isWorkbook && head.length() < some.length) {
                        head.append(new String(some, 0, read, StandardCharsets.UTF_8));
                    }
                    if (unpacked > MOST_UNPACKED) {
                        throw new InvalidInput(
                                "UNPACKS_TOO_LARGE",
                                "The workbook unpacks to more than " + MOST_UNPACKED / (1024 * 1024)
                                        + " MB; send it as CSV, or in parts. Nothing was stored");
                    }
                }
                from1904 |= isWorkbook && DATE_1904.matcher(head).find();
            }
            return new Package(from1904, styles);
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
    private static String text(
            Row line, int index, Map<String, Integer> columns, int shift, List<RowProblem> problems) {
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
        if (column.endsWith("_on") && isFormattedAsDay(cell)) {
            LocalDateTime day = cell.asDate();
            return day.toLocalDate().plusDays(shift).toString();
        }
        if (column.equals("specimen_code")) {
            problems.add(new RowProblem(
                    line.getRowNum(),
                    column,
                    "SPREADSHEET_NUMBER",
                    "the code was turned into the number " + cell.getText()
                            + " by a spreadsheet; format the column as text and enter the code from the label"));
        }
        return plain(cell.asNumber());
    }

    /** A number is a day by its format alone: what is quoted or in brackets there says nothing, a d or y does. */
    private static boolean isFormattedAsDay(Cell cell) {
        String format = cell.getDataFormatString();
        return format != null
                && format.replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.", "")
                        .toLowerCase(Locale.ROOT)
                        .matches(".*[dy].*");
    }

    /** As the spreadsheet shows it: it keeps fifteen digits, and what a file has beyond them is its arithmetic. */
    private static String plain(BigDecimal number) {
        BigDecimal shown = number.round(FIFTEEN_DIGITS);
        return (shown.scale() > 0 && shown.compareTo(number) != 0 ? shown.stripTrailingZeros() : shown).toPlainString();
    }
}
