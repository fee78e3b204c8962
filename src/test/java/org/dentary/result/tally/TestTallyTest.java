package org.dentary.result.tally;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.Test;

/** What counts as a test on an invoice (common practice, no source); each test's reports are of days of their own. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class TestTallyTest {
    @Inject
    FindingsFixture laboratory;

    @Test
    void aPreliminaryReportAndItsFinalOneAreOneTestAndACorrectionIsNone() {
        String day = "2025-11-22";
        Map<String, Object> before = screening(day);
        Deer plain = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        reports(plain, Map.of("status", "PRELIMINARY"), day);
        assertEquals(1, more("tests", before, day));
        UUID last = reports(plain, Map.of(), day);
        assertEquals(1, more("tests", before, day), "the final report is of the same test");
        reports(plain, Map.of("status", "CORRECTED", "corrects", last.toString(), "finding", "INCONCLUSIVE"), day);
        assertEquals(1, more("tests", before, day));
        assertEquals(1, more("corrections", before, day));
        Deer unsuitable = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        reports(unsuitable, Map.of("finding", "UNSUITABLE", "reason", "AUTOLYSED"), day);
        Deer untested = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        reports(untested, Map.of("finding", "NOT_TESTED", "reason", "NO_PAPERWORK"), day);
        assertEquals(2, more("tests", before, day));
        assertEquals(1, more("unsuitable", before, day));
        assertEquals(1, more("notTested", before, day));
        assertEquals(2, more("specimens", before, day));
        assertEquals(2, more("accessions", before, day));
        as("liaison")
                .get("/api/v1/test-counts/tests.csv?laboratory=T_LAB&from=" + day + "&to=" + day)
                .then()
                .statusCode(200)
                .body(containsString("A-" + plain.kit() + ",,T_SCREEN,SCREENING,TEST," + "2025-11-20," + day))
                .body(containsString("A-" + plain.kit() + ",,T_SCREEN,SCREENING,CORRECTION,"))
                .body(containsString("A-" + untested.kit() + ",,T_SCREEN,SCREENING,NOT_TESTED,"))
                .body(not(containsString("INCONCLUSIVE")));
    }

    @Test
    void twoTubesInOneHomogenateAreOneTest() {
        String day = "2025-11-23";
        Map<String, Object> before = screening(day);
        Deer one = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        Deer two = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        reports(one, Map.of("specimens", List.of(one.label(Part.NODE_LEFT), two.label(Part.NODE_LEFT))), day);
        assertEquals(1, more("tests", before, day));
        assertEquals(2, more("specimens", before, day));
    }

    @Test
    void onlyWhoReadsResultsSeesItAndASpanEndsAfterItBegins() {
        for (String account : List.of("sampler", "epidemiologist", "notifier")) {
            as(account).get("/api/v1/test-counts").then().statusCode(403);
            as(account).accept("text/html").get("/results/tests").then().statusCode(403);
        }
        as("auditor")
                .get("/api/v1/test-counts?from=2025-11-22&to=2025-11-21")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("to"));
        as("auditor")
                .get("/api/v1/test-counts?laboratory=NOWHERE")
                .then()
                .statusCode(422)
                .body("errors[0].rule", equalTo("LABORATORY_UNKNOWN"));
        as("liaison")
                .accept("text/html")
                .get("/results/tests?from=2025-11-01&to=2025-11-30")
                .then()
                .statusCode(200)
                .header("Cache-Control", "private, no-store")
                .body(containsString("Each test as CSV"));
        as("liaison").accept("text/html").get("/results").then().body(containsString("/results/tests"));
    }

    private static int more(String what, Map<String, Object> before, String day) {
        return (Integer) screening(day).getOrDefault(what, 0) - (Integer) before.getOrDefault(what, 0);
    }

    private static Map<String, Object> screening(String day) {
        List<Map<String, Object>> found = as("liaison")
                .get("/api/v1/test-counts?laboratory=T_LAB&from=" + day + "&to=" + day)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getList("items.findAll { it.method == 'T_SCREEN' && it.stage == 'SCREENING' }");
        return found.isEmpty() ? Map.of() : found.get(0);
    }

    private static UUID reports(Deer deer, Map<String, Object> more, String day) {
        UUID id = UUID.randomUUID();
        Map<String, Object> body = new HashMap<>(Map.of(
                "specimens", new ArrayList<>(List.of(deer.label(Part.NODE_LEFT))),
                "method", "T_SCREEN",
                "stage", "SCREENING",
                "finding", "NOT_DETECTED",
                "status", "FINAL",
                "accession", "A-" + deer.kit(),
                "laboratory", "T_LAB",
                "testedOn", "2025-11-20",
                "reportedOn", day));
        body.putAll(more);
        ValidatableResponse answer = as("liaison")
                .contentType("application/json")
                .body(body)
                .put("/api/v1/findings/" + id)
                .then();
        answer.statusCode(201);
        return id;
    }
}
