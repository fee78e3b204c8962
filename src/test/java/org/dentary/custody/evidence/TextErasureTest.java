package org.dentary.custody.evidence;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.dentary.SeasonFixture;
import org.dentary.custody.CustodyFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Names, signatures and words of custody entries are erased; their digests and the chains stay as they were. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class TextErasureTest {
    private static final String INK = "M10 20L15 22L30 40";

    @Inject
    CustodyFixture fixture;

    @Inject
    TextErasureService texts;

    @Inject
    DataSource database;

    @Inject
    Clock clock;

    private List<String> codes;

    @BeforeEach
    void twoSpecimensAreSignedFor() {
        codes = fixture.collected(2, clock.instant().minus(Duration.ofHours(2)));
        json("sampler")
                .body(Map.of(
                        "codes",
                        codes,
                        "to",
                        SeasonFixture.PARTY,
                        "occurredAt",
                        clock.instant().minus(Duration.ofMinutes(5)).toString(),
                        "reason",
                        "called by a cousin",
                        "signedBy",
                        "R. Okonedo",
                        "signature",
                        INK))
                .put("/api/v1/hand-overs/" + UUID.randomUUID())
                .then()
                .statusCode(201);
    }

    @Test
    void theCoordinatorErasesANameAndInkInEveryEntryOfTheActAndTheChainsStay() throws SQLException {
        JsonPath before = chain(codes.get(0));
        int signed = before.getList("events").size() - 1;
        String event = before.getString("events[" + signed + "].id");
        assertEquals("R. Okonedo", before.getString("events[" + signed + "].signedBy"));
        for (String other : List.of("sampler", "liaison", "epidemiologist", "notifier", "auditor")) {
            erase(other, event, "signedBy", "asked").then().statusCode(403);
        }
        erase("coordinator", event, "sensor", "asked").then().statusCode(422);
        erase("coordinator", event, "signedBy", " ").then().statusCode(422).body("errors[0].field", equalTo("reason"));
        erase("coordinator", event, "waybill", "asked").then().statusCode(404);
        as("coordinator")
                .formParam("field", "")
                .formParam("reason", "asked")
                .post("/specimens/" + codes.get(0) + "/custody/events/" + event + "/erasure")
                .then()
                .statusCode(422)
                .body(containsString("Choose what is erased"));
        erase("coordinator", event, "signature", "they asked us to").then().statusCode(204);
        as("coordinator")
                .redirects()
                .follow(false)
                .formParam("field", "signedBy")
                .formParam("reason", "they asked us to")
                .post("/specimens/" + codes.get(0) + "/custody/events/" + event + "/erasure")
                .then()
                .statusCode(303);
        erase("coordinator", event, "signedBy", "once more").then().statusCode(204);
        for (String code : codes) {
            JsonPath chain = chain(code);
            assertTrue(chain.getBoolean("verified"), "the chain is as it was");
            assertNull(chain.getString("events[" + signed + "].signedBy"));
            assertNull(chain.getString("events[" + signed + "].signature"));
            assertEquals("called by a cousin", chain.getString("events[" + signed + "].reason"), "nothing else went");
            assertEquals(
                    List.of("signature", "signedBy"),
                    chain.getList("events[" + signed + "].erasures.field", String.class));
            as("auditor")
                    .get("/specimens/" + code + "/custody")
                    .then()
                    .body(containsString("The name of who signed was erased on"))
                    .body(containsString("they asked us to"))
                    .body(not(containsString("Okonedo")))
                    .body(not(containsString("Erase it for good")));
        }
        assertEquals(
                before.getString("events[" + signed + "].hash"),
                chain(codes.get(0)).getString("events[" + signed + "].hash"));
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertFalse(
                    statement
                            .executeQuery("select 1 from ledger_secret where event = '" + event
                                    + "' and name in ('signedBy', 'signature')")
                            .next(),
                    "salt and content are gone");
            SQLException refusal =
                    assertThrows(SQLException.class, () -> statement.execute("delete from ledger_secret_erasure"));
            // insufficient_privilege (PostgreSQL, appendix A)
            assertEquals("42501", refusal.getSQLState());
        }
    }

    @Test
    void whatARestoredDatabaseBringsBackIsErasedAgainAtTheNextStart() throws SQLException {
        int signed = chain(codes.get(0)).getList("events").size() - 1;
        String event = chain(codes.get(0)).getString("events[" + signed + "].id");
        erase("coordinator", event, "signedBy", "they asked us to").then().statusCode(204);
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            // As it stands in a backup from before.
            statement.execute("insert into ledger_secret (event, name, salt, content) select event, 'signedBy', salt,"
                    + " content from ledger_secret where event = '" + event + "' and name = 'reason'");
        }
        texts.eraseAgain(null);
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertFalse(statement
                    .executeQuery("select 1 from ledger_secret where event = '" + event + "' and name = 'signedBy'")
                    .next());
        }
    }

    private static io.restassured.response.Response erase(String account, String event, String field, String reason) {
        return as(account).queryParam("reason", reason).delete("/api/v1/custody-events/" + event + "/texts/" + field);
    }

    private static JsonPath chain(String code) {
        return as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }
}
