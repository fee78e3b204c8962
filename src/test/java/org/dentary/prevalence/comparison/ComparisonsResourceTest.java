package org.dentary.prevalence.comparison;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.comparison.ClassFixture.Class;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ComparisonsResourceTest {
    /** Counts of src/test/resources/prevalence/comparisons.R. */
    private static final List<Class> HERE = List.of(
            new Class("FAWN", "MALE", 1, 60),
            new Class("FAWN", "FEMALE", 0, 55),
            new Class("YEARLING", "MALE", 9, 120),
            new Class("YEARLING", "FEMALE", 4, 90),
            new Class("ADULT", "MALE", 41, 210),
            new Class("ADULT", "FEMALE", 18, 190));

    private static final List<Class> THERE = List.of(
            new Class("FAWN", "MALE", 0, 40),
            new Class("FAWN", "FEMALE", 1, 45),
            new Class("YEARLING", "MALE", 5, 100),
            new Class("YEARLING", "FEMALE", 3, 80),
            new Class("ADULT", "MALE", 20, 180),
            new Class("ADULT", "FEMALE", 12, 160));
    private static final List<String> NUMBERS = List.of("estimate", "lower", "upper", "p", "adjusted", "second");

    @Inject
    LineFixture lines;

    @Inject
    ClassFixture classes;

    @BeforeEach
    void setUp() {
        classes.herd("T_HERD", 52, 51, 29, 36, 38, 94);
    }

    @Test
    void everyNumberIsThatOfR() throws Exception {
        String here = classes.season(HERE);
        String there = classes.season(THERE);
        // Unknown age: in the crude difference between seasons, in no comparison between classes.
        lines.add(here, 1, ALine.of("UNKNOWN", "MALE", "DETECTED"));
        lines.add(here, 11, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED"));
        JsonPath answer = compare(here, "&with=" + there + "&herd=T_HERD&ageFawn=0.5&ageYearling=1.5&ageAdult=4");
        // R 4.2.2: prop.test, fisher.test, mantelhaen.test, prop.trend.test, p.adjust, qbeta (comparisons.R).
        List<String> expected =
                Files.readAllLines(Path.of("src", "test", "resources", "prevalence", "comparisons.csv"));
        List<Map<String, Object>> results = answer.getList("comparisons");
        assertEquals(expected.size() - 1, results.size());
        for (int i = 1; i < expected.size(); i++) {
            String[] line = expected.get(i).split(",", -1);
            String at = "comparisons[" + (i - 1) + "].";
            assertEquals(line[0], answer.getString(at + "kind"));
            List<Object> got = new ArrayList<>();
            for (String path : List.of("estimate", "lower", "upper")) {
                got.add(answer.get(at + "figures[0]." + path));
            }
            got.add(answer.get(at + "tests[0].p"));
            got.add(answer.get(at + "tests[0].adjustedP"));
            got.add(line[0].endsWith("CLASS") || line[0].endsWith("CRUDE") ? null : answer.get(at + "tests[1].p"));
            for (int n = 0; n < NUMBERS.size(); n++) {
                near(line[n + 2], got.get(n), line[0] + " " + line[1] + " " + NUMBERS.get(n));
            }
        }
        assertEquals(11, answer.getInt("multiplicity.tests"));
        assertTrue(answer.getString("multiplicity.sentence").startsWith("11 tests decide in this answer."));
        assertTrue(answer.getList("notes").toString().contains("12 counted animals of " + here));
        verdicts(answer);
    }

    /** Relative 1e-6: R's roots and fisher.test are the looser side. */
    private static void near(String expected, Object got, String what) {
        if (expected.isEmpty()) {
            assertNull(got, what);
            return;
        }
        double value = Double.parseDouble(expected);
        assertEquals(value, ((Number) got).doubleValue(), 1e-6 * Math.max(1e-3, Math.abs(value)), what);
    }

    private static void verdicts(JsonPath answer) {
        assertEquals(
                List.of(
                        "NOT_SHOWN",
                        "NOT_SHOWN",
                        "SHOWN",
                        "SHOWN",
                        "SHOWN",
                        "SHOWN",
                        "NOT_SHOWN",
                        "SHOWN",
                        "NOT_SHOWN",
                        "NOT_SHOWN",
                        "NOT_SHOWN",
                        "ESTIMATE",
                        "ESTIMATE",
                        "NOT_SHOWN"),
                answer.getList("comparisons.verdict"));
        assertEquals(
                "Detected in 41 of 210 adult males (19.5 %) and in 18 of 190 adult females (9.5 %); difference 10.1"
                        + " percentage points (95 % interval 3.1 to 16.8), Fisher exact p 0.005. A difference is shown:"
                        + " more often detected in adult males than in adult females (p adjusted for 11 tests 0.033).",
                answer.getString("comparisons[2].sentence"));
        assertTrue(answer.getString("comparisons[1].sentence")
                .endsWith("No difference shown, which does not say that there is none. These counts are compatible with"
                        + " anything from 4.3 points lower in yearling males than in yearling females to 9.8 points"
                        + " higher in yearling males than in yearling females."));
        assertTrue(answer.getString("comparisons[9].sentence")
                .contains("Alone this would be read as a difference; with 11 tests in this answer it is not shown"
                        + " (adjusted p 0.118)."));
        answer.getList("comparisons.sentence", String.class)
                .forEach(sentence -> assertFalse(
                        sentence.toLowerCase().matches(".*\\b(no|not a) (significant )?difference\\b(?! shown).*"),
                        sentence));
    }

    @Test
    void publishedExamplesReenteredGiveThePublishedFigures() {
        // Le, Introductory Biostatistics, example 1.19: two strata, OR_MH 1.53. Cases stand as detected.
        String strata = classes.season(List.of(
                new Class("YEARLING", "MALE", 4, 56),
                new Class("YEARLING", "FEMALE", 34, 788),
                new Class("ADULT", "MALE", 25, 108),
                new Class("ADULT", "FEMALE", 171, 1024)));
        JsonPath pooled = compare(strata, "");
        String adjusted = "comparisons.find { it.kind == 'SEX_ADJUSTED_FOR_AGE' }.";
        assertEquals(1.53, pooled.getDouble(adjusted + "figures[0].estimate"), .005);
        // Newcombe 1998, Stat Med 17:873-890, method 10: 56/70 - 48/80, .0524 to .3339 (table from memory, R agrees).
        String pair = classes.season(List.of(new Class("ADULT", "MALE", 56, 70), new Class("ADULT", "FEMALE", 48, 80)));
        JsonPath two = compare(pair, "");
        String adults = "comparisons.find { it.about == 'Adult' }.figures[0].";
        assertEquals(.2000, two.getDouble(adults + "estimate"), 5e-5);
        assertEquals(.0524, two.getDouble(adults + "lower"), 5e-5);
        assertEquals(.3339, two.getDouble(adults + "upper"), 5e-5);
    }

    @Test
    void strataThatDisagreeTakeTheCommonFiguresWordAway() {
        String season = classes.season(List.of(
                new Class("YEARLING", "MALE", 30, 100),
                new Class("YEARLING", "FEMALE", 10, 100),
                new Class("ADULT", "MALE", 10, 100),
                new Class("ADULT", "FEMALE", 30, 100)));
        JsonPath answer = compare(season, "");
        String adjusted = "comparisons.find { it.kind == 'SEX_ADJUSTED_FOR_AGE' }.";
        assertEquals("READ_ONE_BY_ONE", answer.getString(adjusted + "verdict"));
        assertTrue(answer.getString(adjusted + "sentence").endsWith("read them one by one."));
        assertTrue(answer.getDouble(adjusted + "tests[1].p") < .001);
    }

    @Test
    void aTrendSaysWhatItLacksAndAHumpIsNoLine() {
        String two = classes.season(List.of(new Class("YEARLING", "MALE", 5, 50), new Class("ADULT", "MALE", 10, 50)));
        String males = "comparisons.find { it.kind == 'AGE_TREND' && it.about == 'Males' }.";
        JsonPath few = compare(two, "&ageFawn=0.5&ageYearling=1.5&ageAdult=4");
        assertEquals("NOT_COMPARED", few.getString(males + "verdict"));
        assertTrue(few.getString(males + "sentence")
                .contains("at least three age classes with counted animals, and there are 2"));
        String hump = classes.season(List.of(
                new Class("FAWN", "MALE", 2, 100),
                new Class("YEARLING", "MALE", 40, 100),
                new Class("ADULT", "MALE", 10, 100)));
        assertTrue(compare(hump, "&ageFawn=0.5&ageYearling=1.5")
                .getString(males + "sentence")
                .contains("state the mean age in years of adults"));
        JsonPath stated = compare(hump, "&ageFawn=0.5&ageYearling=1.5&ageAdult=4");
        assertEquals("READ_ONE_BY_ONE", stated.getString(males + "verdict"));
        assertEquals(0.5, stated.getDouble("ages.FAWN"));
    }

    @Test
    void countsAreThoseOfThePrevalenceReportAndOnlyReleasedOutcomes() {
        String season = classes.season(HERE);
        ALine adult = ALine.of("ADULT", "MALE", "NOT_DETECTED");
        lines.add(season, 3, adult.from("VEHICLE"));
        lines.add(season, 2, adult.excluded("DUPLICATE"));
        lines.add(season, 4, ALine.of("ADULT", "MALE", "PENDING").derived("DETECTED"));
        JsonPath report = JsonPath.from(ClassFixture.as("epidemiologist")
                .get("/api/v1/prevalence?season=" + season)
                .asString());
        JsonPath answer = compare(season, "");
        List<Object> cells = report.getList("cells");
        assertEquals(cells, answer.getList("cells"));
        assertEquals(
                210,
                answer.getInt("comparisons.find { it.about == 'Adult' }.groups[0].counted"),
                "nobody twice, none unreleased");
        JsonPath unit = compare(season, "&unit=" + SeasonFixture.OTHER_UNIT);
        assertEquals("NOT_COMPARED", unit.getString("comparisons[0].verdict"));
        assertTrue(unit.getString("comparisons[0].sentence")
                .contains("none of the fawn males or fawn females is counted"));
    }

    @Test
    void onACutTheAnswerIsTheSameByteForByte() {
        String here = classes.season(HERE);
        String there = classes.season(THERE);
        String cut = classes.cut(here, "Compared");
        String other = classes.cut(there, "Compared with");
        String address = "/api/v1/comparisons?season=" + here + "&cut=" + cut + "&with=" + other + "&herd=T_HERD";
        String json = ok(address).extract().asString();
        String csv = ClassFixture.as("epidemiologist")
                .accept("text/csv")
                .get(address)
                .asString();
        lines.add(here, 9, ALine.of("ADULT", "FEMALE", "DETECTED"));
        lines.add(there, 9, ALine.of("ADULT", "FEMALE", "DETECTED"));
        assertEquals(json, ok(address).extract().asString());
        assertEquals(
                csv,
                ClassFixture.as("epidemiologist")
                        .accept("text/csv")
                        .get(address)
                        .asString());
        assertEquals("Compared with", JsonPath.from(json).getString("with.cut.name"));
        assertEquals(
                JsonPath.from(json).getList("comparisons").size() + 1,
                csv.split("\r\n").length,
                "one line each and the header");
        refused(here, "&cut=" + cut + "&with=" + there, "NEEDS_A_CUT", "could not stay the same");
    }

    @Test
    void aQuestionThatCannotBeAnsweredSaysWhatToChange() {
        String here = classes.season(HERE);
        classes.herd("T_NO_FAWNS", null, null, 29, 36, 38, 94);
        refused(
                here,
                "&herd=T_NO_FAWNS",
                "WEIGHT_MISSING",
                "no row for fawn males, of which season " + here + " counted 60");
        refused(here, "&herd=NO_SUCH", "HERD_UNKNOWN", "allowed: ");
        refused(here, "&herd=T_HERD&species=" + SeasonFixture.SPECIES_WITHOUT_KEY, "HERD_OF_ANOTHER_SPECIES", "choose");
        refused(here, "&with=" + here, "SAME_SEASON", "Choose another season");
        refused(here, "&sex=MALE", "IMPOSSIBLE_COMBINATION", "leave the filter sex out");
        refused(here, "&by=sex", "NOT_HERE", "leave by out");
        refused(here, "&ageAdult=old", "OUT_OF_RANGE", "years from 0 to 30");
        refused(here, "&nonsense=1", "NOT_A_COLUMN", "allowed");
        ClassFixture.as("epidemiologist")
                .get("/api/v1/comparisons?season=" + here + "&with=NOPE")
                .then()
                .statusCode(404);
    }

    @Test
    void aClassOfTheHerdThatNobodySampledIsNotFilledIn() {
        String adults = classes.season(List.of(new Class("ADULT", "MALE", 4, 40), new Class("ADULT", "FEMALE", 2, 40)));
        JsonPath answer = compare(adults, "&herd=T_HERD");
        String standardized = "comparisons.find { it.kind == 'STANDARDIZED' }.";
        assertEquals("NOT_COMPARED", answer.getString(standardized + "verdict"));
        assertTrue(answer.getString(standardized + "sentence").contains("fawn males, fawn females, yearling males"));
    }

    @Test
    void onlyThoseWhoReadReportsCompare() {
        String season = classes.season(HERE);
        for (String who : List.of("sampler", "notifier")) {
            ClassFixture.as(who)
                    .get("/api/v1/comparisons?season=" + season)
                    .then()
                    .statusCode(403);
            ClassFixture.as(who)
                    .get("/api/v1/comparisons.csv?season=" + season)
                    .then()
                    .statusCode(403);
            ClassFixture.as(who)
                    .get("/prevalence/comparisons?season=" + season)
                    .then()
                    .statusCode(403);
        }
        given().get("/api/v1/comparisons?season=" + season).then().statusCode(401);
        ClassFixture.as("sampler")
                .get("/api/v1/herd-structures")
                .then()
                .statusCode(200)
                .body("items.find { it.code == 'T_HERD' }.classes.size()", is(6));
        ClassFixture.as("auditor")
                .get("/api/v1/comparisons?season=" + season)
                .then()
                .statusCode(200);
    }

    @Test
    void aHerdStructureIsImportedWholeAndNeverChanges() {
        String code = "H" + UUID.randomUUID().toString().substring(0, 8).toUpperCase();
        String head = "code,name,as_of,source,species,age_class,sex,animals\n";
        String row = code + ",Herd,2026-04-30,A model,WHITE_TAILED_DEER,ADULT,";
        classes.post("herd-structures", head + row + "MALE,10\n" + row + "FEMALE,20\n")
                .statusCode(200);
        classes.post("herd-structures", head + row + "MALE,10\n")
                .statusCode(200)
                .body("changes", equalTo(0));
        classes.post("herd-structures", head + row + "MALE,11\n")
                .statusCode(409)
                .body("errors[0].rule", equalTo("CODE_FIXED"))
                .body("errors[0].message", containsString("a code of their own"));
        classes.post("herd-structures", head + row.replace("ADULT", "FAWN") + "MALE,1\n")
                .statusCode(409);
        String other = row.replace(code, code + "B");
        classes.post("herd-structures", head + other + "MALE,1\n" + other.replace("A model", "Another") + "FEMALE,1\n")
                .statusCode(409)
                .body("errors[0].rule", equalTo("ROWS_DISAGREE"));
    }

    private static JsonPath compare(String season, String more) {
        return ok("/api/v1/comparisons?season=" + season + more).extract().jsonPath();
    }

    private static ValidatableResponse ok(String address) {
        return ClassFixture.as("epidemiologist")
                .get(address)
                .then()
                .statusCode(200)
                .header("Cache-Control", equalTo("private, no-store"));
    }

    private static void refused(String season, String more, String code, String words) {
        ClassFixture.as("epidemiologist")
                .get("/api/v1/comparisons?season=" + season + more)
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("code", equalTo(code))
                .body("detail", containsString(words));
    }
}
