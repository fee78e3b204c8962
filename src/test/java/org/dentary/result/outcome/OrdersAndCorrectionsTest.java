package org.dentary.result.outcome;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Locale;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.PlayedSeason;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.Test;

/** What an order waits for, and what a correction takes away. Common practice, no source. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class OrdersAndCorrectionsTest {
    private static final String CWD = "outcomes.find { it.disease == 'CWD' }.";

    @Inject
    FindingsFixture laboratory;

    @Inject
    EntityManager entities;

    @Test
    void tissueSentToTheSameLaboratoryAgainWaitsForItsNextReport() {
        Deer deer = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        laboratory.finds(deer, "SCREENING", "INCONCLUSIVE", null).statusCode(201);
        derived(deer).body(CWD + "derivedOutcome", equalTo("INCONCLUSIVE"));
        String again = UUID.randomUUID().toString();
        sql("insert into submission (id, laboratory, state, dispatched_at, opened_by, opened_at) values ('" + again
                + "', 'T_LAB', 'DISPATCHED', '2025-11-23T15:00:00Z', 'T_LIAISON', '2025-11-23T14:00:00Z')");
        sql("insert into submission_specimen (submission, code, packed_at, packed_by, recorded_at) values ('" + again
                + "', '" + deer.label(Part.NODE_LEFT) + "', '2025-11-23T14:30:00Z', 'T_LIAISON', now())");
        report(deer, "REPEAT", "PRELIMINARY", "2025-11-24").statusCode(201);
        derived(deer)
                .body(CWD + "derivedOutcome", equalTo("PENDING"))
                .body(CWD + "explanation", containsString("ordered and not reported"));
        report(deer, "REPEAT", "FINAL", "2025-11-25").statusCode(201);
        derived(deer).body(CWD + "derivedOutcome", equalTo("NOT_DETECTED"));
    }

    @Test
    void aCorrectionByTheMethodOfAnotherDiseaseTakesTheEarlierWordAway() {
        String method = "M" + UUID.randomUUID().toString().substring(0, 7).toUpperCase(Locale.ROOT);
        sql("insert into disease (code, name, position) values ('" + PlayedSeason.SECOND_DISEASE
                + "', 'Second disease', 903) on conflict do nothing");
        sql("insert into test_method (code, name, position, disease, accepted_tissues) values ('" + method
                + "', 'Other method', 90, '" + PlayedSeason.SECOND_DISEASE
                + "', array['MEDIAL_RETROPHARYNGEAL_NODE'])");
        Deer deer = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        String earlier = laboratory
                .finds(deer, "SCREENING", "NOT_DETECTED", null)
                .statusCode(201)
                .extract()
                .path("id");
        derived(deer).body(CWD + "derivedOutcome", equalTo("NOT_DETECTED"));
        as("liaison")
                .contentType("application/json")
                .body("{\"specimens\":[\"" + deer.label(Part.NODE_LEFT) + "\"],\"method\":\"" + method
                        + "\",\"stage\":\"SCREENING\",\"finding\":\"NOT_DETECTED\",\"status\":\"CORRECTED\","
                        + "\"accession\":\"A-" + deer.kit() + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\","
                        + "\"reportedOn\":\"2025-11-22\",\"corrects\":\"" + earlier + "\"}")
                .put("/api/v1/findings/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        derived(deer).body(CWD + "derivedOutcome", equalTo("NOT_TESTED"));
    }

    private static ValidatableResponse derived(Deer deer) {
        return as("liaison").get("/api/v1/animals/" + deer.kit()).then().statusCode(200);
    }

    private static ValidatableResponse report(Deer deer, String stage, String status, String reportedOn) {
        return as("liaison")
                .contentType("application/json")
                .body("{\"specimens\":[\"" + deer.label(Part.NODE_LEFT) + "\"],\"method\":\"T_SCREEN\",\"stage\":\""
                        + stage
                        + "\",\"finding\":\"NOT_DETECTED\",\"status\":\"" + status + "\",\"accession\":\"B-"
                        + deer.kit() + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-24\",\"reportedOn\":\""
                        + reportedOn + "\"}")
                .put("/api/v1/findings/" + UUID.randomUUID())
                .then();
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
