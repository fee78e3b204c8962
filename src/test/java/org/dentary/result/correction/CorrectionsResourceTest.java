package org.dentary.result.correction;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.PlayedSeason;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.Test;

/** Who had a released word that was replaced, and that each of them is told. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CorrectionsResourceTest {
    @Inject
    CorrectionFixture correction;

    @Inject
    FindingsFixture laboratory;

    @Inject
    AgroalDataSource service;

    @Test
    void aCorrectedDetectionIsToldToHunterAgenciesReadersAndWhoeverMadeACutThatCountsIt() {
        Deer deer = correction.releasedDetection();
        correction.tellsHunter(deer, "DETECTED").statusCode(201);
        String before = correction.cut("before " + deer.kit());
        assertNull(CorrectionFixture.newest(deer), "a first release replaces nothing");
        correction.corrects(deer, "NOT_DETECTED", "CORRECTED");
        String after = correction.cut("after " + deer.kit());
        int id = CorrectionFixture.newest(deer);
        read(id).body("head.earlier", equalTo("DETECTED"))
                .body("head.word", equalTo("NOT_DETECTED"))
                .body("head.cause", equalTo("CORRECTION"))
                .body("head.state", equalTo("OPEN"))
                .body("head.told", equalTo(0))
                .body("recipients.findAll { it.kind == 'CONTACT' }.had", equalTo(List.of("DETECTED")))
                .body("recipients.findAll { it.kind == 'AGENCY' }.size()", equalTo(4))
                .body(
                        "recipients.findAll { it.kind == 'ROLE' }.recipient",
                        hasItems("SAMPLER", "LIAISON", "EPIDEMIOLOGIST"))
                .body("recipients.findAll { it.kind == 'CUT' }.recipient", equalTo(List.of(before)))
                .body("recipients.find { it.kind == 'CUT' }.hadBy", containsString("counted in this data cut"));
        assertNotEquals(before, after);
        List<Integer> others = read(id).extract().path("recipients.findAll { it.kind in ['AGENCY','ROLE'] }.id");
        for (int recipient : others) {
            attempt(id, recipient, UUID.randomUUID(), "NO_ANSWER").statusCode(201);
            attempt(id, recipient, UUID.randomUUID(), "SENT").statusCode(201);
        }
        String tries =
                as("notifier").get("/corrections/" + id + "/attempts.csv").asString();
        assertEquals(1 + 2 * others.size(), tries.lines().count(), tries);
        assertTrue(tries.startsWith("recipient,kind,at,channel,result,by,note\r\n"), tries);
        correction.tellsHunter(deer, "NOT_DETECTED").statusCode(201);
        read(id).body("head.state", equalTo("OPEN")).body("head.told", equalTo(8));
        as("epidemiologist")
                .contentType("application/json")
                .header("If-Match", "\"0\"")
                .body("{\"season\":\"" + SeasonFixture.EARLIER_SEASON + "\",\"name\":\"before " + deer.kit()
                        + "\",\"superseded\":\"a detection was put right\"}")
                .put("/api/v1/data-cuts/" + before)
                .then()
                .statusCode(200);
        read(id).body("head.state", equalTo("DONE")).body("head.told", equalTo(9));
    }

    @Test
    void aDetectionThatWasCancelledIsWithdrawnAndALaterWordStandsInItsPlace() {
        Deer deer = correction.releasedDetection();
        correction.corrects(deer, "DETECTED", "CANCELLED");
        int withdrawn = CorrectionFixture.newest(deer);
        read(withdrawn).body("head.word", equalTo("PENDING")).body("head.state", equalTo("OPEN"));
        laboratory.finds(deer, "CONFIRMATORY", "NOT_DETECTED", null).statusCode(201);
        int later = CorrectionFixture.newest(deer);
        assertNotEquals(withdrawn, later);
        read(later).body("head.earlier", equalTo("DETECTED")).body("head.word", equalTo("NOT_DETECTED"));
        read(withdrawn).body("head.state", equalTo("SUPERSEDED"));
        int agency = read(withdrawn).extract().path("recipients.find { it.kind == 'AGENCY' }.id");
        attempt(withdrawn, agency, UUID.randomUUID(), "REACHED").statusCode(409).body("code", equalTo("SUPERSEDED"));
    }

    @Test
    void aSuspicionAfterNotDetectedIsNoCorrectionOfThisOrAnotherDiseaseBeforeItIsReleased() throws SQLException {
        try (Connection connection = service.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("insert into disease (code, name, position) values ('" + PlayedSeason.SECOND_DISEASE
                    + "', 'Second disease', 903) on conflict do nothing");
        }
        String unit = laboratory.unitWithoutTheDisease();
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", "NOT_DETECTED", null).statusCode(201);
        correction.tellsHunter(deer, "NOT_DETECTED").statusCode(404);
        laboratory.finds(deer, "REPEAT", "SUSPECT", null).statusCode(201);
        assertNull(CorrectionFixture.newest(deer));
    }

    @Test
    void aTryIsRecordedOnceByThoseWhoTellAndForThoseWhoHadTheWord() {
        Deer deer = correction.releasedDetection();
        correction.tellsHunter(deer, "DETECTED").statusCode(201);
        correction.corrects(deer, "NOT_DETECTED", "CORRECTED");
        int id = CorrectionFixture.newest(deer);
        int role = read(id).extract().path("recipients.find { it.kind == 'ROLE' }.id");
        int contact = read(id).extract().path("recipients.find { it.kind == 'CONTACT' }.id");
        UUID key = UUID.randomUUID();
        attempt(id, role, key, "REACHED").statusCode(201);
        attempt(id, role, key, "REACHED").statusCode(200).body("attempts", hasSize(1));
        attempt(id, role, key, "SENT").statusCode(409);
        attempt(id, contact, UUID.randomUUID(), "REACHED")
                .statusCode(409)
                .body("code", equalTo("TOLD_BY_NOTIFICATION"));
        attempt(id, 0, UUID.randomUUID(), "REACHED").statusCode(404);
        put("notifier", id, role, UUID.randomUUID(), "REACHED", "2099-01-01T10:00:00Z")
                .statusCode(422)
                .body("errors[0].rule", equalTo("IN_THE_FUTURE"));
        put("auditor", id, role, UUID.randomUUID(), "REACHED", "2026-03-02T10:00:00Z")
                .statusCode(403);
        for (String account : List.of("sampler", "liaison", "epidemiologist")) {
            as(account).get("/api/v1/corrections").then().statusCode(403);
            as(account).get("/corrections/" + id).then().statusCode(403);
        }
        as("auditor")
                .get("/corrections/list.csv?state=OPEN")
                .then()
                .statusCode(200)
                .body(containsString(deer.kit() + ",CWD,DETECTED,NOT_DETECTED,CORRECTION,"));
        correction.corrects(deer, "DETECTED", "CORRECTED");
        read(id).body("head.state", equalTo("OPEN"));
        as("epidemiologist")
                .get("/api/v1/animals/" + deer.kit())
                .then()
                .body("outcomes.find { it.disease == 'CWD' }.outcome", equalTo("PENDING"));
        laboratory.releases(deer).statusCode(201);
        read(id).body("head.state", equalTo("SUPERSEDED"));
        Map<String, Object> page = as("auditor")
                .get("/api/v1/corrections?limit=1")
                .then()
                .header("Link", containsString("rel=\"next\""))
                .extract()
                .path("");
        assertEquals(1, ((List<?>) page.get("items")).size());
    }

    private static ValidatableResponse read(int id) {
        return as("auditor").get("/api/v1/corrections/" + id).then().statusCode(200);
    }

    private static ValidatableResponse attempt(int id, int recipient, UUID key, String result) {
        return put("notifier", id, recipient, key, result, "2026-03-03T10:00:00-06:00");
    }

    private static ValidatableResponse put(String account, int id, int recipient, UUID key, String result, String at) {
        return as(account)
                .contentType("application/json")
                .body("{\"channel\":\"PHONE\",\"result\":\"" + result + "\",\"at\":\"" + at + "\"}")
                .put("/api/v1/corrections/" + id + "/recipients/" + recipient + "/attempts/" + key)
                .then();
    }
}
