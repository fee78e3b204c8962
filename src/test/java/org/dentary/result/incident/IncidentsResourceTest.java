package org.dentary.result.incident;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.Test;

/** A first detection from suspicion to release. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class IncidentsResourceTest {
    /** The steps where the unit is known. */
    private static final List<IncidentStep> KINDS = Arrays.stream(IncidentStep.values())
            .filter(step -> step != IncidentStep.FIND_UNIT)
            .toList();

    @Inject
    FindingsFixture laboratory;

    @Inject
    IncidentService service;

    @Inject
    IntakeFixture intake;

    @Test
    void theFirstSuspicionInAUnitOpensOneIncidentThatHoldsEveryReleaseUntilItIsClosed() {
        String unit = laboratory.unitWithoutTheDisease();
        Deer first = laboratory.atTheLaboratory(unit);
        Deer second = laboratory.atTheLaboratory(unit);
        Deer beside = laboratory.atTheLaboratory(unit);
        assertNull(incidentIn(unit));
        laboratory.finds(first, "SCREENING", "SUSPECT", null).statusCode(201);
        String id = incidentIn(unit);
        laboratory.finds(second, "SCREENING", "SUSPECT", null).statusCode(201);
        assertEquals(id, incidentIn(unit), "one incident at a time");
        read(id).body("animals.kit", equalTo(List.of(first.kit(), second.kit())))
                .body("steps", hasSize(KINDS.size()))
                .body("steps.state", everyItem(equalTo("OPEN")))
                .body("sameTable.kit", hasItem(beside.kit()));
        laboratory.finds(first, "CONFIRMATORY", "DETECTED", null).statusCode(201);
        laboratory.releases(first).statusCode(409).body("code", equalTo("INCIDENT_OPEN"));
        close(id, true).statusCode(409).body("detail", containsString("step HOLD_TISSUE is open"));
        for (IncidentStep step : KINDS) {
            settle(id, step, "DONE", "done as the plan says", 0).statusCode(200);
        }
        close(id, true).statusCode(409).body("detail", containsString("not told yet"));
        tell(id, 2, null).statusCode(409).body("code", equalTo("OUT_OF_ORDER"));
        tell(id, 2, "the first could not be reached").statusCode(200);
        for (int place : new int[] {1, 3, 4}) {
            tell(id, place, null).statusCode(200);
            tell(id, place, null).statusCode(200);
        }
        close(id, false).statusCode(409).body("detail", containsString("still suspect or detected"));
        as("liaison")
                .contentType("application/json")
                .body("{\"confirmed\":true,\"note\":\"x\"}")
                .post("/api/v1/incidents/" + id + "/closing")
                .then()
                .statusCode(403);
        close(id, true).statusCode(200).body("head.state", equalTo("CLOSED"));
        close(id, true).statusCode(200);
        settle(id, IncidentStep.TRACE_CARCASS, "OPEN", null, 1).statusCode(409).body("code", equalTo("WRONG_STATE"));
        file(id, "same-table.csv", "kit,station,sampled_on,sampled_by\r\n", beside.kit() + "," + SeasonFixture.STATION);
        file(id, "changes.csv", "at,by,step,was\r\n", ",HOLD_TISSUE,");
        as("sampler").get("/incidents/" + id + "/same-table.csv").then().statusCode(403);
        laboratory.releases(first).statusCode(201);
        laboratory.finds(beside, "SCREENING", "SUSPECT", null).statusCode(201);
        assertEquals(id, incidentIn(unit), "where it is confirmed, no further suspicion opens another");
    }

    private static void file(String id, String name, String head, String holds) {
        String csv = as("auditor")
                .get("/incidents/" + id + "/" + name)
                .then()
                .statusCode(200)
                .header("Cache-Control", containsString("no-store"))
                .extract()
                .asString();
        assertTrue(csv.startsWith(head) && csv.contains(holds), csv);
    }

    @Test
    void aSuspicionThatIsNotConfirmedIsClosedSoAndTheNextOpensAnother() {
        String unit = laboratory.unitWithoutTheDisease();
        Deer first = laboratory.atTheLaboratory(unit);
        laboratory.finds(first, "SCREENING", "SUSPECT", null).statusCode(201);
        String id = incidentIn(unit);
        laboratory.finds(first, "CONFIRMATORY", "NOT_DETECTED", null).statusCode(201);
        for (IncidentStep step : KINDS) {
            settle(id, step, "NOT_POSSIBLE", "not needed: not confirmed", 0).statusCode(200);
        }
        close(id, true).statusCode(409).body("detail", containsString("no animal of it is detected"));
        close(id, false).statusCode(200).body("head.closedAs", equalTo("NOT_CONFIRMED"));
        Deer next = laboratory.atTheLaboratory(unit);
        laboratory.finds(next, "SCREENING", "SUSPECT", null).statusCode(201);
        assertEquals(false, id.equals(incidentIn(unit)));
    }

    @Test
    void whereTheDiseaseIsEstablishedNoneIsOpened() {
        Deer deer = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        laboratory.finds(deer, "SCREENING", "SUSPECT", null).statusCode(201);
        assertNull(incidentIn(SeasonFixture.UNIT));
    }

    @Test
    void aStepHasAnOwnerANoteWhereItMattersAndAHistory() {
        String unit = laboratory.unitWithoutTheDisease();
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", "SUSPECT", null).statusCode(201);
        String id = incidentIn(unit);
        settle(id, IncidentStep.CONFIRM_IDENTITY, "DONE", null, 0)
                .statusCode(422)
                .body("errors[0].field", equalTo("note"));
        settle(id, IncidentStep.TRACE_CARCASS, "NOT_POSSIBLE", null, 0).statusCode(422);
        put(id, IncidentStep.HOLD_TISSUE, "{\"owner\":\"NOBODY\",\"state\":\"DONE\"}", 0)
                .statusCode(404);
        put(id, IncidentStep.HOLD_TISSUE, "{\"state\":\"DONE\"}", 0).statusCode(422);
        settle(id, IncidentStep.HOLD_TISSUE, "OPEN", "asked the laboratory", 0)
                .statusCode(200)
                .header("ETag", "\"1\"");
        settle(id, IncidentStep.HOLD_TISSUE, "OPEN", "asked the laboratory", 0)
                .statusCode(200)
                .header("ETag", "\"1\"");
        settle(id, IncidentStep.HOLD_TISSUE, "DONE", "held", 0).statusCode(412);
        settle(id, IncidentStep.HOLD_TISSUE, "DONE", "held", 1).statusCode(200);
        read(id).body("changes[0].was", containsString("OPEN, T_LIAISON"))
                .body("changes[0].actor", equalTo("T_LIAISON"));
    }

    @Test
    void aRefusedFormKeepsWhatWasTypedAndThePageNamesPeopleAndStations() {
        String unit = laboratory.unitWithoutTheDisease();
        laboratory
                .finds(laboratory.atTheLaboratory(unit), "SCREENING", "SUSPECT", null)
                .statusCode(201);
        String id = incidentIn(unit);
        String typed = as("liaison")
                .formParam("version", "0")
                .formParam("owner", "T_LIAISON")
                .formParam("dueOn", "2026-12-09")
                .formParam("state", "DONE")
                .formParam("note", "")
                .post("/incidents/" + id + "/steps/CONFIRM_IDENTITY")
                .then()
                .statusCode(422)
                .body(containsString("<details open>"))
                .extract()
                .asString();
        assertTrue(typed.contains("value=\"2026-12-09\""), "the day typed is kept");
        assertTrue(typed.contains("<option value=\"DONE\" selected>"), "the state chosen is kept");
        as("liaison")
                .formParam("at", "when")
                .formParam("note", "by telephone")
                .post("/incidents/" + id + "/tellings/1")
                .then()
                .statusCode(422)
                .body(containsString("value=\"by telephone\""));
        settle(id, IncidentStep.HOLD_TISSUE, "OPEN", "asked the laboratory", 0).statusCode(200);
        as("liaison")
                .get("/incidents/" + id)
                .then()
                .body(
                        not(containsString("· T_LIAISON")),
                        containsString("Station 1"),
                        not(containsString("<details open>")));
    }

    @Test
    void onlyThoseWhoMayKnowSeeIncidents() {
        String unit = laboratory.unitWithoutTheDisease();
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", "SUSPECT", null).statusCode(201);
        String id = incidentIn(unit);
        for (String account : List.of("sampler", "epidemiologist")) {
            as(account).get("/api/v1/incidents").then().statusCode(403);
            as(account).get("/api/v1/incidents/" + id).then().statusCode(403);
            as(account).get("/incidents/" + id).then().statusCode(403);
        }
        for (String account : List.of("notifier", "auditor")) {
            as(account).get("/api/v1/incidents/" + id).then().statusCode(200);
            as(account)
                    .contentType("application/json")
                    .body("{\"owner\":\"T_LIAISON\",\"state\":\"DONE\"}")
                    .put("/api/v1/incidents/" + id + "/steps/HOLD_TISSUE")
                    .then()
                    .statusCode(403);
        }
        as("liaison")
                .get("/incidents/list.csv")
                .then()
                .statusCode(200)
                .body(containsString(id + ",CWD," + unit + ",OPEN"));
    }

    @Test
    void theFileHasEveryStepOfEveryIncidentInOneStatement() {
        String unit = laboratory.unitWithoutTheDisease();
        laboratory
                .finds(laboratory.atTheLaboratory(unit), "SCREENING", "SUSPECT", null)
                .statusCode(201);
        String id = incidentIn(unit);
        List<String> steps = read(id).extract().path("steps.kind");
        List<String> rows = as("liaison")
                .get("/incidents/list.csv")
                .asString()
                .lines()
                .filter(line -> line.startsWith(id))
                .map(line -> line.split(",")[5])
                .toList();
        assertEquals(steps, rows);
        int incidents = incidents().size();
        assertTrue(incidents > 0);
        assertEquals(1, service.page(null, 1).items().size(), "the page asks for the first ones alone");
        assertEquals("OPEN", service.page(null, 1).items().get(0).state(), "open ones first");
    }

    /** Common practice, no source: what nobody can place may be the first of any unit, so it is looked into, and the unit first. */
    @Test
    void aSuspicionWhoseUnitIsUnknownOpensAnIncidentThatAsksForTheUnitAndBecomesThatUnits() {
        Deer first = laboratory.ofUnknownUnit();
        Deer second = laboratory.ofUnknownUnit();
        laboratory.finds(first, "SCREENING", "SUSPECT", null).statusCode(201);
        String id = incidentOf(first);
        read(id).body("head.unit", equalTo("UNKNOWN"))
                .body("head.unitName", equalTo("unit unknown"))
                .body("steps.kind", hasItem("FIND_UNIT"))
                .body("steps[0].kind", equalTo("FIND_UNIT"))
                .body("animals.find { it.kit == '" + first.kit() + "' }.unitName", equalTo("unit unknown"));
        laboratory.finds(second, "SCREENING", "SUSPECT", null).statusCode(201);
        assertEquals(id, incidentOf(second), "one incident at a time");
        as("liaison")
                .get("/incidents/" + id)
                .then()
                .statusCode(200)
                .body(containsString("unit unknown"), containsString("Find the unit first"));
        laboratory.finds(first, "CONFIRMATORY", "DETECTED", null).statusCode(201);
        laboratory.releases(first).statusCode(409).body("code", equalTo("INCIDENT_OPEN"));
        String unit = laboratory.unitWithoutTheDisease();
        found(first, unit);
        String own = incidentIn(unit);
        assertEquals(
                false,
                id.equals(own),
                "the other deer's unit is still unknown, so the first got an incident of its own");
        laboratory.releases(first).statusCode(409).body("code", equalTo("INCIDENT_OPEN"));
        String other = laboratory.unitWithoutTheDisease();
        found(second, other);
        read(incidentIn(other)).body("animals.kit", hasItem(second.kit()));
        close(id);
        Deer third = laboratory.ofUnknownUnit();
        laboratory.finds(third, "SCREENING", "SUSPECT", null).statusCode(201);
        String alone = incidentOf(third);
        assertEquals(false, alone.equals(id), "what was closed does not tell of the next one");
        String last = laboratory.unitWithoutTheDisease();
        found(third, last);
        assertEquals(alone, incidentIn(last), "alone in it, so the incident is its unit's");
        read(alone).body("steps.kind", hasItem("FIND_UNIT"));
    }

    /** Closes what is left open, so that the next incident without a unit is another one. */
    private static void close(String id) {
        read(id).extract()
                .jsonPath()
                .<String>getList("steps.kind")
                .forEach(step -> settle(id, IncidentStep.valueOf(step), "DONE", "found and moved to the unit's own", 0)
                        .statusCode(200));
        for (int place : new int[] {1, 2, 3, 4}) {
            tell(id, place, null).statusCode(200);
        }
        close(id, true).statusCode(200);
    }

    private void found(Deer deer, String unit) {
        as("sampler")
                .header(
                        "If-Match",
                        as("sampler").get("/api/v1/animals/" + deer.kit()).header("ETag"))
                .contentType("application/json")
                .body(intake.facts()
                        .put("managementUnit", unit)
                        .put("diedOn", "1971-11-14")
                        .put("reason", "the hunter told"))
                .put("/api/v1/animals/" + deer.kit())
                .then()
                .statusCode(200);
    }

    private static String incidentOf(Deer deer) {
        return incidents().stream()
                .filter(one -> one.get("state").equals("OPEN"))
                .map(one -> (String) one.get("id"))
                .filter(id ->
                        read(id).extract().jsonPath().getList("animals.kit").contains(deer.kit()))
                .findFirst()
                .orElse(null);
    }

    private static List<Map<String, Object>> incidents() {
        return as("liaison")
                .get("/api/v1/incidents")
                .then()
                .statusCode(200)
                .extract()
                .path("items");
    }

    private static String incidentIn(String unit) {
        return incidents().stream()
                .filter(one -> unit.equals(one.get("unit")))
                .map(one -> (String) one.get("id"))
                .findFirst()
                .orElse(null);
    }

    private static ValidatableResponse read(String id) {
        return as("auditor").get("/api/v1/incidents/" + id).then().statusCode(200);
    }

    private static ValidatableResponse settle(String id, IncidentStep step, String state, String note, int version) {
        return put(
                id,
                step,
                "{\"owner\":\"T_LIAISON\",\"state\":\"" + state + "\""
                        + (note == null ? "" : ",\"note\":\"" + note + "\"") + "}",
                version);
    }

    private static ValidatableResponse put(String id, IncidentStep step, String body, int version) {
        return as("liaison")
                .contentType("application/json")
                .header("If-Match", "\"" + version + "\"")
                .body(body)
                .put("/api/v1/incidents/" + id + "/steps/" + step)
                .then();
    }

    private static ValidatableResponse tell(String id, int place, String note) {
        return as("liaison")
                .contentType("application/json")
                .body("{\"toldAt\":\"2025-11-22T10:00:00-06:00\"" + (note == null ? "" : ",\"note\":\"" + note + "\"")
                        + "}")
                .post("/api/v1/incidents/" + id + "/tellings/" + place)
                .then();
    }

    private static ValidatableResponse close(String id, boolean confirmed) {
        return as("coordinator")
                .contentType("application/json")
                .body("{\"confirmed\":" + confirmed + ",\"note\":\"looked at whole\"}")
                .post("/api/v1/incidents/" + id + "/closing")
                .then();
    }
}
