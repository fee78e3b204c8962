package org.dentary.submission.manifest;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * The papers of a submission, read by programs that are not ours: the PDF's words by pdftotext, its symbols by zbarimg and
 * dmtxread off pages that pdftoppm dots at 200 dpi, the CSV by its bytes (RFC 4180), the workbook by its XML (ECMA-376).
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ManifestTest {
    private static final String HUNTER = "Wendeline Aspenquist";
    private static final String TELEPHONE = "(555) 0176";
    private static final String LATITUDE = "45.51234";
    private static final String REASON = "=agreed, \"by telephone\"";

    @Inject
    jakarta.persistence.EntityManager entities;

    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @TempDir
    Path folder;

    private String id;
    private String box;
    private String boxed;
    private String loose;

    @BeforeEach
    void aParcelOfTwo() {
        season.ensure();
        box = bench.aBox();
        boxed = bench.aNodeOfAHunter(HUNTER, TELEPHONE, Double.parseDouble(LATITUDE), -94.51234);
        loose = bench.aNode("liaison", "FORMALIN");
        id = bench.begun("T_LAB");
        String packedAt = "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT + "\",";
        bench.pack(id, boxed, packedAt + "\"box\":\"" + box + "\"}").statusCode(201);
        bench.pack(id, loose, packedAt + "\"overrideReason\":\"=agreed, \\\"by telephone\\\"\"}")
                .statusCode(201);
    }

    @Test
    void thePdfHasTwoCopiesWithEveryTubeByBox() throws Exception {
        String words = words();
        assertEquals(2, count(words, "Test laboratory"), words);
        assertEquals(1, count(words, "Laboratory's copy"), words);
        assertEquals(1, count(words, "Copy for the box"), words);
        assertEquals(2, count(words, "Box " + grouped(box) + ", 1 specimen\n"), words);
        assertEquals(2, count(words, "Not in a numbered box"), words);
        for (String code : List.of(boxed, loose)) {
            assertEquals(2, count(words, grouped(code)), words);
        }
        assertEquals(2, count(words, "1 medial retropharyngeal node, fresh chilled"), words);
        assertEquals(2, count(words, "1 medial retropharyngeal node, formalin"), words);
        assertEquals(4, count(words, "2025-11-14"), words);
        assertEquals(4, count(words, " male"), words);
    }

    @Test
    void thePdfDeclaresHazardsPrintsOverridesAndAsksTheShipper() throws Exception {
        String words = words();
        assertEquals(2, count(words, "formalin (see its safety sheet)"), words);
        assertEquals(2, count(words, "Goes although the rules say otherwise: " + REASON), words);
        assertEquals(2, count(words, "Did a trained shipper classify and mark this parcel? Who, and when?"), words);
        assertEquals(2, count(words, "stand above this paper"), words);
        // Limits are the trained shipper's to know: no weight, volume or share of ice is printed.
        String checks = words.substring(words.indexOf("Before it leaves"), words.indexOf(", page 1"));
        assertFalse(checks.matches("(?is).*\\d\\s?(kg|g|ml|l|litres?|liters?|lb|%)\\b.*"), checks);
    }

    @Test
    void thePdfSaysWhoClassifiedTheParcelOnceSomebodyDid() throws Exception {
        assertEquals(0, count(words(), "Classified and marked by"));
        bench.dispatch(id).statusCode(200);
        String words = words();
        assertEquals(2, count(words, "Classified and marked by: a trained shipper"), words);
        assertEquals(2, count(words, "waybill W-7"), words);
    }

    @Test
    void thePdfSaysHowTheLaboratoryTakesParcelsInItsOwnWordsAndTimesOnTheStationsClock() throws Exception {
        assertEquals(0, count(words(), "takes parcels"), "the plan does not say");
        profile("insert into laboratory_profile (laboratory, in_force_from, receives_on, handling) values ('T_LAB',"
                + " '2020-01-01', '{MON,TUE}', 'Nodes flat in the bag, no loose ice')");
        try {
            bench.dispatch(id).statusCode(200);
            String words = words();
            assertEquals(2, count(words, "How Test laboratory takes parcels, as the plan has it"), words);
            assertEquals(2, count(words, "Handling: Nodes flat in the bag, no loose ice"), words);
            assertEquals(2, count(words, "Takes parcels: Monday, Tuesday"), words);
            assertEquals(2, count(words, "left Nov 15, 2025, "), words);
            assertTrue(words.contains(" CST"), words);
            // Kept to be looked at.
            Files.copy(pdf(), Path.of("target", "manifest.pdf"), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        } finally {
            profile("delete from laboratory_profile where laboratory = 'T_LAB' and in_force_from = '2020-01-01'");
        }
    }

    private void profile(String sql) {
        io.quarkus.narayana.jta.QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(sql).executeUpdate());
    }

    @Test
    void thePdfsSymbolsAreReadBack() throws Exception {
        Path pdf = pdf();
        run(
                "pdftoppm",
                "-png",
                "-gray",
                "-r",
                "200",
                pdf.toString(),
                folder.resolve("page").toString());
        List<String> pages;
        try (var files = Files.list(folder)) {
            pages = files.map(Path::toString)
                    .filter(f -> f.endsWith(".png"))
                    .sorted()
                    .toList();
        }
        assertEquals(2, pages.size(), pages.toString());
        for (String page : pages) {
            assertEquals(
                    List.of(box), run("zbarimg", "-q", "--raw", "--nodbus", "-S*.disable", "-Scode128.enable", page));
            assertEquals(
                    List.of(id.toUpperCase(Locale.ROOT)),
                    run("dmtxread", "--newline", "--stop-after=1", "--milliseconds=60000", page));
        }
    }

    @Test
    void theCsvIsQuotedGuardedAndComplete() {
        String csv = new String(paper("csv").asByteArray(), StandardCharsets.UTF_8);
        String[] lines = csv.split("\r\n", -1);
        assertEquals(4, lines.length, csv);
        assertEquals("", lines[3], "the last line ends with CRLF");
        assertEquals(String.join(",", ManifestService.COLUMNS), lines[0]);
        assertTrue(lines[1].contains("," + loose + ","), csv);
        assertTrue(
                lines[1].endsWith(",\"'=agreed, \"\"by telephone\"\"\","),
                "a comma and quotes are quoted, a leading = is guarded: " + csv);
        assertTrue(
                lines[2].contains("," + box + "," + boxed
                        + ",MEDIAL_RETROPHARYNGEAL_NODE,LEFT,FRESH_CHILLED,2025-11-14,WHITE_TAILED_DEER,UNKNOWN,MALE,"),
                csv);
    }

    @Test
    void theWorkbookHoldsTheSameAsTextOnly() throws Exception {
        List<List<String>> rows = sheet(workbook());
        assertEquals(3, rows.size());
        assertEquals(ManifestService.COLUMNS, rows.get(0));
        assertEquals(loose, rows.get(1).get(2));
        assertEquals(REASON, rows.get(1).get(11));
        assertEquals(List.of(box, boxed), rows.get(2).subList(1, 3));
        assertEquals("2025-11-14", rows.get(2).get(6));
    }

    @Test
    void noPaperNamesTheHunterOrTheExactPlace() throws Exception {
        String all = words() + paper("csv").asString() + sheet(workbook());
        for (String secret : List.of(HUNTER, "Aspenquist", TELEPHONE, "(555)", "45.51", "-94.5")) {
            assertFalse(all.contains(secret), secret);
        }
    }

    @Test
    void papersAreForWhoMayReadSubmissionsAndOfWhatExists() {
        for (String kind : List.of("pdf", "csv", "xlsx")) {
            String path = "/api/v1/submissions/" + id + "/manifest." + kind;
            as("auditor").get(path).then().statusCode(200).header("Cache-Control", "private, no-store");
            as("notifier").get(path).then().statusCode(403);
            as("liaison")
                    .get(path.replace(id, java.util.UUID.randomUUID().toString()))
                    .then()
                    .statusCode(404);
        }
    }

    private Response paper(String kind) {
        Response answer = as("liaison").get("/api/v1/submissions/" + id + "/manifest." + kind);
        assertEquals(200, answer.statusCode());
        return answer;
    }

    private Path pdf() throws IOException {
        return Files.write(folder.resolve("manifest.pdf"), paper("pdf").asByteArray());
    }

    private Path workbook() throws IOException {
        return Files.write(folder.resolve("manifest.xlsx"), paper("xlsx").asByteArray());
    }

    private String words() throws IOException {
        return String.join("\n", run("pdftotext", "-layout", pdf().toString(), "-"));
    }

    private static String grouped(String code) {
        return code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8);
    }

    private static int count(String text, String part) {
        return (text.length() - text.replace(part, "").length()) / part.length();
    }

    /** The first sheet's cells; a cell that a spreadsheet would take for a number or a formula fails. */
    private static List<List<String>> sheet(Path workbook) throws Exception {
        List<String> shared = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (Element text : elements(part(workbook, "xl/sharedStrings.xml"), "si")) {
            shared.add(text.getTextContent());
        }
        Document sheet = part(workbook, "xl/worksheets/sheet1.xml");
        assertEquals(List.of(), elements(sheet, "f"), "no formula");
        for (Element row : elements(sheet, "row")) {
            List<String> cells = new ArrayList<>();
            var children = row.getElementsByTagName("c");
            for (int i = 0; i < children.getLength(); i++) {
                Element cell = (Element) children.item(i);
                assertEquals("s", cell.getAttribute("t"), "every cell is text: " + cell.getAttribute("r"));
                cells.add(shared.get(Integer.parseInt(cell.getTextContent())));
            }
            rows.add(cells);
        }
        return rows;
    }

    private static List<Element> elements(Document document, String name) {
        List<Element> found = new ArrayList<>();
        var nodes = document.getElementsByTagName(name);
        for (int i = 0; i < nodes.getLength(); i++) {
            found.add((Element) nodes.item(i));
        }
        return found;
    }

    private static Document part(Path workbook, String name) throws Exception {
        try (ZipFile zip = new ZipFile(workbook.toFile())) {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(zip.getInputStream(zip.getEntry(name)));
        }
    }

    private static List<String> run(String... command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            process.waitFor();
            return out.lines().filter(line -> !line.isBlank()).toList();
        } catch (IOException fault) {
            throw new java.io.UncheckedIOException(command[0] + " is needed by this test", fault);
        } catch (InterruptedException fault) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(fault);
        }
    }
}
