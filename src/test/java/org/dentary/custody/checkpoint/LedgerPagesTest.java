package org.dentary.custody.checkpoint;

import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.CustodyFixture;
import org.dentary.ledger.CheckpointService;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class LedgerPagesTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    CheckpointService checkpoints;

    @Inject
    Clock clock;

    @Test
    void sealsWhatIsNotSealedOnceHoweverOftenTheButtonIsPressed() {
        checkpoints.sealAll();
        fixture.collected(2, clock.instant().minusSeconds(60));
        as("auditor").get("/ledger").then().statusCode(200).body(containsString("2 entries not sealed yet"));
        String key = UUID.randomUUID().toString();
        String first = seal("auditor", key);
        assertEquals(first, seal("auditor", key));
        as("auditor")
                .get(first.substring(first.indexOf("/ledger")))
                .then()
                .body(containsString("seals 2 entries"))
                .body(containsString("0 entries not sealed yet"))
                .body(containsString(checkpoints.keyFingerprint()));
        String csv = as("liaison").get("/ledger/checkpoints.csv").asString();
        assertTrue(csv.contains("," + key + ","), csv);
        assertEquals(
                checkpoints.checkpoints(Long.MAX_VALUE, 1_000).size() + 1,
                csv.lines().count());
    }

    @Test
    void isReadByThoseWhoReadTheLedgerAndSealedByFewer() {
        for (String reader : List.of("liaison", "epidemiologist", "coordinator", "auditor")) {
            as(reader).get("/ledger").then().statusCode(200).body(containsString("The whole ledger"));
        }
        for (String other : List.of("sampler", "notifier")) {
            as(other).get("/ledger").then().statusCode(403);
            as(other).get("/ledger/checkpoints.csv").then().statusCode(403);
        }
        for (String reader : List.of("liaison", "epidemiologist", "sampler")) {
            as(reader)
                    .formParam("key", UUID.randomUUID().toString())
                    .post("/ledger/checkpoints")
                    .then()
                    .statusCode(403);
        }
        as("epidemiologist").get("/ledger").then().body(not(containsString("Seal now")));
        as("auditor").formParam("key", "x").post("/ledger/checkpoints").then().statusCode(422);
    }

    private static String seal(String account, String key) {
        return as(account)
                .redirects()
                .follow(false)
                .formParam("key", key)
                .post("/ledger/checkpoints")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
    }
}
