package org.dentary.result.correction;

import static org.dentary.intake.IntakeFixture.as;

import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.result.FindingsFixture;

/** A released first detection that agencies, its hunter, readers and a data cut have, and the laboratory's correction. */
@ApplicationScoped
public class CorrectionFixture {
    private final FindingsFixture laboratory;

    CorrectionFixture(FindingsFixture laboratory) {
        this.laboratory = laboratory;
    }

    /** A deer in a new unit whose detection is released after the incident's list was told. */
    public Deer releasedDetection() {
        String unit = laboratory.unitWithoutTheDisease();
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", "SUSPECT", null).statusCode(201);
        laboratory.finds(deer, "CONFIRMATORY", "DETECTED", null).statusCode(201);
        String id = incidentIn(unit);
        Map<String, Object> incident =
                as("liaison").get("/api/v1/incidents/" + id).then().extract().path("");
        for (Map<String, Object> step : list(incident, "steps")) {
            as("liaison")
                    .contentType("application/json")
                    .header("If-Match", "\"0\"")
                    .body("{\"owner\":\"T_LIAISON\",\"state\":\"DONE\",\"note\":\"done as the plan says\"}")
                    .put("/api/v1/incidents/" + id + "/steps/" + step.get("kind"))
                    .then()
                    .statusCode(200);
        }
        for (Map<String, Object> telling : list(incident, "tellings")) {
            as("liaison")
                    .contentType("application/json")
                    .body("{\"toldAt\":\"2025-11-22T10:00:00-06:00\"}")
                    .post("/api/v1/incidents/" + id + "/tellings/" + telling.get("position"))
                    .then()
                    .statusCode(200);
        }
        as("coordinator")
                .contentType("application/json")
                .body("{\"confirmed\":true,\"note\":\"looked at whole\"}")
                .post("/api/v1/incidents/" + id + "/closing")
                .then()
                .statusCode(200);
        laboratory.releases(deer).statusCode(201);
        return deer;
    }

    /** The incident of a unit, or null. */
    public static String incidentIn(String unit) {
        List<Map<String, Object>> all =
                as("liaison").get("/api/v1/incidents").then().extract().path("items");
        return all.stream()
                .filter(one -> unit.equals(one.get("unit")))
                .map(one -> (String) one.get("id"))
                .findFirst()
                .orElse(null);
    }

    /** The hunter is told on the telephone. */
    public ValidatableResponse tellsHunter(Deer deer, String outcome) {
        return as("notifier")
                .contentType("application/json")
                .body("{\"outcome\":\"" + outcome
                        + "\",\"channel\":\"PHONE\",\"result\":\"REACHED\",\"at\":\"2026-03-02T10:00:00-06:00\"}")
                .put("/api/v1/notifications/" + deer.kit() + "/CWD/attempts/" + UUID.randomUUID())
                .then();
    }

    /** A data cut of the test's season; its id. */
    public String cut(String name) {
        String id = UUID.randomUUID().toString();
        as("epidemiologist")
                .contentType("application/json")
                .body("{\"season\":\"" + SeasonFixture.EARLIER_SEASON + "\",\"name\":\"" + name + "\"}")
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(201);
        return id;
    }

    /** The laboratory puts its confirmatory finding right. */
    public void corrects(Deer deer, String word, String status) {
        List<Map<String, Object>> findings = as("liaison")
                .get("/api/v1/animals/" + deer.kit() + "/findings")
                .then()
                .extract()
                .path("items");
        String earlier = findings.stream()
                .filter(one -> one.get("stage").equals("CONFIRMATORY") && one.get("correctedBy") == null)
                .map(one -> (String) one.get("id"))
                .findFirst()
                .orElseThrow();
        as("liaison")
                .contentType("application/json")
                .body("{\"specimens\":[\"" + deer.label(Part.NODE_LEFT)
                        + "\"],\"method\":\"T_CONFIRM\",\"stage\":\"CONFIRMATORY\",\"finding\":\"" + word
                        + "\",\"status\":\"" + status + "\",\"accession\":\"A-" + deer.kit()
                        + "-CONFIRMATORY\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-24\",\"reportedOn\":"
                        + "\"2025-11-25\",\"corrects\":\"" + earlier + "\"}")
                .put("/api/v1/findings/" + UUID.randomUUID())
                .then()
                .statusCode(201);
    }

    /** The newest correction of the animal, or null. */
    public static Integer newest(Deer deer) {
        List<Map<String, Object>> all = as("auditor")
                .get("/api/v1/corrections?limit=1000")
                .then()
                .extract()
                .path("items");
        return all.stream()
                .filter(one -> one.get("kit").equals(deer.kit()))
                .map(one -> (Integer) one.get("id"))
                .findFirst()
                .orElse(null);
    }

    @SuppressWarnings("unchecked")
    private static List<Map<String, Object>> list(Map<String, Object> of, String what) {
        return (List<Map<String, Object>>) of.get(what);
    }
}
