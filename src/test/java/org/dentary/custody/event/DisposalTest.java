package org.dentary.custody.event;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Clock;
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

/** Tissue is destroyed by two people while a result is to come or where something was detected (common practice, no source). */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class DisposalTest {
    @Inject
    FindingsFixture laboratory;

    @Inject
    Clock clock;

    @Test
    void whileAResultIsToComeSomebodyElseStandsByAndIsOnTheChain() {
        Deer one = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        String code = one.label(Part.NODE_LEFT);
        destroys(code, null)
                .statusCode(422)
                .body("errors[0].rule", equalTo("WITNESS_REQUIRED"))
                .body("errors[0].message", containsString(code));
        destroys(code, "sampler").statusCode(422).body("errors[0].rule", equalTo("WITNESS_IS_ACTOR"));
        destroys(code, "Nobody of that name").statusCode(422).body("errors[0].rule", equalTo("PERSON_UNKNOWN"));
        destroys(code, "T_LIAISON").statusCode(201);
        as("auditor")
                .get("/api/v1/specimens/" + code + "/custody")
                .then()
                .body("events.find { it.kind == 'DESTROYED' }.counterparty", equalTo("T_LIAISON"))
                .body("verified", equalTo(true));
        as("auditor")
                .accept("text/html")
                .get("/specimens/" + code + "/custody")
                .then()
                .statusCode(200)
                .body(containsString("Stood by"));
    }

    @Test
    void whereEveryWordIsFinalAndNothingWasDetectedOneIsEnough() {
        Deer one = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        laboratory.finds(one, "SCREENING", "NOT_DETECTED", null).statusCode(201);
        destroys(one.label(Part.NODE_LEFT), null).statusCode(201);
    }

    /** What is withheld reads as a result to come, here too. */
    @Test
    void aSuspectAndAReleasedDetectionNeedTwoAlike() {
        Deer one = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        laboratory.finds(one, "SCREENING", "SUSPECT", null).statusCode(201);
        String before = destroys(one.label(Part.NODE_LEFT), null)
                .statusCode(422)
                .extract()
                .path("errors[0].message");
        laboratory.finds(one, "CONFIRMATORY", "DETECTED", null).statusCode(201);
        laboratory.releases(one).statusCode(201);
        destroys(one.label(Part.NODE_LEFT), null).statusCode(422).body("errors[0].message", equalTo(before));
    }

    @Test
    void onlyADestructionHasAWitness() {
        Deer one = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        Map<String, Object> body = body(one.label(Part.NODE_LEFT), "T_LIAISON");
        body.put("kind", "MOVED");
        body.put("place", "van");
        send(body).statusCode(422).body("errors[0].rule", equalTo("NOT_FOR_THIS_KIND"));
    }

    private ValidatableResponse destroys(String code, String witness) {
        return send(body(code, witness));
    }

    private Map<String, Object> body(String code, String witness) {
        Map<String, Object> body = new HashMap<>(Map.of(
                "codes",
                List.of(code),
                "kind",
                "DESTROYED",
                "occurredAt",
                clock.instant().toString(),
                "reason",
                "incinerated"));
        if (witness != null) {
            body.put("witness", witness);
        }
        return body;
    }

    private static ValidatableResponse send(Map<String, Object> body) {
        return as("sampler")
                .contentType("application/json")
                .body(body)
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then();
    }
}
