package org.dentary.setup;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Locale;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Code maps as a set-up list: looked through, posted whole, kept edition by edition. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CodeMapListTest {
    private static final String HEAD = "laboratory,edition,in_force_from,field,code,system,ours\n";

    @Inject
    SeasonFixture season;

    @Inject
    EntityManager entities;

    private String laboratory;

    @BeforeEach
    void setUp() {
        season.ensure();
        laboratory = "T_M" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(Locale.ROOT);
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("insert into laboratory (code, name, position) values ('"
                                + laboratory + "', 'Laboratory " + laboratory + "', 91)")
                        .executeUpdate());
    }

    @Test
    void twoEditionsArePostedAndReadBackAsTheyWereSent() {
        String file = HEAD
                + row("1,2025-09-01,OBX-5,ND,L,NOT_DETECTED")
                + row("1,2025-09-01,OBX-5,RX,,SUSPECT")
                + row("1,2025-09-01,OBX-17,EIA,L,T_SCREEN")
                + row("1,2025-09-01,OBX-23,14,TV," + laboratory)
                + row("2,2026-01-01,OBX-5,ND,L,NOT_DETECTED");
        UUID id = UUID.randomUUID();
        put(id, file).statusCode(201).body("problems", empty()).body("adds", equalTo(5));
        as("liaison").get("/api/v1/code-maps").then().body(mine(), hasSize(0));
        post(id).statusCode(200).body("state", equalTo("POSTED"));
        post(id).statusCode(200);
        as("liaison")
                .get("/api/v1/code-maps")
                .then()
                .body(mine(), hasSize(2))
                .body(mine() + "[0].edition", equalTo(2))
                .body(mine() + "[0].map.inForceFrom", equalTo("2026-01-01"))
                .body(mine() + "[1].map.codes['OBX-5']['ND^L']", equalTo("NOT_DETECTED"))
                .body(mine() + "[1].map.codes['OBX-5']['RX']", equalTo("SUSPECT"))
                .body(mine() + "[1].map.codes['OBX-23']['14^TV']", equalTo(laboratory))
                .body(mine() + "[1].madeBy", equalTo("T_COORDINATOR"));
        put(UUID.randomUUID(), file)
                .statusCode(201)
                .body("problems", empty())
                .body("adds", equalTo(0))
                .body("changes", equalTo(0));
        String page = "/code-maps/" + laboratory + "/1";
        as("auditor")
                .accept("text/html")
                .get(page)
                .then()
                .statusCode(200)
                .body(containsString("Laboratory " + laboratory + ", edition 1"))
                .body(containsString("every one"));
        as("sampler").accept("text/html").get(page).then().statusCode(403);
        as("liaison")
                .accept("text/html")
                .get("/code-maps/" + laboratory + "/9")
                .then()
                .statusCode(404);
    }

    @Test
    void everyFaultIsNamedWithItsLine() {
        put(
                        UUID.randomUUID(),
                        HEAD
                                + row("1,2025-09-01,OBX-5,ND,L,ABSENT")
                                + row("1,2025-09-02,OBX-5,RX,L,SUSPECT")
                                + row("1,2025-09-01,OBX-17,EIA,L,T_NO_METHOD")
                                + row("1,2025-09-01,ZXX-1,EIA,L,T_SCREEN")
                                + row("1,2025-09-01,OBX-5,A^B,L,SUSPECT")
                                + row("3,2026-01-01,OBX-5,ND,L,NOT_DETECTED"))
                .statusCode(201)
                .body(at(2, "ours"), hasItem("WORD_UNKNOWN"))
                .body(at(3, "in_force_from"), hasItem("ROWS_DISAGREE"))
                .body(at(4, "ours"), hasItem("WORD_UNKNOWN"))
                .body(at(5, "field"), hasItem("INVALID_VALUE"))
                .body(at(6, "code"), hasItem("INVALID_VALUE"))
                .body(at(7, "edition"), hasItem("EDITION_NOT_NEXT"));
    }

    @Test
    void anEditionThatIsKeptNeitherChangesNorGrows() {
        UUID first = UUID.randomUUID();
        put(first, HEAD + row("1,2025-09-01,OBX-5,ND,L,NOT_DETECTED"));
        post(first).statusCode(200);
        UUID again = UUID.randomUUID();
        put(again, HEAD + row("1,2025-09-01,OBX-5,ND,L,DETECTED") + row("1,2025-09-01,OBX-5,RX,L,SUSPECT"))
                .body(at(2, "edition"), hasItem("EDITION_WRITTEN"))
                .body(at(3, "edition"), hasItem("EDITION_WRITTEN"))
                .body("problems.message", hasItem(containsString("as edition 2")));
        post(again).statusCode(409).body("code", equalTo("IMPORT_HAS_PROBLEMS"));
        as("liaison")
                .get("/api/v1/code-maps")
                .then()
                .body(mine(), hasSize(1))
                .body(mine() + "[0].map.codes['OBX-5']['ND^L']", equalTo("NOT_DETECTED"));
        as("liaison")
                .contentType("text/csv")
                .body(HEAD)
                .put("/api/v1/set-up-imports/" + UUID.randomUUID() + "?list=code-maps")
                .then()
                .statusCode(403);
    }

    private String row(String cells) {
        return laboratory + "," + cells + "\n";
    }

    private String mine() {
        return "items.findAll { it.laboratory == '" + laboratory + "' }";
    }

    private static String at(int line, String field) {
        return "problems.findAll { it.line == " + line + " && it.field == '" + field + "' }.rule";
    }

    private static ValidatableResponse put(UUID id, String file) {
        return as("coordinator")
                .contentType("text/csv")
                .body(file)
                .put("/api/v1/set-up-imports/" + id + "?list=code-maps")
                .then();
    }

    private static ValidatableResponse post(UUID id) {
        return as("coordinator")
                .post("/api/v1/set-up-imports/" + id + "/posting")
                .then();
    }
}
