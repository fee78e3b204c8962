package org.dentary.custody.checkpoint;

import static io.restassured.RestAssured.given;
import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.ledger.EventDraft;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CheckpointsResourceTest {
    private static final Instant MORNING = Instant.parse("2026-11-14T15:00:00Z");

    @Inject
    SeasonFixture season;

    @Inject
    LedgerStore ledger;

    @BeforeEach
    void ensureSeason() {
        season.ensure();
    }

    @Test
    void makesACheckpointOnceUnderTheClientsId() {
        LedgerEvent event = recorded();
        String path = "/api/v1/custody/checkpoints/" + UUID.randomUUID();
        JsonPath made =
                as("coordinator").put(path).then().statusCode(201).extract().jsonPath();
        JsonPath again =
                as("auditor").put(path).then().statusCode(200).extract().jsonPath();
        assertEquals(made.getString("text"), again.getString("text"));
        as("liaison")
                .get("/api/v1/custody/checkpoints/" + made.getLong("number"))
                .then()
                .statusCode(200)
                .header("Cache-Control", "private, no-store")
                .body("hash", equalTo(made.getString("hash")));
        as("liaison")
                .get(proofPath(made.getLong("number"), event))
                .then()
                .statusCode(200)
                .body("event", equalTo(event.bytes()));
    }

    @Test
    void listsCheckpointsNewestFirstWithALinkToTheNextPage() {
        JsonPath first = make();
        JsonPath second = make();
        Response page = as("auditor").get("/api/v1/custody/checkpoints?limit=1");
        page.then().statusCode(200).body("items", hasSize(1));
        assertEquals(second.getLong("number"), page.jsonPath().getLong("items[0].number"));
        String next = page.header("Link").replaceAll("<(.*)>; rel=\"next\"", "$1");
        as("auditor")
                .get(next)
                .then()
                .statusCode(200)
                .body("items[0].number", equalTo((int) first.getLong("number")))
                .body("items[0].hash", equalTo(second.getString("previous")));
        as("auditor")
                .get("/api/v1/custody/checkpoints?limit=0")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("limit"));
    }

    @Test
    void saysWhyThereIsNoProof() {
        LedgerEvent event = recorded();
        long number = make().getLong("number");
        LedgerEvent unsealed = recorded();
        as("auditor").get(proofPath(number, unsealed)).then().statusCode(404).body("code", equalTo("EVENT_NOT_SEALED"));
        long later = make().getLong("number");
        as("auditor")
                .get(proofPath(later, event))
                .then()
                .statusCode(404)
                .body("code", equalTo("EVENT_UNDER_OTHER_CHECKPOINT"))
                .body("detail", containsString("checkpoint " + number));
        as("auditor")
                .get(proofPath(later + 1_000, event))
                .then()
                .statusCode(404)
                .body("code", equalTo("CHECKPOINT_UNKNOWN"));
        as("auditor")
                .get("/api/v1/custody/checkpoints/" + number + "/proof")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("event"));
        as("auditor")
                .get("/api/v1/custody/checkpoints/" + number + "/proof?event=seven")
                .then()
                .statusCode(422)
                .body("errors[0].message", containsString("seven"));
    }

    /** Everything an outsider needs comes over HTTP and passes the command that knows nothing of the service. */
    @Test
    void handsOutWhatTheCommandChecksAlone() throws IOException, InterruptedException {
        LedgerEvent event = recorded();
        Response export = as("epidemiologist").get("/api/v1/custody/export");
        export.then().statusCode(200).contentType("application/jsonl").header("Cache-Control", "private, no-store");
        String[] lines = export.asString().split("\n");
        String last = JsonPath.from(lines[lines.length - 1]).getString("checkpoint");
        long number = JsonPath.from(last).getLong("number");
        assertEquals(
                "attachment; filename=\"custody-to-checkpoint-" + number + ".jsonl\"",
                export.header("Content-Disposition"));
        Path folder = Files.createTempDirectory(Path.of("target"), "outside");
        Path file = Files.write(folder.resolve("export.jsonl"), export.asByteArray());
        Path proof = Files.writeString(
                folder.resolve("proof.json"),
                as("auditor").get(proofPath(number, event)).asString());
        Path key = Files.writeString(
                folder.resolve("key.pem"),
                given().get("/api/v1/custody/key")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString());
        Process check = new ProcessBuilder(
                        "deploy/verify-custody", "--key", key.toString(), file.toString(), proof.toString())
                .redirectErrorStream(true)
                .start();
        String output = new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, check.waitFor(), output);
        assertTrue(output.contains("Last checkpoint: number " + number), output);
    }

    @Test
    void keepsTheLedgerFromThoseWhoMayNotReadOrSealIt() {
        as("sampler").get("/api/v1/custody/export").then().statusCode(403);
        as("notifier").get("/api/v1/custody/checkpoints").then().statusCode(403);
        as("liaison")
                .put("/api/v1/custody/checkpoints/" + UUID.randomUUID())
                .then()
                .statusCode(403);
        given().get("/api/v1/custody/export").then().statusCode(401);
    }

    private LedgerEvent recorded() {
        EventDraft draft = EventDraft.of(
                "T" + UUID.randomUUID(),
                "COLLECTED",
                MORNING,
                MORNING,
                MORNING,
                ZoneId.of("America/Chicago"),
                "T_SAMPLER");
        return QuarkusTransaction.requiringNew()
                .call(() -> ledger.appendAll(List.of(), List.of(draft)))
                .get(0);
    }

    private static JsonPath make() {
        return as("coordinator")
                .put("/api/v1/custody/checkpoints/" + UUID.randomUUID())
                .then()
                .statusCode(201)
                .extract()
                .jsonPath();
    }

    private static String proofPath(long number, LedgerEvent event) {
        return "/api/v1/custody/checkpoints/" + number + "/proof?event=" + event.id();
    }
}
