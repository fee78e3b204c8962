package org.dentary.result.imports.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.api.Test;

/**
 * Laboratories' tables as other programs write them: CSV by the rules of RFC 4180, section 2, and workbooks written by
 * openpyxl 3.1.5 ({@code make_workbook.py} beside them).
 */
class TableReaderTest {
    private static final LocalDate TODAY = LocalDate.of(2025, 11, 25);
    private static final String HEAD =
            "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on,measured_value,run";
    private static final String LEFT = "HQHV39NGPV";

    @Test
    void linesEndWithCrLfAndTheLastMayDoWithout() {
        // RFC 4180, section 2, rules 1 and 2
        String line = LEFT + ",A-1,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,,1";
        for (String text : List.of(HEAD + "\r\n" + line + "\r\n", HEAD + "\r\n" + line, HEAD + "\n" + line + "\n")) {
            ImportFile file = csv(text);
            assertEquals(1, file.rows().size());
            assertEquals("1", file.rows().get(0).run(), text);
            assertEquals(2, file.rows().get(0).line());
        }
    }

    @Test
    void quotedCellsHoldCommasLineBreaksAndDoubledQuotes() {
        // RFC 4180, section 2, rules 5 to 7; a line is known by where it begins
        ImportFile file =
                csv(HEAD + "\r\n\"" + LEFT + "\",\"A,1\",T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,"
                        + "\"OD \"\"0,07\"\"\r\nread twice\",1\r\n" + LEFT
                        + ",A-2,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,,2\r\n");
        assertEquals("A,1", file.rows().get(0).accession());
        assertEquals("OD \"0,07\"\r\nread twice", file.rows().get(0).measuredValue());
        assertEquals(2, file.rows().get(0).line());
        assertEquals(4, file.rows().get(1).line());
        assertEquals(List.of(), file.problems());
    }

    @Test
    void aColumnNamedTwiceIsRefused() {
        for (String twice : List.of("finding", " Finding ", "run")) {
            InvalidInput refused = assertThrows(
                    InvalidInput.class,
                    () -> csv(HEAD + "," + twice + "\r\n" + LEFT
                            + ",A-1,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,,1,DETECTED\r\n"));
            assertEquals("COLUMN_TWICE", refused.code());
        }
    }

    @Test
    void otherSeparatorsAreToldAsSuch() {
        for (String separator : List.of(";", "\t")) {
            InvalidInput refused = assertThrows(InvalidInput.class, () -> csv((HEAD + "\r\n").replace(",", separator)));
            assertEquals("COLUMN_MISSING", refused.code());
            assertTrue(
                    refused.getMessage().contains(separator.equals(";") ? "semicolons" : "tabs"), refused.getMessage());
        }
    }

    @Test
    void aTextThatNoFindingTakesIsAFaultOfItsRowAndKeptInPart() {
        String rest = ",T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,,1\r\n";
        ImportFile file = RowRules.check(
                csv(HEAD + "\r\n" + LEFT + "," + "A".repeat(81) + rest + LEFT + ",\"A\r\n1\"" + rest
                        + "9".repeat(500_000) + ",A-2" + rest + LEFT
                        + ",A-3,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,,"
                        + "R".repeat(5_000) + "\r\n"),
                TODAY);
        assertEquals(
                List.of(
                        "2 accession_number TOO_LONG",
                        "3 accession_number UNPRINTABLE",
                        "5 specimen_code TOO_LONG",
                        "6 run TOO_LONG"),
                told(file));
        assertTrue(file.rows().stream().allMatch(row -> row.specimens().length() <= 200));
        assertTrue(file.rows().stream()
                .allMatch(row -> row.accession().length() <= 80 && row.run().length() <= 80));
    }

    @Test
    void aTableWithFarTooManyColumnsIsRefusedInWordsOfOurs() {
        InvalidInput refused = assertThrows(InvalidInput.class, () -> csv("a,".repeat(20_000) + "\r\n"));
        assertEquals("NOT_A_TABLE", refused.code());
        assertTrue(!refused.getMessage().contains("Exception"), refused.getMessage());
    }

    /** ECMA-376 part 1, 12.3: a workbook's styles and shared texts are parts that it may do without. */
    @Test
    void aWorkbookWithoutStylesIsRead() throws IOException {
        StringBuilder rows = new StringBuilder();
        for (String line : List.of(HEAD, LEFT + ",A-1,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,,1")) {
            int row = 1 + rows.toString().split("<row ", -1).length - 1;
            rows.append("<row r=\"").append(row).append("\">");
            char column = 'A';
            for (String cell : line.split(",", -1)) {
                rows.append("<c r=\"" + column++ + row + "\" t=\"inlineStr\"><is><t>")
                        .append(cell)
                        .append("</t></is></c>");
            }
            rows.append("</row>");
        }
        String main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
        String office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        String relations = "http://schemas.openxmlformats.org/package/2006/relationships";
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream parts = new ZipOutputStream(bytes)) {
            part(
                    parts,
                    "[Content_Types].xml",
                    "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                            + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                            + "<Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument"
                            + ".spreadsheetml.sheet.main+xml\"/><Override PartName=\"/xl/worksheets/sheet1.xml\" ContentType=\""
                            + "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/></Types>");
            part(
                    parts,
                    "_rels/.rels",
                    "<Relationships xmlns=\"" + relations + "\"><Relationship Id=\"r1\" Type=\"" + office
                            + "/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
            part(
                    parts,
                    "xl/workbook.xml",
                    "<workbook xmlns=\"" + main + "\" xmlns:r=\"" + office
                            + "\"><sheets><sheet name=\"S\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>");
            part(
                    parts,
                    "xl/_rels/workbook.xml.rels",
                    "<Relationships xmlns=\"" + relations + "\"><Relationship Id=\"r1\" Type=\"" + office
                            + "/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>");
            part(
                    parts,
                    "xl/worksheets/sheet1.xml",
                    "<worksheet xmlns=\"" + main + "\"><sheetData>" + rows + "</sheetData></worksheet>");
        }
        ImportFile file = WorkbookReader.read(bytes.toByteArray());
        assertEquals(1, file.rows().size());
        assertEquals(LEFT, file.rows().get(0).specimens());
    }

    private static void part(ZipOutputStream parts, String name, String content) throws IOException {
        parts.putNextEntry(new ZipEntry(name));
        parts.write(("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + content).getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void aCommaThatWasNotQuotedIsNamedBeforeItMovesTheRest() {
        // RFC 4180, section 2, rule 4: each line has the same number of fields
        ImportFile file = csv(HEAD + "\r\n" + LEFT
                + ",A-1,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,0,07,1\r\n" + LEFT
                + ",A-2,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19,0.07,1,,\r\n");
        assertEquals(List.of("2 line CELL_COUNT"), told(file));
    }

    @Test
    void aQuoteThatIsNeverClosedTakesNothingForARow() {
        // RFC 4180, section 2, rule 5
        assertEquals(
                1,
                csv(HEAD + "\r\n\"" + LEFT + ",A-1,T_SCREEN\r\n" + LEFT + ",A-2\r\n")
                        .rows()
                        .size());
        assertTrue(told(RowRules.check(csv(HEAD + "\r\n\"" + LEFT + ",A-1,T_SCREEN\r\n" + LEFT + ",A-2\r\n"), TODAY))
                .contains("2 specimen_code NOT_A_CODE"));
        InvalidInput refusal = assertThrows(InvalidInput.class, () -> csv("\"" + HEAD + "\r\n" + LEFT + "\r\n"));
        assertEquals("COLUMN_MISSING", refusal.code());
    }

    @Test
    void aWorkbookOfAnotherProgramIsReadAndItsDamageNamed() throws IOException {
        ImportFile file = RowRules.check(WorkbookReader.read(file("workbook.xlsx")), TODAY);
        Map<Integer, ImportRow> rows =
                file.rows().stream().collect(java.util.stream.Collectors.toMap(ImportRow::line, row -> row));
        assertEquals(java.util.Set.of(2, 3, 4, 5, 6, 7, 9, 10, 11), rows.keySet(), "an empty line is none");
        ImportRow first = rows.get(2);
        assertEquals(LEFT, first.specimens());
        assertEquals("00123", first.accession());
        assertEquals("2025-11-18", first.testedOn());
        assertEquals("2025-11-19", first.reportedOn(), "a date with an hour is its day");
        assertEquals("3", first.item());
        assertEquals("0.07", first.measuredValue());
        assertNull(first.reason());
        assertEquals(LEFT, rows.get(3).specimens());
        assertEquals("NOT_DETECTED", rows.get(3).finding());
        assertEquals("2025-11-18", rows.get(11).testedOn());
        assertEquals("1234.5", rows.get(11).measuredValue());
        List<String> told = told(file);
        assertEquals(
                List.of(
                        "10 finding REQUIRED",
                        "3 finding REPEATED_LINE",
                        "4 specimen_code SPREADSHEET_NUMBER",
                        "5 specimen_code SPREADSHEET_NUMBER",
                        "6 reported_on SPREADSHEET_DATE",
                        "6 tested_on SPREADSHEET_DATE",
                        "7 tested_on NOT_A_DATE",
                        "9 finding WORD_UNKNOWN"),
                told.stream().sorted().toList());
    }

    @Test
    void daysCountedFrom1904AreTheSameDays() throws IOException {
        ImportRow row = WorkbookReader.read(file("workbook-1904.xlsx")).rows().get(0);
        assertEquals("2025-11-18", row.testedOn());
        assertEquals("2025-11-19", row.reportedOn());
    }

    private static List<String> told(ImportFile file) {
        return file.problems().stream()
                .map(p -> p.line() + " " + p.field() + " " + p.rule())
                .toList();
    }

    private static ImportFile csv(String text) {
        return TableReader.csv(text.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] file(String name) throws IOException {
        try (InputStream in = TableReaderTest.class.getResourceAsStream("/result/" + name)) {
            return in.readAllBytes();
        }
    }
}
