package org.dentary.custody.evidence;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.dentary.custody.CustodyFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Words that were erased stand in no column of any table any more, and pages and papers say that they were. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class ErasedEverywhereTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    SubmissionFixture submissions;

    @Inject
    TextErasureService texts;

    @Inject
    DataSource database;

    @Inject
    Clock clock;

    private String words;
    private String code;

    @BeforeEach
    void aSpecimen() {
        words = "Cousin Odegard " + UUID.randomUUID();
        code = fixture.collected(1, clock.instant().minus(Duration.ofHours(2))).get(0);
    }

    @Test
    void theReasonAndThePlaceOfAHandOver() throws SQLException {
        json("sampler")
                .body(Map.of(
                        "codes",
                        List.of(code),
                        "kind",
                        "MOVED",
                        "occurredAt",
                        clock.instant().toString(),
                        "place",
                        words + ", his barn"))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        String offer = offered(Map.of("reason", "  " + words + " called  ", "place", words + ", his barn"));
        json("sampler")
                .body(Map.of("reason", "no"))
                .post("/api/v1/hand-overs/" + offer + "/refusal")
                .then()
                .statusCode(200);
        String second = offered(Map.of("reason", words + " again", "place", words + ", his barn"));
        List<String> before = where(words);
        assertTrue(
                before.containsAll(List.of("hand_over", "history", "custody_head", "ledger_secret")),
                before.toString());
        String hash = chain().getString("events[-1].hash");
        erase(event("HANDOVER_OFFERED", 0), "reason");
        erase(event("HANDOVER_OFFERED", 1), "reason");
        erase(event("HANDOVER_OFFERED", 0), "placeText");
        assertEquals(List.of(), where(words));
        for (String one : List.of(offer, second)) {
            as("auditor")
                    .get("/api/v1/hand-overs/" + one)
                    .then()
                    .body("reason", nullValue())
                    .body("place", nullValue())
                    .body("erasures.field", hasItems("placeText", "reason"))
                    .body("erasures[0].byName", notNullValue());
        }
        assertTrue(chain().getBoolean("verified"));
        assertEquals(hash, chain().getString("events[-1].hash"));
        page("/specimens/" + code + "/custody")
                .body(containsString("at a place whose words were erased on"))
                .body(containsString("The reason was erased on"))
                .body(containsString("its digest stands"));
        as("sampler").get("/custody").then().body(containsString("Its place in words was erased on"));
    }

    @Test
    void thePlaceOfABoxWithWhatWasPackedThere() throws SQLException {
        String box = fixture.aBoxLabel();
        json("sampler")
                .body(Map.of("place", words))
                .put("/api/v1/boxes/" + box)
                .then()
                .statusCode(201);
        json("sampler").put("/api/v1/boxes/" + box + "/contents/" + code).then().statusCode(201);
        assertTrue(where(words).containsAll(List.of("box", "custody_head", "ledger_secret")));
        String opened =
                as("auditor").get("/api/v1/specimens/" + box + "/custody").path("events[0].id");
        erase(opened, "placeText");
        assertEquals(List.of(), where(words));
        page("/boxes/" + box).body(containsString("Its words were erased on"));
        page("/specimens/" + code + "/custody").body(containsString("The place in words was erased on"));
        assertTrue(chain().getBoolean("verified"));
    }

    @Test
    void whatWasSaidToBeSeenOfADiscrepancyInAllItsEditions() throws SQLException {
        String id = UUID.randomUUID().toString();
        discrepancy(id, null, words).statusCode(201);
        discrepancy(id, "\"0\"", words + " says so").statusCode(200);
        as("liaison")
                .redirects()
                .follow(false)
                .multiPart("outcome", "MISCOUNT")
                .multiPart("evidence", words + " counted again")
                .multiPart("version", "1")
                .post("/custody/discrepancies/" + id)
                .then()
                .statusCode(303);
        assertEquals(
                words + " counted again",
                chain().getString("events.find { it.kind == 'DISCREPANCY_RESOLVED' }.evidence"));
        assertTrue(where(words).containsAll(List.of("discrepancy", "history", "ledger_secret")));
        erase(event("DISCREPANCY_OPENED", 0), "evidence");
        assertEquals(List.of(), where(words));
        as("liaison")
                .get("/api/v1/discrepancies/" + id)
                .then()
                .body("evidence", nullValue())
                .body("evidenceErased.reason", equalTo("asked to"));
        page("/specimens/" + code + "/custody").body(containsString("(erased on"));
        assertTrue(chain().getBoolean("verified"));
    }

    @Test
    void theCarrierAndTheWaybillOfASubmission() throws SQLException {
        code = submissions.aNode();
        String id = submissions.packed(code);
        submissions
                .post(
                        id + "/dispatch",
                        "{\"occurredAt\":\"" + SubmissionFixture.LEFT_AT + "\",\"carrier\":\"" + words
                                + "\",\"waybill\":\"W " + words
                                + "\",\"shipper\":\"a trained shipper\",\"reason\":\"paper\"}")
                .statusCode(200);
        submissions.receive(id, code).statusCode(201);
        assertTrue(where(words).containsAll(List.of("submission", "history", "ledger_secret")));
        erase(event("SHIPPED", 0), "carrier");
        erase(event("SHIPPED", 0), "waybill");
        assertEquals(List.of(), where(words));
        assertEquals("(erased)", submissions.view(id).getString("carrier"));
        assertTrue(chain().getBoolean("verified"));
    }

    @Test
    void whatARestoredDatabaseBringsBackWithItsCopies() throws SQLException {
        String offer = offered(Map.of("reason", words));
        String event = event("HANDOVER_OFFERED", 0);
        String kept;
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "select content from ledger_secret where name = 'reason' and event = '" + event + "'")) {
            assertTrue(row.next());
            kept = row.getString(1);
        }
        erase(event, "reason");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            // As they stand in a backup from before.
            statement.execute("insert into ledger_secret (event, name, salt, content) values ('" + event
                    + "', 'reason', 'AAAA', '" + kept + "')");
            statement.execute("update hand_over set reason = '" + words + "' where id = '" + offer + "'");
        }
        assertFalse(where(words).isEmpty());
        texts.eraseAgain(null);
        assertEquals(List.of(), where(words));
    }

    @Test
    void nothingElseOfHistoryIsEmptiedThroughThatDoor() throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            SQLException refusal = assertThrows(
                    SQLException.class,
                    () -> statement.execute("select erase_from_history('line', 'outcome', null, null)"));
            // insufficient_privilege (PostgreSQL, appendix A)
            assertEquals("42501", refusal.getSQLState());
        }
    }

    private String offered(Map<String, Object> more) {
        String id = UUID.randomUUID().toString();
        Map<String, Object> offer = new java.util.HashMap<>(more);
        offer.put("codes", List.of(code));
        offer.put("to", "T_LIAISON");
        offer.put("occurredAt", clock.instant().toString());
        json("sampler").body(offer).put("/api/v1/hand-overs/" + id).then().statusCode(201);
        return id;
    }

    private ValidatableResponse discrepancy(String id, String ifMatch, String evidence) {
        var request = json("liaison");
        if (ifMatch != null) {
            request.header("If-Match", ifMatch);
        }
        return request.body(Map.of(
                        "code",
                        code,
                        "kind",
                        "OTHER",
                        "owner",
                        "T_LIAISON",
                        "dueOn",
                        "2026-12-24",
                        "evidence",
                        evidence))
                .put("/api/v1/discrepancies/" + id)
                .then();
    }

    private void erase(String event, String field) {
        as("coordinator")
                .queryParam("reason", "asked to")
                .delete("/api/v1/custody-events/" + event + "/texts/" + field)
                .then()
                .statusCode(204);
    }

    private ValidatableResponse page(String path) {
        return as("auditor").get(path).then().statusCode(200).body(not(containsString(words)));
    }

    private JsonPath chain() {
        return as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }

    private String event(String kind, int which) {
        return chain().getString("events.findAll { it.kind == '" + kind + "' }[" + which + "].id");
    }

    /** The tables any of whose columns holds the words, plainly or as the ledger keeps texts. */
    private List<String> where(String words) throws SQLException {
        List<String> tables = new ArrayList<>();
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            List<String> all = new ArrayList<>();
            try (ResultSet row = statement.executeQuery("select table_schema || '.' || table_name"
                    + " from information_schema.tables where table_type = 'BASE TABLE'"
                    + " and table_schema in ('public', 'vault') and has_table_privilege(table_schema || '.' || table_name,"
                    + " 'select') order by 1")) {
                while (row.next()) {
                    all.add(row.getString(1));
                }
            }
            assertTrue(all.contains("public.history") && all.contains("vault.contact"), all.toString());
            for (String table : all) {
                String text = table.equals("public.ledger_secret")
                        ? "convert_from(decode(t.content, 'base64'), 'UTF8')"
                        : "cast(t as text)";
                try (ResultSet row = statement.executeQuery("select exists (select 1 from " + table + " t where strpos("
                        + text + ", '" + words + "') > 0)")) {
                    row.next();
                    if (row.getBoolean(1)) {
                        tables.add(table.substring(table.indexOf('.') + 1));
                    }
                }
            }
        }
        return tables;
    }
}
