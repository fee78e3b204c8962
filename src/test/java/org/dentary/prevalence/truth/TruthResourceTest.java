package org.dentary.prevalence.truth;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.comparison.ClassFixture;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class TruthResourceTest {
    private static final Path VECTORS = Path.of("src", "test", "resources", "statistics");

    @Inject
    TruthFixture truths;

    @Inject
    LineFixture lines;

    @Inject
    ClassFixture classes;

    @Inject
    EntityManager entities;

    /**
     * Animals entered one by one, tested and asked for again. R 4.2.2, true_prevalence.R; among them Reiczigel, Foldi and
     * Ozsvari 2010: brucellosis 23/150 and the five of their Table 2, and H. pylori 6/151.
     */
    @Test
    void publishedExamplesWithStatedFiguresGoThroughTheWholePath() throws Exception {
        List<String> rows = Files.readAllLines(VECTORS.resolve("true-prevalence-known.csv"));
        int examples = 0;
        for (String row : rows.subList(2, 15)) {
            String[] cells = row.split(",", -1);
            String se = short6(cells[2]);
            String sp = short6(cells[3]);
            JsonPath answer = TruthFixture.asked(
                    truths.season(Integer.parseInt(cells[0]), Integer.parseInt(cells[1])),
                    truths.stated(se, sp),
                    "&by=sex");
            same(answer, "total", cells, 5, row);
            same(answer, "cells.find { it.sex == 'MALE' }", cells, 5, row);
            assertEquals(
                    Double.parseDouble(cells[5]) < 0 || Double.parseDouble(cells[5]) > 1,
                    answer.getBoolean("total.truncated"),
                    row);
            examples++;
        }
        assertEquals(13, examples);
    }

    /** Lang and Reiczigel 2014, formula in plain R (true_prevalence.R): 12/200 by a study of 90/100 and 196/200. */
    @Test
    void aStudysOwnUncertaintyEntersTheInterval() throws Exception {
        List<String> rows = Files.readAllLines(VECTORS.resolve("true-prevalence-estimated.csv"));
        String[] cells = rows.get(2).split(",", -1);
        assertEquals("12,200,90,100,196,200", String.join(",", List.of(cells).subList(0, 6)));
        JsonPath answer = TruthFixture.asked(truths.season(12, 200), truths.studied(90, 100, 196, 200), "");
        same(answer, "total", cells, 7, rows.get(2));
        assertEquals(100, answer.getInt("performance.study.infected"));
        assertEquals(.98, answer.getDouble("performance.specificity"), 1e-12);
        assertTrue(answer.getList("methods.what").toString().contains("Lang-Reiczigel limits"));
        assertTrue(answer.getList("notes").toString().contains("that of the study behind sensitivity"));
    }

    @Test
    void publishedFiguresAreSaidAsPublished() {
        // Reiczigel et al. 2010: 23 of 150, Se .96, Sp .89: true prevalence 5.1 per 100, 0 to 13.
        JsonPath goats = TruthFixture.asked(truths.season(23, 150), truths.stated("0.96", "0.89"), "");
        assertEquals(
                "Detected in 23 of 150 counted (15.3 %). True prevalence 5.1 % (95 % interval 0.0 % to 12.8 %).",
                goats.getString("total.sentence"));
        // The same: 6 of 151, Se .964, Sp .927: 0, published with Clopper-Pearson limits as 0 to 1.3, with Blaker's
        // 1.2.
        JsonPath children = TruthFixture.asked(truths.season(6, 151), truths.stated("0.964", "0.927"), "");
        assertEquals(
                "Detected in 6 of 151 counted (4.0 %). True prevalence 0.0 % (95 % interval 0.0 % to 1.2 %): apparent prevalence"
                        + " below the false-positive rate of 7.3 %, before it was cut to 0 the estimate was −3.7 %.",
                children.getString("total.sentence"));
        assertTrue(
                children.getList("warnings")
                        .contains(
                                "In 1 row the estimate lay outside 0 to 100 % and is cut there; the column Uncut has it as computed."));
    }

    @Test
    void bothLimitsAtZeroAndAnEstimateAboveOneAreSaid() {
        JsonPath none = TruthFixture.asked(truths.season(0, 400), truths.stated("0.9", "0.9"), "");
        assertEquals(
                "Detected in 0 of 400 counted (0.0 %). True prevalence 0.0 % (95 % interval 0.0 % to 0.0 %): apparent prevalence below"
                        + " the false-positive rate of 10 %, before it was cut to 0 the estimate was −12.5 %.",
                none.getString("total.sentence"));
        assertEquals(-.125, none.getDouble("total.raw"), 1e-12);
        JsonPath all = TruthFixture.asked(truths.season(40, 40), truths.stated("0.92", "1"), "");
        assertTrue(all.getString("total.sentence")
                .endsWith(
                        "apparent prevalence above the sensitivity of 92 %, before it was cut to 100 % the estimate was"
                                + " 108.7 %; the set does not fit these animals."));
        assertFalse(all.getList("notes").toString().contains("take off too much"), "specificity 1 takes nothing off");
        assertTrue(none.getList("notes").toString().contains("take off too much"));
        JsonPath tiny = TruthFixture.asked(truths.season(5, 20), truths.studied(1, 1, 1, 100), "");
        assertNull(tiny.get("total.trueLower"));
        assertTrue(tiny.getString("total.sentence").contains("(no interval: the study behind the set is too small"));
        assertNull(none.get("cells.find { it.ageClass == 'FAWN' && it.sex == 'MALE' }.truePrevalence"));
        assertTrue(none.getString("cells.find { it.ageClass == 'FAWN' && it.sex == 'MALE' }.sentence")
                .startsWith("Not sampled"));
    }

    @Test
    void theApparentPrevalenceBesideItIsThatOfThePrevalenceReport() {
        String season = truths.season(9, 90);
        truths.add(season, "YEARLING", "FEMALE", 1, 60);
        lines.add(season, 7, ALine.of("ADULT", "MALE", "PENDING").derived("DETECTED"));
        lines.add(season, 3, ALine.of("ADULT", "MALE", "NOT_DETECTED").excluded("DUPLICATE"));
        String set = truths.stated("0.92", "0.999");
        for (String more :
                List.of("", "&by=sex&interval=CLOPPER_PEARSON&confidence=0.9", "&sex=MALE&by=managementUnit")) {
            JsonPath report = TruthFixture.doubles(ClassFixture.as("epidemiologist")
                    .get("/api/v1/prevalence?season=" + season + more)
                    .asString());
            JsonPath answer = TruthFixture.asked(season, set, more);
            for (String field : List.of("counted", "detected", "prevalence", "lower", "upper", "pending", "flags")) {
                assertEquals(report.getList("cells." + field), answer.getList("cells." + field), field);
                assertEquals(report.<Object>get("total." + field), answer.<Object>get("total." + field), field);
            }
            for (String field : List.of("by", "scope", "takenToCounted", "cautions", "incomplete", "interval")) {
                assertEquals(report.<Object>get(field), answer.<Object>get(field), field);
            }
            assertEquals(answer.getInt("total.counted"), answer.getInt("tested.within"));
        }
        assertEquals(
                List.of("MALE"), TruthFixture.asked(season, set, "&sex=MALE").getList("filter.sex"));
    }

    @Test
    void aSetThatDoesNotFitIsRefusedAndSaysWhy() {
        String season = truths.season(3, 30);
        String relative = truths.imported("RELATIVE", "0.983,0.999,,,,");
        refused(
                season,
                "&performance=" + relative,
                "RELATIVE_SENSITIVITY",
                "says nothing of infected deer that both miss");
        refused(season, "", "PERFORMANCE_REQUIRED", "performance is missing");
        refused(
                season,
                "&performance=NO_SUCH",
                "PERFORMANCE_UNKNOWN",
                "'NO_SUCH' is no set of test performance; allowed: ");
        String set = truths.stated("0.9", "1");
        refused(
                season,
                "&species=" + SeasonFixture.SPECIES_WITHOUT_KEY + "&performance=" + set,
                "PERFORMANCE_OF_ANOTHER_SPECIES",
                "is of WHITE_TAILED_DEER, the animals are MULE_DEER");
        refused(season, "&performance=" + set + "&performance=" + relative, "REPEATED", "never pooled");
        refused(season, "&performance=" + set + "&nonsense=1", "NOT_A_COLUMN", "allowed");
        String obex = truths.code();
        classes.post(
                        "test-performance",
                        TruthFixture.HEAD
                                + TruthFixture.row(obex, "ANIMAL_LEVEL", "0.8,1,,,,")
                                        .replace(TruthFixture.NODE, "OBEX"))
                .statusCode(200);
        refused(
                season,
                "&performance=" + obex,
                "PERFORMANCE_OF_OTHER_TESTS",
                "Screening test or Confirmatory test on obex, and none of the 30 counted animals");
        ClassFixture.as("epidemiologist")
                .get("/api/v1/true-prevalence?season=" + season + "&performance=" + obex)
                .then()
                .body("detail", containsString("Screening test on medial retropharyngeal node (30 animals)"));
    }

    /** A disease of its own, taken away again: others take the plan's first. */
    @Test
    void aSetOfAnotherDiseaseIsRefused() {
        String season = truths.season(1, 30);
        String code = truths.code();
        classes.post("diseases", "code,name\nTP_OTHER,Another disease\n").statusCode(200);
        try {
            classes.post(
                            "test-performance",
                            TruthFixture.HEAD
                                    + TruthFixture.row(code, "ANIMAL_LEVEL", "0.8,1,,,,")
                                            .replace(",CWD,", ",TP_OTHER,"))
                    .statusCode(200);
            refused(
                    season,
                    "&disease=CWD&performance=" + code,
                    "PERFORMANCE_OF_ANOTHER_DISEASE",
                    "is of TP_OTHER, the animals were tested for CWD");
        } finally {
            io.quarkus.narayana.jta.QuarkusTransaction.requiringNew().run(() -> {
                entities.createNativeQuery("delete from test_performance where disease = 'TP_OTHER'")
                        .executeUpdate();
                entities.createNativeQuery("delete from disease where code = 'TP_OTHER'")
                        .executeUpdate();
            });
        }
    }

    @Test
    void animalsTestedOtherwiseAreToldBeforeTheFigures() {
        String season = truths.season(4, 40);
        ALine plain = ALine.of("ADULT", "FEMALE", "NOT_DETECTED");
        List<String> both = lines.add(season, 5, plain);
        truths.tested(both, "N1", TruthFixture.NODE, "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        truths.tested(both, "B1", "OBEX", "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        truths.tested(lines.add(season, 3, plain), "B1", "OBEX", "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        truths.tested(
                lines.add(season, 2, plain), "N1", TruthFixture.NODE, "T_SCREEN", "SCREENING", "NOT_DETECTED", true);
        lines.add(season, 1, plain);
        // Tissue that the method does not accept, a run that says nothing of the animal, an adjunct finding: no tests
        // of it.
        List<String> odd = lines.add(season, 1, plain);
        truths.tested(odd, "N1", TruthFixture.NODE, "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        truths.tested(odd, "T1", "TONSIL", "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        truths.found(odd, "N1", "T_CONFIRM", "ADJUNCT", "DETECTED", false);
        JsonPath answer = TruthFixture.asked(season, truths.stated("0.92", "1"), "");
        assertEquals(52, answer.getInt("tested.counted"));
        assertEquals(41, answer.getInt("tested.within"));
        assertEquals(5, answer.getInt("tested.partly"));
        assertEquals(6, answer.getInt("tested.outside"));
        String warning = answer.getList("warnings", String.class).stream()
                .filter(text -> text.contains("counted animals"))
                .findFirst()
                .orElseThrow();
        assertTrue(
                warning.contains("Of 52 counted animals, 41 were tested by that alone, 5 by that and otherwise, and 6"
                        + " (11.5 %) otherwise only, in a pool, or without a finding on record."),
                warning);
        assertTrue(answer.getList("notes")
                .toString()
                .contains(
                        "Screening test on medial retropharyngeal node (46 animals), Screening test on obex (8 animals), Confirmatory test on"
                                + " medial retropharyngeal node (4 animals), Screening test on medial retropharyngeal node in a pool (2"
                                + " animals)"));
        String adults = "cells.find { it.ageClass == 'ADULT' && it.sex == '%s' }.";
        assertEquals(6, answer.getInt(adults.formatted("FEMALE") + "testedOtherwise"));
        assertEquals(0, answer.getInt(adults.formatted("MALE") + "testedOtherwise"));
        assertEquals(6, answer.getInt("total.testedOtherwise"));
        assertTrue(answer.getString(adults.formatted("FEMALE") + "sentence")
                .endsWith(" 6 of them were not tested by what the set speaks of."));
        assertFalse(answer.getString(adults.formatted("MALE") + "sentence").contains("not tested by"));
        assertFalse(answer.getString("warnings").contains("nobody was tested"));
        JsonPath females = TruthFixture.asked(season, truths.stated("0.92", "1"), "&sex=FEMALE");
        assertEquals(12, females.getInt("tested.counted"), "the filter holds for the tests too");
        JsonPath males = TruthFixture.asked(season, truths.stated("0.92", "1"), "&sex=MALE");
        assertFalse(males.getList("warnings").toString().contains("counted animals"));
    }

    @Test
    void theTestsOfAllKitsOfAnAnimalAreItsTests() {
        String season = truths.season(0, 30);
        String counted =
                lines.add(season, 1, ALine.of("ADULT", "MALE", "NOT_DETECTED")).get(0);
        List<String> duplicate =
                lines.add(season, 1, ALine.of("ADULT", "MALE", "NOT_DETECTED").excluded("DUPLICATE"));
        truths.tested(duplicate, "N1", TruthFixture.NODE, "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        String set = truths.stated("0.92", "1");
        assertEquals(1, TruthFixture.asked(season, set, "").getInt("tested.outside"));
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("update animal set same_as = :counted where kit = :duplicate")
                        .setParameter("counted", counted)
                        .setParameter("duplicate", duplicate.get(0))
                        .executeUpdate());
        JsonPath linked = TruthFixture.asked(season, set, "");
        assertEquals(31, linked.getInt("tested.within"));
        assertEquals(0, linked.getInt("tested.outside"));
    }

    @Test
    void aRowInWhichNobodyHadTheSetsTestsIsWarnedOf() {
        String season = truths.season(4, 40);
        truths.tested(
                lines.add(season, 7, ALine.of("FAWN", "FEMALE", "NOT_DETECTED")),
                "B1",
                "OBEX",
                "T_SCREEN",
                "SCREENING",
                "NOT_DETECTED",
                false);
        String set = truths.stated("0.92", "1");
        JsonPath answer = TruthFixture.asked(season, set, "&by=managementUnit,ageClass");
        String fawns = "cells.find { it.ageClass == 'FAWN' && it.counted == 7 }.";
        assertEquals(7, answer.getInt(fawns + "testedOtherwise"));
        assertTrue(answer.getString(fawns + "sentence")
                .endsWith("None of them was tested by what the set speaks of: the figure takes another test for it."));
        assertTrue(answer.getString("warnings").contains("In 1 row nobody was tested by what the set speaks of"));
        ClassFixture.as("epidemiologist")
                .get("/true-prevalence?season=" + season + "&performance=" + set)
                .then()
                .statusCode(200)
                .body(containsString("Tested otherwise</th>"));
    }

    @Test
    void onACutTheAnswerIsTheSameByteForByteAndComputedAgain() {
        String season = truths.season(6, 60);
        List<String> more = lines.add(season, 1, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        truths.tested(more, "N1", TruthFixture.NODE, "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        String set = truths.studied(90, 100, 198, 200);
        String name = "Truth " + UUID.randomUUID();
        String cut = classes.cut(season, name);
        String address = "/api/v1/true-prevalence?season=" + season + "&performance=" + set + "&cut=" + cut;
        // Told after the cut and before the first answer on it.
        truths.tested(more, "B1", "OBEX", "T_SCREEN", "SCREENING", "NOT_DETECTED", false);
        JsonPath before = checked();
        String json = TruthFixture.ok(address).extract().asString();
        String csv = TruthFixture.csv(address);
        assertEquals(61, JsonPath.from(json).getInt("tested.within"), "a later finding is none of the cut's");
        truths.add(season, "ADULT", "MALE", 9, 9);
        assertEquals(json, TruthFixture.ok(address).extract().asString());
        assertEquals(csv, TruthFixture.csv(address));
        assertEquals(70, TruthFixture.asked(season, set, "").getInt("total.counted"));
        JsonPath after = checked();
        assertEquals(before.getInt("answers") + 1, after.getInt("answers"), "one answer, whatever its forms");
        assertEquals(before.getInt("unchecked"), after.getInt("unchecked"), "it is not passed over");
        assertEquals(List.of(), after.getList("figures.findAll { it.cut == '" + name + "' }"));
        ClassFixture.as("epidemiologist")
                .contentType("application/json")
                .header("If-Match", "\"0\"")
                .body("{\"season\":\"" + season + "\",\"name\":\"" + name + "\",\"superseded\":\"Late results\"}")
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(200);
        TruthFixture.ok(address).header("Data-Cut-Superseded", equalTo("UTF-8''Late%20results"));
        assertEquals(json, TruthFixture.ok(address).extract().asString());
    }

    @Test
    void anIntervalUsedBeyondWhatWasStudiedIsSaid() {
        String season = truths.season(3, 30);
        String beyond = "how often it covers is not known";
        String set = truths.studied(90, 100, 100, 100);
        assertFalse(
                TruthFixture.asked(season, set, "").getList("notes").toString().contains(beyond));
        assertTrue(TruthFixture.asked(season, set, "&confidence=0.8")
                .getList("notes")
                .toString()
                .contains(beyond));
        assertTrue(TruthFixture.asked(season, truths.studied(40, 100, 100, 100), "")
                .getList("notes")
                .toString()
                .contains(beyond));
    }

    private static JsonPath checked() {
        return ClassFixture.as("epidemiologist")
                .put("/api/v1/data-cuts/rechecks/" + UUID.randomUUID())
                .then()
                .statusCode(201)
                .extract()
                .jsonPath();
    }

    @Test
    void itTakesAsManyStatementsForManyAnimalsAsForFew() {
        String set = truths.stated("0.92", "1");
        String few = truths.season(1, 4);
        String many = truths.season(20, 400);
        TruthFixture.asked(few, set, "");
        assertEquals(statements(few, set), statements(many, set));
    }

    private long statements(String season, String set) {
        Statistics statistics =
                entities.getEntityManagerFactory().unwrap(SessionFactory.class).getStatistics();
        statistics.setStatisticsEnabled(true);
        statistics.clear();
        TruthFixture.asked(season, set, "");
        return statistics.getPrepareStatementCount();
    }

    @Test
    void onlyThoseWhoReadReportsAskAndEverybodySeesTheSets() {
        String season = truths.season(1, 30);
        String set = truths.stated("0.92", "1");
        for (String who : List.of("sampler", "notifier")) {
            for (String path : List.of(
                    "/api/v1/true-prevalence",
                    "/api/v1/true-prevalence.csv",
                    "/api/v1/true-prevalence.svg",
                    "/api/v1/true-prevalence.png",
                    "/api/v1/true-prevalence.pdf",
                    "/api/v1/true-prevalence.xlsx",
                    "/true-prevalence")) {
                ClassFixture.as(who)
                        .get(path + "?season=" + season + "&performance=" + set)
                        .then()
                        .statusCode(403);
            }
        }
        given().get("/api/v1/true-prevalence?season=" + season).then().statusCode(401);
        for (String who : List.of("liaison", "coordinator", "auditor")) {
            ClassFixture.as(who)
                    .get("/api/v1/true-prevalence?season=" + season + "&performance=" + set)
                    .then()
                    .statusCode(200);
        }
        ClassFixture.as("sampler")
                .get("/api/v1/test-performance")
                .then()
                .statusCode(200)
                .body("items.code", hasItem(set))
                .body("items.find { it.code == '" + set + "' }.study", nullValue())
                .body("items.find { it.code == '" + set + "' }.sensitivity", equalTo(0.92f));
    }

    private static void same(JsonPath answer, String at, String[] expected, int from, String row) {
        List<String> fields = List.of("raw", "truePrevalence", "trueLower", "trueUpper");
        for (int i = 0; i < fields.size(); i++) {
            assertEquals(
                    Double.parseDouble(expected[from + i]),
                    ((Number) answer.get(at + "." + fields.get(i))).doubleValue(),
                    1e-9,
                    fields.get(i) + " of " + row);
        }
    }

    private static String short6(String figure) {
        return new java.math.BigDecimal(figure)
                .setScale(6, java.math.RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    private static void refused(String season, String more, String code, String words) {
        ClassFixture.as("epidemiologist")
                .get("/api/v1/true-prevalence?season=" + season + more)
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("code", equalTo(code))
                .body("errors[0].field", equalTo(more.contains("nonsense") ? "nonsense" : "performance"))
                .body("detail", containsString(words));
    }
}
