package org.dentary.prevalence.ageing;

import static org.dentary.prevalence.comparison.ClassFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.comparison.ClassFixture;
import org.dentary.prevalence.comparison.ClassFixture.Class;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class AgeingResourceTest {
    private static final double[][] PLAN = {{.985, .015, 0}, {.01, .92, .07}, {0, .05, .95}};
    private static final double[][] MALES = {{48, 2, 0}, {1, 60, 4}, {0, 9, 91}};
    private static final double[][] FEMALES = {{50, 0, 0}, {0, 44, 6}, {0, 3, 97}};
    private static final List<String> AGES = List.of("FAWN", "YEARLING", "ADULT");

    @Inject
    LineFixture lines;

    @Inject
    ClassFixture classes;

    @Inject
    AgeingFixture ageing;

    @Test
    void everyNumberOfAStatedAndOfACitedMatrixIsThatOfR() throws IOException {
        String season = classes.season(AgeingFixture.HERE);
        lines.add(season, 1, ALine.of("UNKNOWN", "MALE", "DETECTED"));
        lines.add(season, 11, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED"));
        JsonPath stated = answer(season, ageing.stated(PLAN), "");
        asR("STATED", stated);
        asR("BY_SEX", answer(season, ageing.cited(MALES, FEMALES), ""));
        assertEquals("what-if", stated.getString("label"));
        assertTrue(stated.getString("title").startsWith("What-if: Chronic wasting disease by age class, " + season));
        assertEquals("SOLVED", stated.getString(of("MALE") + "way"));
        assertEquals("LIKELIEST", stated.getString(of("FEMALE") + "way"));
        // Unknown age stays: 1 of 12, in no class, and in the total as read.
        assertEquals(12, stated.getInt(of("MALE") + "unknownAge.counted"));
        assertEquals(1, stated.getInt(of("MALE") + "unknownAge.detected"));
        assertEquals(402, stated.getInt(of("MALE") + "all.counted"));
        words(stated);
    }

    private static void words(JsonPath stated) {
        String males = stated.getString("sentences[0]");
        assertEquals(
                "What-if, males. As read: 1 of 60 fawns (1.7 %), 9 of 120 yearlings (7.5 %), 41 of 210 adults (19.5 %)."
                        + " If jaws were misread as “" + stated.getString("matrix.name")
                        + "” says: 0.9 of 59.7 fawns (1.6 %), 7.5 of 117.9 yearlings (6.3 %), 42.6 of 212.4 adults (20.1 %)."
                        + " From yearlings to adults prevalence would change by 13.7 percentage points instead of 12.0;"
                        + " adults would have 3.18 times the prevalence of yearlings instead of 2.60 times. No interval is"
                        + " claimed.",
                males);
        String females = stated.getString("sentences[1]");
        assertTrue(
                females.contains("Solved as it stands the matrix would put −0.03 animals in"
                        + " which it was detected among fawns, which cannot be."),
                females);
        assertFalse(stated.getString("sentences").contains(stated.getString("matrix.code")), males);
        assertTrue(stated.getList("warnings").contains("The matrix is stated, not measured: Told by a test."));
        assertTrue(stated.getString("assumptions").contains("not on whether the animal is infected, nor on its sex"));
        assertTrue(stated.getString("cautions").contains("stand above this report"));
        // None is claimed, so nothing may look like one.
        stated.getList("notes", String.class).forEach(note -> assertFalse(note.contains("interval"), note));
        assertNull(stated.get("confidence"));
        assertFalse(stated.prettify().contains("\"lower\""));
    }

    /** R 4.2.2, ageing.R: solve(), and a search along the edges where a class would be below 0. */
    static void asR(String matrix, JsonPath answer) throws IOException {
        int rows = 0;
        try (CsvReader<NamedCsvRecord> csv = CsvReader.builder()
                .commentStrategy(CommentStrategy.SKIP)
                .ofNamedCsvRecord(Path.of("src", "test", "resources", "prevalence", "ageing.csv"))) {
            for (NamedCsvRecord row : csv) {
                if (row.getField("matrix").equals(matrix)) {
                    String at = of(row.getField("sex")) + "classes[" + AGES.indexOf(row.getField("ageClass")) + "].";
                    near(row, "counted", answer.get(at + "whatIf.counted"));
                    near(row, "detected", answer.get(at + "whatIf.detected"));
                    near(row, "prevalence", answer.get(at + "whatIf.prevalence"));
                    near(row, "change", answer.get(at + "changeInPoints"));
                    near(row, "againCounted", answer.get(at + "readAgain.counted"));
                    near(row, "againDetected", answer.get(at + "readAgain.detected"));
                    near(row, "ratio", answer.get(of(row.getField("sex")) + "ratio.whatIf"));
                    near(row, "step", answer.get(of(row.getField("sex")) + "step.whatIf"));
                    near(row, "unexplained", answer.get(of(row.getField("sex")) + "unexplained"));
                    rows++;
                }
            }
        }
        assertEquals(9, rows);
    }

    /** The answer is rounded to a millionth; a figure in points, or a ratio of two of them, carries a hundred times that. */
    private static void near(NamedCsvRecord row, String field, Object got) {
        String expected = row.getField(field);
        if (expected.isEmpty()) {
            assertNull(got, row + " " + field);
        } else {
            assertEquals(Double.parseDouble(expected), ((Number) got).doubleValue(), 1e-4, row + " " + field);
        }
    }

    private static String of(String sex) {
        return "patterns.find { it.sex == '" + sex + "' }.";
    }

    @Test
    void aMatrixWithoutErrorChangesNothing() {
        String season = classes.season(AgeingFixture.HERE);
        JsonPath answer = answer(season, ageing.stated(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}), "");
        assertEquals(List.of(0, 0, 0), answer.getList(of("ALL") + "classes.changeInPoints"));
        assertEquals(List.of(115, 210, 400), answer.getList(of("ALL") + "classes.whatIf.counted"));
        assertEquals(1f, answer.getFloat("condition.BOTH"), 1e-6);
    }

    /** Nobody read as a yearling, though the matrix reads adults so: 25 x .05 of the adults would have been. */
    @Test
    void aMisfitOfAnAnimalOrMoreIsWarnedOf() {
        String season = classes.season(List.of(new Class("ADULT", "FEMALE", 0, 25)));
        JsonPath answer = answer(season, ageing.stated(PLAN), "");
        assertEquals(1.25f, answer.getFloat(of("FEMALE") + "unexplained"), 1e-5);
        assertEquals(List.of(0, 0, 25), answer.getList(of("FEMALE") + "classes.whatIf.counted"));
        assertEquals(-1.436195f, answer.getFloat(of("FEMALE") + "classes[1].solution.counted"), 1e-5);
        assertTrue(answer.getString("warnings").contains("The matrix does not fit all of these readings"));
        assertTrue(answer.getString("sentences[0]").contains("−1.4 others among yearlings, which cannot be."));
        assertTrue(answer.getString("sentences[0]")
                .contains("even under them 1.3 animals would have been read otherwise"));
    }

    @Test
    void aMatrixForEachSexLeavesAnimalsOfUnknownSexAsRead() {
        String season =
                classes.season(List.of(new Class("YEARLING", "MALE", 2, 40), new Class("ADULT", "FEMALE", 3, 40)));
        lines.add(season, 5, ALine.of("ADULT", "UNKNOWN", "NOT_DETECTED"));
        JsonPath answer = answer(season, ageing.cited(MALES, FEMALES), "");
        assertEquals("AS_READ", answer.getString(of("UNKNOWN") + "way"));
        assertEquals(5f, answer.getFloat(of("UNKNOWN") + "classes[2].whatIf.counted"));
        assertTrue(
                answer.getList("warnings").contains("The matrix has no table for sex unknown; they are left as read."));
        JsonPath both = answer(season, ageing.stated(PLAN), "&sex=MALE");
        assertEquals(List.of("MALE", "ALL"), both.getList("patterns.sex"));
        assertEquals("NOBODY", answer(lines.season(), ageing.stated(PLAN), "").getString(of("ALL") + "way"));
    }

    @Test
    void whatCannotBeAnsweredSaysWhatToChange() {
        String season = classes.season(AgeingFixture.HERE);
        String code = ageing.stated(PLAN);
        refused(season, "", "REQUIRED", "or KNOWN_AGE");
        refused(season, "&matrix=NONE_SUCH", "MATRIX_UNKNOWN", "'NONE_SUCH' is no ageing-error matrix; allowed: ");
        refused(season, "&matrix=" + code + "&interval=WILSON", "NO_INTERVAL", "a what-if has no interval");
        refused(season, "&matrix=" + code + "&confidence=0.9", "NO_INTERVAL", "leave it out");
        refused(season, "&matrix=" + code + "&by=sex", "NOT_HERE", "always by age class and sex");
        refused(season, "&matrix=" + code + "&ageClass=ADULT", "IMPOSSIBLE_COMBINATION", "needs every age class");
        refused(season, "&matrix=" + code + "&species=MULE_DEER", "MATRIX_OF_ANOTHER_SPECIES", "WHITE_TAILED_DEER");
        refused(season, "&matrix=" + code + "&matrix=" + code, "REPEATED", "2 times");
        String alike = ageing.stated(new double[][] {{1, 0, 0}, {0, .5, .5}, {0, .5, .5}});
        refused(season, "&matrix=" + alike, "CLASSES_READ_ALIKE", "are read alike");
        String nearly = ageing.stated(new double[][] {{1, 0, 0}, {0, .505, .495}, {0, .495, .505}});
        refused(season, "&matrix=" + nearly, "CLASSES_READ_ALIKE", "nearly alike (condition 100)");
        String hardly = ageing.stated(new double[][] {{1, 0, 0}, {0, .55, .45}, {0, .45, .55}});
        assertTrue(answer(season, hardly, "")
                .getString("warnings")
                .contains("By this matrix readers hardly tell the classes apart (condition 10.0)"));
    }

    private static void refused(String season, String more, String code, String words) {
        as("epidemiologist")
                .get("/api/v1/ageing-error?season=" + season + more)
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("code", equalTo(code))
                .body("detail", containsString(words));
    }

    @Test
    void onACutTheAnswerStaysTheSameAndTheCheckAfterAnUpgradeFindsNothing() {
        String season = classes.season(AgeingFixture.HERE);
        String code = ageing.stated(PLAN);
        String name = "Ageing " + UUID.randomUUID();
        String address =
                "/api/v1/ageing-error?season=" + season + "&matrix=" + code + "&cut=" + classes.cut(season, name);
        String first =
                as("auditor").get(address).then().statusCode(200).extract().asString();
        lines.add(season, 30, ALine.of("ADULT", "MALE", "DETECTED"));
        assertEquals(first, as("epidemiologist").get(address).asString());
        assertFalse(first.equals(as("epidemiologist")
                .get(address.substring(0, address.indexOf("&cut")))
                .asString()));
        String id = UUID.randomUUID().toString();
        as("epidemiologist")
                .contentType("application/json")
                .put("/api/v1/data-cuts/rechecks/" + id)
                .then()
                .statusCode(201);
        List<Map<String, String>> moved = as("auditor")
                .get("/api/v1/data-cuts/rechecks/" + id)
                .jsonPath()
                .getList("figures.findAll { it.cut == '" + name + "' }");
        assertEquals(List.of(), moved);
    }

    @Test
    void everyFormSaysThatItIsAWhatIf() {
        String season = classes.season(AgeingFixture.HERE);
        String query = "season=" + season + "&matrix=" + ageing.stated(PLAN);
        String csv = as("liaison")
                .accept("text/csv")
                .get("/api/v1/ageing-error?" + query)
                .then()
                .statusCode(200)
                .header("Content-Disposition", containsString("ageing-error-what-if-" + season))
                .extract()
                .asString();
        List<String> rows = csv.lines().toList();
        assertEquals(1 + 3 * 4, rows.size());
        assertTrue(rows.stream().skip(1).allMatch(row -> row.startsWith("what-if,")), csv);
        assertTrue(csv.contains("CWD,WHITE_TAILED_DEER,MALE,YEARLING,120,9,0.075,117.919631,7.451592,"), csv);
        as("auditor")
                .get("/api/v1/ageing-error.svg?" + query)
                .then()
                .statusCode(200)
                .body(startsWith("<svg"))
                .body(containsString("<title>What-if: Chronic wasting disease by age class"))
                .body(containsString("Male, yearling: as read 7.5 %, what-if 6.3 %"));
        as("auditor")
                .get("/api/v1/ageing-error.png?" + query)
                .then()
                .statusCode(200)
                .contentType("image/png");
        as("auditor")
                .accept("text/html")
                .get("/prevalence/ageing-error?" + query + "&station=T_STATION_1")
                .then()
                .statusCode(200)
                .body(containsString("<h1>What-if: ageing error</h1>"))
                .body(containsString("<input type=\"hidden\" name=\"station\" value=\"T_STATION_1\">"));
    }

    @Test
    void whoReadsReportsReadsItAndOthersDoNot() {
        String season = classes.season(AgeingFixture.HERE);
        String query = "?season=" + season + "&matrix=" + ageing.stated(PLAN);
        for (String form : List.of("", ".csv", ".svg", ".png")) {
            as("sampler").get("/api/v1/ageing-error" + form + query).then().statusCode(403);
            as("notifier").get("/api/v1/ageing-error" + form + query).then().statusCode(403);
            as("coordinator").get("/api/v1/ageing-error" + form + query).then().statusCode(200);
        }
        as("sampler")
                .accept("text/html")
                .get("/prevalence/ageing-error" + query)
                .then()
                .statusCode(403);
        as("sampler").get("/api/v1/ageing-error-matrices").then().statusCode(200);
    }

    @Test
    void theMatrixIsThereAsImportedAndNeverChanges() {
        String code = ageing.cited(MALES, FEMALES);
        as("sampler")
                .get("/api/v1/ageing-error-matrices")
                .then()
                .statusCode(200)
                .body("items.code", hasItem(code))
                .body("items.find { it.code == '" + code + "' }.tables[0].rows[1].readings", equalTo(65))
                .body("items.find { it.code == '" + code + "' }.tables[1].rows[2].reads[2].share", equalTo(.97f));
        String head = "code,name,species,kind,source,as_of,sex,true_class,read_class,jaws,share\n";
        classes.post(
                        "ageing-error-matrices",
                        head
                                + AgeingFixture.rows(
                                        code,
                                        "CITED",
                                        "MALE",
                                        new double[][] {{48, 2, 0}, {1, 60, 4}, {0, 9, 90}},
                                        true))
                .statusCode(409)
                .body("errors[0].rule", equalTo("CODE_FIXED"));
        classes.post("ageing-error-matrices", head + AgeingFixture.rows(code, "CITED", "MALE", MALES, true))
                .statusCode(200)
                .body("changes", equalTo(0));
    }

    private static JsonPath answer(String season, String matrix, String more) {
        return as("epidemiologist")
                .get("/api/v1/ageing-error?season=" + season + "&matrix=" + matrix + more)
                .then()
                .statusCode(200)
                .header("Cache-Control", equalTo("private, no-store"))
                .extract()
                .jsonPath();
    }
}
