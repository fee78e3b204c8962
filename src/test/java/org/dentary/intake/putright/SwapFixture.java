package org.dentary.intake.putright;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;

/** Swaps that people ask for and decide, and kits that they link. */
@ApplicationScoped
public class SwapFixture {
    private final IntakeFixture intake;

    SwapFixture(IntakeFixture intake) {
        this.intake = intake;
    }

    /** The coordinator's question whether what is under a label is the other deer's; its path. */
    public String asked(String code, Deer to) {
        String path = "/specimens/" + code + "/re-attribution/" + UUID.randomUUID();
        asks("coordinator", path, to).statusCode(201);
        return path;
    }

    public ValidatableResponse asks(String account, String path, Deer to) {
        return intake.put(
                account,
                path,
                "{\"kit\":\"" + to.kit() + "\",\"reason\":\"trays exchanged\",\"evidence\":\"photo of the tray\"}");
    }

    public void confirmed(String path) {
        confirms("epidemiologist", path).statusCode(200);
    }

    public ValidatableResponse confirms(String account, String path) {
        return as(account).post("/api/v1" + path + "/confirmation").then();
    }

    public void refused(String path) {
        refuses("epidemiologist", path).statusCode(200);
    }

    public ValidatableResponse refuses(String account, String path) {
        return as(account)
                .contentType("application/json")
                .body("{\"reason\":\"the tags say otherwise\"}")
                .post("/api/v1" + path + "/refusal")
                .then();
    }

    /** One deer under two kits: the second counts. */
    public ValidatableResponse links(Deer duplicate, Deer counted) {
        return intake.put(
                "epidemiologist",
                "/animals/" + duplicate.kit() + "/same-as/" + counted.kit(),
                "{\"reason\":\"head and nodes came on two days\",\"evidence\":\"same tag\"}");
    }

    public void unlinks(Deer duplicate) {
        as("epidemiologist")
                .contentType("application/json")
                .body("{\"reason\":\"the tag was misread\"}")
                .post("/api/v1/animals/" + duplicate.kit() + "/same-as/undoing")
                .then()
                .statusCode(200)
                .body("sameAs", nullValue());
    }

    public static ValidatableResponse story(Deer deer) {
        return as("auditor").get("/api/v1/animals/" + deer.kit()).then().statusCode(200);
    }

    /** Sees to it that a deer's line for CWD has that outcome and exclusion; empty where it counts. */
    public static void stands(Deer deer, String outcome, String exclusion) {
        story(deer)
                .body("outcomes.find { it.disease == 'CWD' }.outcome", equalTo(outcome))
                .body("outcomes.find { it.disease == 'CWD' }.exclusion", equalTo(exclusion));
    }

    /** How many deer of a unit leave at a step from taken to counted. */
    public static int leaving(String unit, String step) {
        JsonPath report = as("epidemiologist")
                .get("/api/v1/prevalence?season=T2025&unit=" + unit)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        return report.getInt("takenToCounted.find { it.step == '" + step + "' }.animals");
    }
}
