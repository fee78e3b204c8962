package org.dentary.result.release;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.Test;

/** A detection is released by somebody who did not record it, whichever kit of the animal it was recorded under. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ReleaseServiceTest {
    @Inject
    FindingsFixture laboratory;

    @Inject
    IntakeFixture intake;

    @Test
    void whoRecordedTheDetectionUnderTheOtherKitDoesNotReleaseIt() {
        Deer counted = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        Deer duplicate = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        intake.put(
                        "coordinator",
                        "/animals/" + duplicate.kit() + "/same-as/" + counted.kit(),
                        "{\"reason\":\"brought twice\",\"evidence\":\"one tag\"}")
                .statusCode(201);
        intake.put(
                        "coordinator",
                        "/findings/" + UUID.randomUUID(),
                        "{\"specimens\":[\"" + duplicate.label(Part.NODE_LEFT)
                                + "\"],\"method\":\"T_CONFIRM\",\"stage\":\"CONFIRMATORY\",\"finding\":\"DETECTED\","
                                + "\"status\":\"FINAL\",\"accession\":\"R-" + duplicate.kit()
                                + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\",\"reportedOn\":\"2025-11-21\"}")
                .statusCode(201);
        release("coordinator", counted).statusCode(403).body("code", equalTo("SECOND_PERSON"));
        release("coordinator", duplicate).statusCode(403).body("code", equalTo("SECOND_PERSON"));
        release("coordinator-two", duplicate).statusCode(201);
        as("epidemiologist").get("/api/v1/animals/" + counted.kit()).then().body("outcome", equalTo("DETECTED"));
    }

    private static ValidatableResponse release(String account, Deer deer) {
        return as(account)
                .contentType("application/json")
                .body("{\"disease\":\"CWD\"}")
                .put("/api/v1/animals/" + deer.kit() + "/release")
                .then();
    }
}
