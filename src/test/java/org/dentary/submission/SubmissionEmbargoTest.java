package org.dentary.submission;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where tissue of a suspect goes is told to nobody who may not know that it is one. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SubmissionEmbargoTest {
    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @Inject
    IntakeFixture http;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @ParameterizedTest
    @ValueSource(strings = {"sampler", "epidemiologist"})
    void aConfirmationLeavesNoTraceForWhoMayNotKnow(String account) {
        String code = bench.aNode();
        String first = bench.sent(code);
        bench.receive(first, code).statusCode(201);
        Map<String, String> before = everythingOf(account, code, first, "F-1");

        finding(code, "T_LAB", "SCREENING", "SUSPECT", "S-" + code);
        bench.post(
                        first + "/recall",
                        "{\"codes\":[\"" + code + "\"],\"occurredAt\":\"2025-11-17T07:00:00-06:00\","
                                + "\"reason\":\"to be confirmed elsewhere\"}")
                .statusCode(200);
        assertEquals(before, everythingOf(account, code, first, "F-1"), "taken back");
        String confirming = UUID.randomUUID().toString();
        http.put(
                        "liaison",
                        "/submissions/" + confirming,
                        "{\"laboratory\":\"T_LAB_CONFIRMING\",\"purpose\":\"CONFIRMATORY\"}")
                .statusCode(201);
        assertHidden(account, confirming);
        bench.pack(
                        confirming,
                        code,
                        "{\"packedAt\":\"2025-11-17T08:00:00-06:00\",\"overrideReason\":\"agreed with the laboratory\"}")
                .statusCode(201);
        assertHidden(account, confirming);
        bench.post(
                        confirming + "/dispatch",
                        "{\"occurredAt\":\"2025-11-17T09:00:00-06:00\",\"carrier\":\"T_COURIER\",\"waybill\":\"C-"
                                + code + "\",\"reason\":\"written down on paper\"}")
                .statusCode(200);
        assertHidden(account, confirming);
        http.put(
                        "liaison",
                        "/submissions/" + confirming + "/receipt",
                        "{\"receivedAt\":\"2025-11-18T10:00:00-06:00\",\"codes\":[\"" + code
                                + "\"],\"reason\":\"from the laboratory's list\"}")
                .statusCode(201);
        assertHidden(account, confirming);
        assertEquals(before, everythingOf(account, code, first, "C-" + code));
        assertEquals("true", everythingOf("liaison", code, first, "C-" + code).get("found"), "by its waybill");
        assertEquals(200, as("liaison").get("/api/v1/submissions/" + confirming).statusCode());

        // Not detected after all: there is nothing to keep back, and both submissions are told.
        finding(code, "T_LAB_CONFIRMING", "CONFIRMATORY", "NOT_DETECTED", "N-" + code);
        assertEquals(200, as(account).get("/api/v1/submissions/" + confirming).statusCode());
    }

    /** A result on a tube that was never counted in says that it arrived: a pending animal with it would be a suspect. */
    @ParameterizedTest
    @ValueSource(strings = {"sampler", "epidemiologist"})
    void aResultThatIsWithheldDoesNotTellThatTheTubeArrived(String account) {
        String code = bench.aNode();
        String sent = bench.sent(code);
        Map<String, String> before = everythingOf(account, code, sent, "F-1");
        String path = "/api/v1/result-imports/" + UUID.randomUUID();
        as("liaison")
                .contentType("text/csv")
                .body("specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n" + code
                        + ",I-" + code + ",T_SCREEN,SCREENING,SUSPECT,2025-11-18,2025-11-19\r\n")
                .put(path + "?laboratory=T_LAB")
                .then()
                .statusCode(201);
        as("liaison")
                .contentType("application/json")
                .body("{}")
                .post(path + "/posting")
                .then()
                .statusCode(200);
        assertEquals(before, everythingOf(account, code, sent, "F-1"));
        assertEquals(
                List.of("RECEIVED"),
                as("liaison").get("/api/v1/submissions/" + sent).jsonPath().getList("specimens.receipt"));
    }

    /** That it arrived is told by its result alone, which is withheld; what is counted in later is told of all alike. */
    @Test
    void aSuspicionInWhatWasNeverCountedInLeavesNoTraceThenNorWhenItIsCountedIn() {
        String lost = bench.aNode();
        String told = bench.aNode();
        String id = bench.sent(lost, told);
        Map<String, String> before = everythingOf("epidemiologist", lost, id, "F-1");
        finding(lost, "T_LAB", "SCREENING", "SUSPECT", "S-" + lost);
        assertEquals(before, everythingOf("epidemiologist", lost, id, "F-1"));
        as("liaison").get("/api/v1/submissions/" + id).then().body("received", equalTo(1));
        finding(told, "T_LAB", "SCREENING", "NOT_DETECTED", "S-" + told);
        as("epidemiologist").get("/api/v1/submissions/" + id).then().body("received", equalTo(1));
        http.put(
                        "liaison",
                        "/submissions/" + id + "/receipt",
                        SubmissionFixture.receipt(List.of(lost, told), List.of()))
                .statusCode(201);
        as("epidemiologist")
                .get("/api/v1/submissions/" + id)
                .then()
                .body("specimens.receipt", equalTo(List.of("RECEIVED", "RECEIVED")))
                .body("specimens.receiptSource", equalTo(List.of("SCAN", "SCAN")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"sampler-two"})
    void aSamplerSeesWhatCameFromTheStationsServed(String account) {
        String code = bench.aNode();
        assertTrue(listed("sampler", "/api/v1/submissions/waiting.csv", code));
        assertEquals(false, listed(account, "/api/v1/submissions/waiting.csv", code));
        String id = bench.sent(code);
        assertEquals(200, as("sampler").get("/api/v1/submissions/" + id).statusCode());
        assertHidden(account, id);
    }

    private void assertHidden(String account, String submission) {
        assertEquals(404, as(account).get("/api/v1/submissions/" + submission).statusCode());
        assertEquals(404, as(account).get("/submissions/" + submission).statusCode());
        for (String papers : List.of("csv", "xlsx", "pdf")) {
            assertEquals(
                    404,
                    as(account)
                            .get("/api/v1/submissions/" + submission + "/manifest." + papers)
                            .statusCode());
        }
        assertEquals(false, listed(account, "/api/v1/submissions?limit=1000", submission));
        assertEquals(false, listed(account, "/api/v1/submissions/list.csv", submission));
        assertEquals(false, listed(account, "/api/v1/submissions/overdue.csv", submission));
        assertEquals(false, listed(account, "/submissions", submission));
    }

    private static boolean listed(String account, String path, String what) {
        return as(account).get(path).then().statusCode(200).extract().asString().contains(what);
    }

    /** All that an account can read about one tube: answers by path. */
    private static Map<String, String> everythingOf(String account, String code, String submission, String waybill) {
        Map<String, String> answers = new TreeMap<>();
        for (String path : List.of(
                "/api/v1/submissions/" + submission,
                "/api/v1/submissions/" + submission + "/manifest.csv",
                "/api/v1/codes/" + code)) {
            answers.put(path, as(account).get(path).then().extract().asString());
        }
        answers.put(
                "tag",
                String.valueOf(
                        as(account).get("/api/v1/submissions/" + submission).header("ETag")));
        String head = as(account)
                .get("/api/v1/submissions?limit=1000")
                .jsonPath()
                .getList("items.findAll { it.id == '" + submission + "' }")
                .toString();
        answers.put("list", head);
        for (String part : List.of("waiting", "overdue")) {
            answers.put(
                    part,
                    as(account)
                            .get("/api/v1/submissions/" + part + ".csv")
                            .asString()
                            .lines()
                            .filter(line -> line.contains(code))
                            .toList()
                            .toString());
        }
        answers.put(
                "turnaround",
                as(account)
                        .get("/api/v1/submissions/overview")
                        .jsonPath()
                        .getList("turnaround.findAll { it.laboratory == 'T_LAB_CONFIRMING' }")
                        .toString());
        answers.put(
                "found",
                String.valueOf(as(account).get("/find?q=" + waybill).asString().contains("Submission ")));
        return answers;
    }

    private void finding(String code, String laboratory, String stage, String word, String accession) {
        http.put(
                        "liaison",
                        "/findings/" + UUID.randomUUID(),
                        "{\"specimens\":[\"" + code + "\"],\"method\":\"T_SCREEN\",\"stage\":\"" + stage
                                + "\",\"finding\":\"" + word + "\",\"status\":\"FINAL\",\"accession\":\"" + accession
                                + "\",\"laboratory\":\"" + laboratory
                                + "\",\"testedOn\":\"2025-11-18\",\"reportedOn\":\"2025-11-19\"}")
                .statusCode(201);
    }
}
