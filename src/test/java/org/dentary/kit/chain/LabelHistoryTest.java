package org.dentary.kit.chain;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.Http;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Labels on the ledger: a block's chain begins with their issue and tells every voiding and reprint. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LabelHistoryTest {
    @Inject
    SeasonFixture season;

    @Inject
    IntakeFixture intake;

    @Inject
    LedgerStore ledger;

    @TempDir
    Path folder;

    private UUID block;
    private List<String> codes;

    @BeforeEach
    void aBlock() {
        season.ensure();
        block = UUID.randomUUID();
        codes = json("coordinator")
                .body("""
                        {"season": "T2026", "station": "T_STATION_1", "person": "T_SAMPLER", "kits": 3,
                         "parts": ["NODE_LEFT", "JAW"], "copies": 2}
                        """)
                .put("/api/v1/kit-blocks/" + block)
                .then()
                .statusCode(201)
                .extract()
                .path("labels.code");
    }

    @Test
    void theIssueNamesEveryCodeByADigestThatAnybodyCanMake() throws IOException, InterruptedException {
        LedgerEvent issued = ledger.chain(block.toString()).get(0);
        JsonNode fields = issued.content().path("fields");
        assertEquals("LABEL_ISSUED", issued.kind());
        assertEquals(SeasonFixture.STATION, issued.content().path("place").asText());
        assertEquals("T_SAMPLER", issued.content().path("counterparty").asText());
        assertEquals(6, fields.path("labels").asInt());
        Path csv = folder.resolve("labels.csv");
        Files.write(
                csv,
                as("coordinator")
                        .get("/api/v1/kit-blocks/" + block + "/labels.csv")
                        .asByteArray());
        // What docs/custody-verification.md says, by programs that are not ours.
        assertEquals(
                fields.path("codesSha256").asText(),
                shell("tail -n +2 " + csv + " | cut -d, -f3 | tr -d '\\r' | sha256sum | cut -c1-64"));
    }

    @Test
    void voidingAndReprintsFollowTheIssueAndTheExportHoldsThem() throws IOException, InterruptedException {
        String label = codes.get(0);
        String reprint = UUID.randomUUID().toString();
        json("sampler")
                .body("{\"stock\": \"LETTER_30\", \"reason\": \"smeared in the rain\"}")
                .put("/api/v1/labels/" + label + "/reprints/" + reprint)
                .then()
                .statusCode(201);
        for (int status : List.of(201, 200)) {
            json("coordinator")
                    .body("{\"reason\": \"torn\"}")
                    .put("/api/v1/labels/" + label + "/voiding")
                    .then()
                    .statusCode(status);
        }
        JsonPath history = history(label);
        assertEquals(List.of("LABEL_ISSUED", "LABEL_REPRINTED", "LABEL_VOIDED"), history.getList("events.kind"));
        assertEquals("smeared in the rain", history.getString("events[1].reason"));
        assertEquals(2, history.getInt("events[1].printNumber"));
        assertEquals("torn", history.getString("events[2].reason"));
        assertEquals("Test sampler", history.getString("events[0].personName"));
        assertEquals("Test coordinator", history.getString("events[2].actorName"));
        assertTrue(history.getBoolean("verified"));
        // Another label of the block was issued with it and nothing else happened to it.
        assertEquals(List.of("LABEL_ISSUED"), history(codes.get(1)).getList("events.kind"));
        as("coordinator")
                .get("/kits/labels/" + label)
                .then()
                .statusCode(200)
                .body(containsString("6 labels in all"))
                .body(containsString("print 2: smeared in the rain"))
                .body(containsString("Voided: torn"));
        json("auditor").body("{}").put("/api/v1/custody/checkpoints/" + UUID.randomUUID());
        Path export = folder.resolve("export.jsonl");
        Files.write(export, as("auditor").get("/api/v1/custody/export").asByteArray());
        String verdict = shell("deploy/verify-custody " + export + " && grep -c '" + block + "' " + export);
        assertTrue(verdict.startsWith("As recorded: "), verdict);
        assertTrue(verdict.endsWith("\n3"), verdict);
    }

    @Test
    void aCodeTakenAwayBehindItsBackIsNamed() throws SQLException {
        String gone = codes.get(5);
        try (Connection connection = owner();
                Statement statement = connection.createStatement()) {
            statement.execute("delete from label where code = '" + gone + "'");
        }
        JsonPath history = history(codes.get(0));
        assertEquals(false, history.getBoolean("verified"));
        assertTrue(history.getString("differences[0]").contains("are not those that were issued"));
    }

    @Test
    void aSpecimensPageAndPaperBeginWithItsLabel() throws IOException, InterruptedException {
        Deer deer = intake.aDeer();
        ObjectNode body = intake.facts();
        body.putArray("specimens").add(intake.node(deer));
        intake.take(deer, body);
        String label = deer.label(Part.NODE_LEFT);
        String home = history(label).getString("block");
        int labels = history(label).getInt("events[0].labels");
        as("auditor")
                .get("/specimens/" + label + "/custody")
                .then()
                .statusCode(200)
                .body(containsString("Its label"))
                .body(containsString("Issued by Test coordinator to"))
                .body(containsString("with " + labels + " labels in all"));
        Path pdf = folder.resolve("dossier.pdf");
        Files.write(
                pdf,
                as("auditor").get("/api/v1/specimens/" + label + "/custody.pdf").asByteArray());
        String words = shell("pdftotext -layout " + pdf + " -");
        assertTrue(words.contains("Its label") && words.contains("with " + labels + " labels in all"), words);
        assertTrue(words.contains(ledger.chain(home).get(0).hash()), words);
    }

    @Test
    void aBlockOfTwelveThousandLabelsIsOneEvent() {
        UUID large = UUID.randomUUID();
        json("coordinator")
                .body("""
                        {"season": "T2026", "station": "T_STATION_1", "kits": 3000,
                         "parts": ["JAW", "NODE_LEFT", "NODE_RIGHT", "FORM"]}
                        """)
                .put("/api/v1/kit-blocks/" + large)
                .then()
                .statusCode(201)
                .body("labels", hasSize(12_000));
        List<LedgerEvent> chain = ledger.chain(large.toString());
        assertEquals(1, chain.size());
        assertTrue(chain.get(0).bytes().length() < 1_000, chain.get(0).bytes());
        String first =
                as("coordinator").get("/api/v1/kit-blocks/" + large).jsonPath().getString("labels[0].code");
        as("auditor")
                .get("/api/v1/labels/" + first + "/history")
                .then()
                .body("verified", equalTo(true))
                .body("events[0].labels", equalTo(12_000));
    }

    private static JsonPath history(String label) {
        return as("auditor")
                .get("/api/v1/labels/" + label + "/history")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private static String shell(String script) throws IOException, InterruptedException {
        Process process =
                new ProcessBuilder("sh", "-c", script).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return out.strip();
    }

    private static Connection owner() throws SQLException {
        var config = ConfigProvider.getConfig();
        return DriverManager.getConnection(
                config.getValue("quarkus.flyway.jdbc-url", String.class),
                config.getValue("quarkus.flyway.username", String.class),
                config.getValue("quarkus.flyway.password", String.class));
    }

    private static RequestSpecification as(String account) {
        return Http.as(account);
    }

    private static RequestSpecification json(String account) {
        return Http.json(account);
    }
}
