package org.dentary.result.imports;

import static io.restassured.RestAssured.given;
import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Every refusal of a laboratory's file, over HTTP: the whole file, single lines, and who asks. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ImportRefusalsTest {
    private static final String HEADER = "specimen_code,accession_number,test_method,stage,finding,tested_on,"
            + "reported_on,status,unsuitable_reason,laboratory_item,corrects\r\n";
    private static final String DAYS = "2025-11-18,2025-11-19";

    @Inject
    IntakeFixture deer;

    @Inject
    SubmissionFixture bench;

    @Inject
    SeasonFixture season;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void aFileThatCannotBeReadIsNamedAndNothingIsStored() throws IOException {
        refused("text/csv", bytes(""), "FILE_EMPTY");
        refused("text/csv", bytes(HEADER), "NO_ROWS");
        refused("text/csv", bytes("specimen_code,finding\r\nA,B\r\n"), "COLUMN_MISSING");
        refused("text/csv", bytes(HEADER.strip() + ",hunter\r\nA,B\r\n"), "COLUMN_UNKNOWN");
        refused("text/csv", (HEADER + "\u00e9\r\n").getBytes(StandardCharsets.ISO_8859_1), "WRONG_CHARACTER_SET");
        refused("text/csv", (HEADER + "A\r\n").getBytes(StandardCharsets.UTF_16LE), "WRONG_CHARACTER_SET");
        refused(ResultImportsResource.XLSX, bytes("no workbook"), "NOT_A_WORKBOOK");
        refused(ResultImportsResource.XLSX, unpackingTo(300), "UNPACKS_TOO_LARGE");
        refused(ResultImportsResource.HL7, bytes("MSH|broken"), "NOT_HL7");
        refused(ResultImportsResource.HL7, bytes("no message"), "NOT_HL7");
        refused(
                ResultImportsResource.HL7,
                bytes(
                        "MSH|^~\\&|LAB|L|AGENCY|A|20251119||ADT^A01^ADT_A01|1|P|2.5.1\rEVN||20251119\rPID|1||1||X\rPV1|1|N\r"),
                "NOT_HL7");
    }

    /** The workbook that another program wrote ({@code make_workbook.py}). */
    @Test
    void aWorkbookIsLookedThroughLineByLine() throws IOException {
        byte[] workbook;
        try (var in = getClass().getResourceAsStream("/result/workbook.xlsx")) {
            workbook = in.readAllBytes();
        }
        UUID id = UUID.randomUUID();
        put(id, ResultImportsResource.XLSX, workbook, "?laboratory=T_LAB")
                .statusCode(201)
                .body("rows", equalTo(9))
                .body("postable", equalTo(0))
                .body("problems.findAll { it.line == 2 }.rule", equalTo(List.of("SPECIMEN_UNKNOWN")))
                .body("problems.findAll { it.line == 4 }.rule", equalTo(List.of("SPREADSHEET_NUMBER")))
                .body("problems.findAll { it.line == 6 }.rule", hasItem("SPREADSHEET_DATE"));
        put(id, ResultImportsResource.XLSX, workbook, "?laboratory=T_LAB").statusCode(200);
        post(id, "{}").statusCode(409);
    }

    @Test
    void halfAFileIsNotTakenForAWholeOne() throws IOException {
        byte[] workbook = unpackingTo(1);
        refused(ResultImportsResource.XLSX, java.util.Arrays.copyOf(workbook, workbook.length / 2), "NOT_A_WORKBOOK");
        refused(
                ResultImportsResource.HL7,
                bytes("MSH|^~\\&|LAB|L|AGENCY|A|20251119||ORU^R01^ORU_R01|1|P|2.5.1\rPI"),
                "NOT_HL7");
        refused("text/csv", bytes(HEADER.substring(0, HEADER.length() / 2)), "COLUMN_MISSING");
        UUID id = UUID.randomUUID();
        put(
                        id,
                        "text/csv",
                        bytes(HEADER + bench.aDeerSent().label(Part.NODE_LEFT)
                                + ",A-1,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-1"),
                        "?laboratory=T_LAB")
                .statusCode(201)
                .body("postable", equalTo(0))
                .body("problems.rule", hasItem("NOT_A_DATE"));
        post(id, "{}").statusCode(409);
    }

    @Test
    void whoseFileAndUnderWhichIdMustBeClear() {
        String row = HEADER + "1E5,A-1,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS + "\r\n";
        put(UUID.randomUUID(), "text/csv", bytes(row), "")
                .statusCode(422)
                .body("errors[0].field", equalTo("laboratory"));
        put(UUID.randomUUID(), "text/csv", bytes(row), "?laboratory=NOBODY").statusCode(404);
        put(UUID.randomUUID(), "image/png", bytes(row), "?laboratory=T_LAB").statusCode(415);
        UUID id = UUID.randomUUID();
        put(id, "text/csv", bytes(row), "?laboratory=T_LAB").statusCode(201);
        put(id, "text/csv", bytes(row), "?laboratory=T_LAB").statusCode(200).body("problems", hasSize(1));
        put(id, "text/csv", bytes(row.replace("A-1", "A-2")), "?laboratory=T_LAB")
                .statusCode(409)
                .body("code", equalTo("ALREADY_RECORDED"));
        post(UUID.randomUUID(), "{}").statusCode(404);
        post(id, "{\"leaveOut\":[null]}").statusCode(422);
        post(id, "{\"leaveOut\":[2,77]}").statusCode(422).body("errors[0].rule", equalTo("LINE_UNKNOWN"));
        post(id, "{\"leaveOut\":\"all\"}").statusCode(422).contentType("application/problem+json");
        for (String account : List.of("sampler", "epidemiologist", "auditor", "notifier")) {
            as(account)
                    .contentType("text/csv")
                    .body(row)
                    .put("/api/v1/result-imports/" + UUID.randomUUID() + "?laboratory=T_LAB")
                    .then()
                    .statusCode(403);
        }
        given().contentType("text/csv")
                .body(row)
                .put("/api/v1/result-imports/" + UUID.randomUUID() + "?laboratory=T_LAB")
                .then()
                .statusCode(401)
                .contentType("application/problem+json");
    }

    @Test
    void everyFaultyLineIsNamedWithItsRule() {
        Deer sent = bench.aDeerSent();
        Deer kept = deer.aDeer();
        deer.take(kept, deer.yearlingWithLeftNode(kept));
        String code = sent.label(Part.NODE_LEFT);
        Map<String, String> lines = new java.util.LinkedHashMap<>();
        lines.put("SPREADSHEET_NUMBER", "1E5,A,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS);
        lines.put("LOST_CHARACTERS", "12345,A,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS);
        lines.put("NOT_A_CODE", "HELLO,A,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS);
        lines.put("SPECIMEN_UNKNOWN", sent.label(Part.OBEX) + ",A,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS);
        lines.put("NOT_ON_ROUTE", kept.label(Part.NODE_LEFT) + ",A,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS);
        lines.put("METHOD_UNKNOWN", code + ",A,T_GUESS,SCREENING,NOT_DETECTED," + DAYS);
        lines.put("WORD_UNKNOWN", code + ",A,T_SCREEN,SCREENING,PRESENT," + DAYS);
        lines.put("REQUIRED", code + ",,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS);
        lines.put("TESTED_BEFORE_COLLECTED", code + ",B,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-01,2025-11-19");
        lines.put("TESTED_AFTER_REPORT", code + ",C,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-20,2025-11-19");
        lines.put("REPORTED_IN_THE_FUTURE", code + ",D,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2199-01-01");
        lines.put("SPREADSHEET_DATE", code + ",E,T_SCREEN,SCREENING,NOT_DETECTED,45979,2025-11-19");
        lines.put("NOT_A_DATE", code + ",F,T_SCREEN,SCREENING,NOT_DETECTED,18.11.2025,2025-11-19");
        lines.put("REASON_REQUIRED", code + ",G,T_SCREEN,SCREENING,UNSUITABLE," + DAYS);
        lines.put("REASON_NOT_OF_TISSUE", code + ",H,T_SCREEN,SCREENING,UNSUITABLE," + DAYS + ",FINAL,NO_PAPERWORK");
        lines.put("SUSPECT_IS_NOT_FINAL", code + ",I,T_CONFIRM,CONFIRMATORY,SUSPECT," + DAYS);
        lines.put("CORRECTS_UNKNOWN", code + ",J,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS + ",CORRECTED,,,NOWHERE");
        lines.put("REPEATED_LINE", code + ",J,T_SCREEN,SCREENING,NOT_DETECTED," + DAYS + ",CORRECTED,,,NOWHERE");
        UUID id = UUID.randomUUID();
        ValidatableResponse answer = put(
                        id,
                        "text/csv",
                        bytes(HEADER + String.join("\r\n", lines.values()) + "\r\n"),
                        "?laboratory=T_LAB")
                .statusCode(201)
                .body("postable", equalTo(0));
        Map<String, Integer> expected = new TreeMap<>();
        List<String> rules = new ArrayList<>(lines.keySet());
        for (int i = 0; i < rules.size(); i++) {
            expected.put(rules.get(i), i + 2);
        }
        Map<String, Integer> found = new TreeMap<>();
        List<Map<String, Object>> problems = answer.extract().path("problems");
        problems.forEach(p -> {
            if (Integer.valueOf((int) p.get("line")).equals(expected.get((String) p.get("rule")))) {
                found.put((String) p.get("rule"), (int) p.get("line"));
            }
        });
        assertEquals(expected, found);
        post(id, "{}")
                .statusCode(409)
                .body("code", equalTo("ROWS_AT_FAULT"))
                .body("errors.rule", hasItem("NOT_ON_ROUTE"));
        as("liaison").get("/api/v1/animals/" + sent.kit() + "/findings").then().body("items", hasSize(0));
    }

    @Test
    void aLineThatSaysOtherwiseThanWhatIsPostedIsHeldUntilItIsNamedACorrection() {
        Deer one = bench.aDeerSent();
        Deer other = bench.aDeerSent();
        String accession = "A-" + one.kit();
        String first =
                one.label(Part.NODE_LEFT) + "," + accession + ",T_SCREEN,SCREENING,NOT_DETECTED," + DAYS + ",FINAL,,1";
        posted(first);
        single(first.replace("NOT_DETECTED", "SUSPECT"), "CONTRADICTS_POSTED");
        single(first.replace(accession, accession + "X"), "ALREADY_FINAL");
        single(first.replace(one.label(Part.NODE_LEFT), other.label(Part.NODE_LEFT)), "ITEM_ON_TWO_SPECIMENS");
        posted(first.replace("NOT_DETECTED", "SUSPECT").replace("FINAL", "CORRECTED") + "," + accession);
        as("liaison")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("outcomes[0].derivedOutcome", equalTo("SUSPECT"))
                .body("outcome", equalTo("PENDING"));
        as("liaison").get("/api/v1/animals/" + one.kit() + "/findings").then().body("items", hasSize(2));
    }

    @Test
    void twoLinesOfAFileMayNotBothBeTheFinalWord() {
        Deer one = bench.aDeerSent();
        String first = one.label(Part.NODE_LEFT) + ",A-" + one.kit() + ",T_SCREEN,SCREENING,NOT_DETECTED," + DAYS
                + ",FINAL,,1";
        put(
                        UUID.randomUUID(),
                        "text/csv",
                        bytes(HEADER + first + "\r\n" + first.replace("NOT_DETECTED", "SUSPECT") + "\r\n"
                                + first.replace("FINAL,,1", "FINAL,,2") + "\r\n"),
                        "?laboratory=T_LAB")
                .statusCode(201)
                .body("postable", equalTo(1))
                .body("problems.findAll { it.line == 3 }.rule", equalTo(List.of("CONTRADICTS_LINE")))
                .body("problems.findAll { it.line == 4 }.rule", equalTo(List.of("REPEATED_LINE")));
    }

    @Test
    void aLineCorrectsItsOwnTissueAndOneLineAlone() {
        Deer one = bench.aDeerSent();
        Deer other = bench.aDeerSent();
        String earlier = one.label(Part.NODE_LEFT) + ",A-" + one.kit() + ",T_SCREEN,SCREENING,NOT_DETECTED," + DAYS
                + ",FINAL,,1";
        posted(earlier);
        String id =
                as("liaison").get("/api/v1/animals/" + one.kit() + "/findings").path("items[0].id");
        String corrected = earlier.replace("NOT_DETECTED", "INCONCLUSIVE").replace("FINAL,,1", "CORRECTED,,1," + id);
        single(corrected.replace(one.label(Part.NODE_LEFT), other.label(Part.NODE_LEFT)), "CORRECTS_OTHER_TISSUE");
        single(corrected + "\r\n" + corrected.replace("INCONCLUSIVE", "SUSPECT"), "CORRECTED_TWICE");
        posted(corrected);
    }

    private void posted(String line) {
        UUID id = UUID.randomUUID();
        put(id, "text/csv", bytes(HEADER + line + "\r\n"), "?laboratory=T_LAB")
                .statusCode(201)
                .body("problems", hasSize(0));
        post(id, "{}").statusCode(200).body("posted", equalTo(1));
        post(id, "{}").statusCode(200).body("posted", equalTo(1));
        post(id, "{\"leaveOut\":[2]}").statusCode(409);
    }

    private void single(String line, String rule) {
        UUID id = UUID.randomUUID();
        put(id, "text/csv", bytes(HEADER + line + "\r\n"), "?laboratory=T_LAB")
                .statusCode(201)
                .body("problems.rule", hasItem(rule));
        post(id, "{}").statusCode(409);
    }

    private void refused(String type, byte[] file, String code) {
        UUID id = UUID.randomUUID();
        put(id, type, file, "?laboratory=T_LAB")
                .statusCode(422)
                .contentType("application/problem+json")
                .body("code", equalTo(code));
        as("liaison").get("/api/v1/result-imports/" + id).then().statusCode(404).body(containsString("IMPORT_UNKNOWN"));
    }

    /** A small archive that unpacks to so many megabytes of nothing. */
    private static byte[] unpackingTo(int megabytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
            byte[] nothing = new byte[1024 * 1024];
            for (int i = 0; i < megabytes; i++) {
                zip.write(nothing);
            }
        }
        return out.toByteArray();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static ValidatableResponse put(UUID id, String type, byte[] file, String query) {
        return as("liaison")
                .config(io.restassured.RestAssured.config()
                        .encoderConfig(io.restassured.config.EncoderConfig.encoderConfig()
                                .appendDefaultContentCharsetToContentTypeIfUndefined(false)
                                .encodeContentTypeAs(type, io.restassured.http.ContentType.BINARY)))
                .contentType(type)
                .body(file)
                .put("/api/v1/result-imports/" + id + query)
                .then();
    }

    private static ValidatableResponse post(UUID id, String body) {
        return as("liaison")
                .contentType("application/json")
                .body(body)
                .post("/api/v1/result-imports/" + id + "/posting")
                .then();
    }
}
