package org.dentary.prevalence;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.detection.ChanceFixture;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.Test;

/** A report with one dimension as rows and another as columns, added up both ways, the same in every form. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class RowsAndColumnsTest {
    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    private static RequestSpecification epidemiologist() {
        return given().auth().preemptive().basic("epidemiologist", SeasonFixture.PASSWORD);
    }

    private String season() {
        String season = lines.season();
        add(season, "ADULT", "MALE", 60, 200);
        add(season, "ADULT", "FEMALE", 21, 63);
        add(season, "YEARLING", "MALE", 5, 48);
        add(season, "YEARLING", "FEMALE", 10, 100);
        lines.add(season, 20, ALine.of("FAWN", "FEMALE", "NOT_DETECTED"));
        lines.add(season, 4, ALine.of("FAWN", "MALE", "PENDING"));
        return season;
    }

    private void add(String season, String age, String sex, int detected, int counted) {
        lines.add(season, detected, ALine.of(age, sex, "DETECTED"));
        lines.add(season, counted - detected, ALine.of(age, sex, "NOT_DETECTED"));
    }

    private static JsonPath told(String query) {
        return epidemiologist()
                .get("/api/v1/prevalence?" + query)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    @Test
    void rowsAndColumnsAreAddedUpWithIntervalsOfTheirOwn() {
        String season = season();
        JsonPath told = told("season=" + season + "&by=ageClass&columns=sex&interval=CLOPPER_PEARSON");
        assertEquals(List.of("ageClass", "sex"), told.getList("by"));
        assertEquals("sex", told.getString("columns"));
        assertEquals(12, told.getInt("cells.size()"), "four age classes by three sexes");
        // Newcombe 1998, Stat Med 17:857-872, Table I: 81/263 .2527 .3676, 15/148 .0578 .1617, 0/20 0 .1684 (exact
        // limits).
        rowIs(told, "ADULT", 81, 263, .2527, .3676);
        rowIs(told, "YEARLING", 15, 148, .0578, .1617);
        rowIs(told, "FAWN", 0, 20, 0, .1684);
        Map<String, Object> male = told.getMap("columnTotals.find { it.sex == 'MALE' }");
        assertEquals(List.of(248, 65, 4), List.of(male.get("counted"), male.get("detected"), male.get("pending")));
        assertFalse(male.containsKey("ageClass"));
        assertEquals(431, told.getInt("total.counted"));
        // Nobody's row is told as not sampled there too.
        assertNull(told.get("rowTotals.find { it.ageClass == 'UNKNOWN' }.prevalence"));
    }

    private static void rowIs(JsonPath told, String age, int detected, int counted, double lower, double upper) {
        String row = "rowTotals.find { it.ageClass == '" + age + "' }.";
        assertEquals(detected, told.getInt(row + "detected"));
        assertEquals(counted, told.getInt(row + "counted"));
        assertEquals(lower, told.getDouble(row + "lower"), 5e-5);
        assertEquals(upper, told.getDouble(row + "upper"), 5e-5);
    }

    @Test
    void withoutColumnsTheAnswerIsWhatItWas() {
        String season = season();
        String plain = epidemiologist()
                .get("/api/v1/prevalence?by=ageClass,sex&season=" + season)
                .asString();
        assertFalse(plain.contains("columns"), plain);
        assertFalse(plain.contains("Totals"), plain);
        JsonPath across = told("by=ageClass,sex&columns=sex&season=" + season);
        assertEquals(JsonPath.from(plain).getList("cells"), across.getList("cells"), "the cells are the same");
    }

    @Test
    void aCutKeepsTheTableForEverAndCsvAndWorkbookHoldItsNumbers() throws IOException {
        String season = season();
        String cut = UUID.randomUUID().toString();
        epidemiologist()
                .contentType("application/json")
                .body(Map.of("season", season, "name", "Across"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(201);
        String query = "season=" + season + "&by=ageClass&columns=sex&cut=" + cut;
        String first = epidemiologist().get("/api/v1/prevalence?" + query).asString();
        String csv = epidemiologist().get("/api/v1/prevalence.csv?" + query).asString();
        add(season, "ADULT", "MALE", 9, 9);
        assertEquals(first, epidemiologist().get("/api/v1/prevalence?" + query).asString());
        assertEquals(
                csv, epidemiologist().get("/api/v1/prevalence.csv?" + query).asString());
        JsonPath told = JsonPath.from(first);
        assertTrue(csv.contains("\r\nADULT,ALL,263,81,0.30798479087452"), csv);
        assertEquals(81 / 263.0, told.getDouble("rowTotals[2].prevalence"), 1e-7);
        assertTrue(csv.contains("\r\nALL,FEMALE,183,31,"), csv);
        assertTrue(csv.contains("\r\nALL,ALL,431,96,"), csv);
        byte[] xlsx = epidemiologist().get("/api/v1/prevalence.xlsx?" + query).asByteArray();
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(xlsx))) {
            List<Row> rows =
                    workbook.findSheet("Rows and columns").orElseThrow().read();
            List<String> heads = texts(rows.get(0));
            Row adults = rows.get(3);
            assertEquals("ADULT", adults.getCellText(0));
            assertEquals("200", adults.getCellText(heads.indexOf("MALE counted")));
            assertEquals("21", adults.getCellText(heads.indexOf("FEMALE detected")));
            assertEquals("263", adults.getCellText(heads.indexOf("ALL counted")));
            assertEquals("248", rows.get(5).getCellText(heads.indexOf("MALE counted")), "all rows of males");
        }
        epidemiologist()
                .get("/api/v1/prevalence.xlsx?by=ageClass,sex&season=" + season)
                .then()
                .statusCode(200);
    }

    private static List<String> texts(Row row) {
        return row.stream().map(cell -> cell.getText()).collect(Collectors.toList());
    }

    @Test
    void theDocumentAndThePageShowTheSame() throws Exception {
        String season = season();
        String query = "season=" + season + "&by=ageClass&columns=sex&interval=CLOPPER_PEARSON";
        Path pdf = Files.createDirectories(Path.of("target", "screenshots")).resolve("rows-and-columns.pdf");
        Files.write(pdf, epidemiologist().get("/api/v1/prevalence.pdf?" + query).asByteArray());
        Process process = new ProcessBuilder("pdftotext", "-layout", pdf.toString(), "-").start();
        String text = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor());
        int at = text.indexOf("Age class by sex");
        String table = text.substring(at, text.indexOf("Detected of counted", at + 1));
        for (String cell :
                List.of("60 of 200", "21 of 63", "81 of 263", "96 of 431", "25.3 % to 36.8 %", "4 pending")) {
            assertTrue(table.contains(cell), cell + " is not in\n" + table);
        }
        assertTrue(text.contains("As columns"), text);
        epidemiologist()
                .get("/prevalence?" + query)
                .then()
                .statusCode(200)
                .body(containsString("<strong>81 of 263</strong><br>30.8 %"))
                .body(containsString("no result yet"))
                .body(containsString("4 pending (100 %)"));
    }

    @Test
    void whatCannotBeLaidOutIsRefusedWithWhatToChange() {
        String season = season();
        refused("by=sex&columns=sex&season=" + season, "IMPOSSIBLE_COMBINATION", "cannot be rows and columns at once");
        refused("by=ageClass&columns=antlers&season=" + season, "NOT_A_DIMENSION", "allowed: ageClass, sex");
        refused(
                "by=ageClass,sex,month&columns=station&season=" + season,
                "TOO_MANY",
                "at most three dimensions; leave one of them out");
        for (String other : List.of("chance-of-detection", "comparisons", "ageing-error")) {
            epidemiologist()
                    .get("/api/v1/" + other + "?columns=sex&matrix=X&season=" + season)
                    .then()
                    .statusCode(422)
                    .body("errors[0].field", equalTo("columns"));
        }
    }

    private static void refused(String query, String rule, String message) {
        epidemiologist()
                .get("/api/v1/prevalence?" + query)
                .then()
                .statusCode(422)
                .body("errors[0].rule", equalTo(rule))
                .body("errors[0].message", containsString(message));
    }

    /** Two units of one name are two rows: of what is told, not of what it is called. */
    @Test
    void placesThatAreCalledAlikeStayApart() {
        String north = plan.unit();
        String south = plan.unit();
        plan.called(north, "Twin ponds");
        plan.called(south, "Twin ponds");
        String season = lines.season();
        lines.add(season, 30, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(north));
        lines.add(season, 40, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(south));
        String page = epidemiologist()
                .get("/prevalence?by=managementUnit&columns=sex&unit=" + north + "," + south + "&season=" + season)
                .asString();
        // Across: a row for each; below, of each a row for every sex.
        assertEquals(2 + 2 * 3, page.split("<th scope=\"row\">Twin ponds</th>", -1).length - 1, page);
        assertTrue(page.contains("<strong>0 of 30</strong>") && page.contains("<strong>0 of 40</strong>"), page);
        assertTrue(page.contains("Only animals with Management unit: Twin ponds, Twin ponds"), page);
    }

    @Test
    void monthsAreSpelledOutForPeopleAndStayCodesInFiles() {
        String season = lines.season();
        lines.add(season, 12, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String year = season.substring(1);
        epidemiologist()
                .get("/prevalence?by=month&season=" + season)
                .then()
                .body(containsString("<th scope=\"row\">January " + year + "</th>"));
        epidemiologist()
                .get("/api/v1/prevalence.csv?by=month&season=" + season)
                .then()
                .body(containsString("\r\n" + year + "-01,12,0,"));
    }
}
