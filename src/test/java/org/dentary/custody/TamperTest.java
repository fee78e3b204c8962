package org.dentary.custody;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.platform.DatabaseTestResource;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What was altered behind the service's back, by whoever owns the database, is named; what is left is still told. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class TamperTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    Clock clock;

    private String code;

    @BeforeEach
    void aSpecimenThatMoved() {
        code = fixture.collected(1, clock.instant().minus(Duration.ofHours(2))).get(0);
        json("sampler")
                .body(Map.of(
                        "codes",
                        List.of(code),
                        "kind",
                        "MOVED",
                        "place",
                        "shelf 4",
                        "reason",
                        "the cooler leaked",
                        "occurredAt",
                        clock.instant().toString()))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
    }

    @Test
    void aTextThatIsNotTheOneRecordedIsNotShownAndNamed() throws SQLException {
        chain().body("verified", equalTo(true)).body("events[1].reason", equalTo("the cooler leaked"));
        String event = chain().extract().path("events[1].id");
        String alter = "update ledger_secret set content = %s where name = 'reason' and event = '" + event + "'";
        String base64 = "encode(convert_to('%s', 'UTF8'), 'base64')";
        try {
            for (String content : List.of(String.format(base64, "all was well"), "'all was well'")) {
                owner(String.format(alter, content));
                chain().body("verified", equalTo(false))
                        .body("differences", hasSize(1))
                        .body("differences[0]", containsString("digest of reason kept outside"))
                        .body("events[1].reason", nullValue());
                page().body(not(containsString("all was well"))).body(containsString("digest of reason kept outside"));
            }
        } finally {
            owner(String.format(alter, String.format(base64, "the cooler leaked")));
        }
        chain().body("verified", equalTo(true));
    }

    @Test
    void anEntryThatCannotBeReadIsNamedAndTheOthersStay() throws SQLException {
        String event = chain().extract().path("events[1].id");
        String alter = "update ledger_event set bytes = %s(bytes, 2) where id = '" + event + "'";
        owner("create table kept_bytes as select id, bytes from ledger_event where id = '" + event + "'");
        unguarded(String.format(alter, "substr"));
        try {
            chain().body("verified", equalTo(false)).body("events.kind", hasSize(1));
            page().body(containsString("position 2"));
            as("auditor")
                    .get("/api/v1/specimens/" + code + "/custody.pdf")
                    .then()
                    .statusCode(200);
            json("sampler")
                    .body(Map.of(
                            "codes",
                            List.of(code),
                            "kind",
                            "HOLD_PLACED",
                            "reason",
                            "late",
                            "occurredAt",
                            clock.instant().minus(Duration.ofHours(1)).toString()))
                    .put("/api/v1/custody-events/" + UUID.randomUUID())
                    .then()
                    .statusCode(409)
                    .body("code", equalTo("RECORD_DAMAGED"));
        } finally {
            unguarded("update ledger_event e set bytes = k.bytes from kept_bytes k where k.id = e.id");
            owner("drop table kept_bytes");
        }
        chain().body("verified", equalTo(true)).body("events.kind", hasSize(2));
    }

    @Test
    void anEntryThatLacksWhatEveryEntryHasIsNamed() throws SQLException {
        String event = chain().extract().path("events[1].id");
        owner("create table kept_bytes as select id, bytes from ledger_event where id = '" + event + "'");
        try {
            for (String lost : List.of("kind", "occurredAt", "enteredAt", "receivedAt", "zone", "actor")) {
                unguarded("update ledger_event e set bytes = cast(cast(k.bytes as jsonb) - '" + lost
                        + "' as text) from kept_bytes k where k.id = e.id");
                chain().body("verified", equalTo(false)).body("events.kind", hasSize(1));
            }
        } finally {
            unguarded("update ledger_event e set bytes = k.bytes from kept_bytes k where k.id = e.id");
            owner("drop table kept_bytes");
        }
        chain().body("verified", equalTo(true)).body("events.kind", hasSize(2));
    }

    @Test
    void aChainThatIsGoneIsNamed() throws SQLException {
        unguarded("update ledger_event set chain = 'GONE' where chain = '" + code + "'");
        try {
            chain().body("verified", equalTo(false))
                    .body("events", empty())
                    .body("custodian", equalTo("T_SAMPLER"))
                    .body("differences", hasItem(containsString(code)));
            page();
            as("auditor")
                    .get("/api/v1/specimens/" + code + "/custody.pdf")
                    .then()
                    .statusCode(200);
        } finally {
            unguarded("update ledger_event set chain = '" + code + "' where chain = 'GONE'");
        }
        chain().body("verified", equalTo(true));
    }

    private ValidatableResponse chain() {
        return as("auditor")
                .get("/api/v1/specimens/" + code + "/custody")
                .then()
                .statusCode(200);
    }

    private ValidatableResponse page() {
        return as("auditor").get("/specimens/" + code + "/custody").then().statusCode(200);
    }

    private static void unguarded(String sql) throws SQLException {
        owner("alter table ledger_event disable trigger user", sql, "alter table ledger_event enable trigger user");
    }

    /** By the one role that may: not the service's. */
    private static void owner(String... statements) throws SQLException {
        var config = ConfigProvider.getConfig();
        try (Connection owner = DriverManager.getConnection(
                        config.getValue("quarkus.flyway.jdbc-url", String.class),
                        config.getValue("quarkus.flyway.username", String.class),
                        config.getValue("quarkus.flyway.password", String.class));
                Statement statement = owner.createStatement()) {
            owner.setAutoCommit(false);
            for (String sql : statements) {
                statement.execute(sql);
            }
            owner.commit();
        }
    }
}
