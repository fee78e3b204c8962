package org.dentary.kit;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;
import org.dentary.platform.DatabaseTestResource;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class KitBlocksResourceTest {
    @Inject
    EntityManager entities;

    @Inject
    KitWrites writes;

    private static final String TWO_KITS = """
            {"season": "T2026", "station": "T_STATION_1", "kits": 2, "parts": ["JAW", "NODE_LEFT", "NODE_RIGHT", "STUB"]}
            """;

    @Inject
    SeasonFixture season;

    @BeforeEach
    void season() {
        season.ensure();
    }

    @Test
    void aBlockIsIssuedOnceAndASecondSendingChangesNothing() {
        String path = "/api/v1/kit-blocks/" + UUID.randomUUID();
        List<String> kits = as("coordinator")
                .body(TWO_KITS)
                .put(path)
                .then()
                .statusCode(201)
                .header("ETag", "\"0\"")
                .body("kits", hasSize(2))
                .body("labels", hasSize(8))
                .body("labels.part.subList(0, 4)", contains("JAW", "NODE_LEFT", "NODE_RIGHT", "STUB"))
                .extract()
                .path("kits");
        as("coordinator")
                .body(TWO_KITS.replace("\"kits\": 2", "\"kits\":2"))
                .put(path)
                .then()
                .statusCode(200)
                .body("kits", equalTo(kits));
        as("coordinator")
                .body(TWO_KITS.replace("2,", "3,"))
                .put(path)
                .then()
                .statusCode(409)
                .body("code", equalTo("ALREADY_RECORDED"));
        as("coordinator")
                .header("If-Match", "\"0\"")
                .body(TWO_KITS.replace("2,", "3,"))
                .put(path)
                .then()
                .statusCode(409)
                .body("code", equalTo("BLOCK_FIXED"));
        as("coordinator").get(path).then().statusCode(200).body("kits", equalTo(kits));
        List<String> codes = as("sampler").get(path).path("labels.code");
        codes.forEach(code -> assertEquals(code, LabelCode.parse(code).value()));
    }

    @Test
    void everyFaultOfABlockIsNamedAtOnce() {
        as("coordinator")
                .body("{\"season\": \"NONE\", \"station\": \"NONE\", \"person\": \"NONE\", \"kits\": 1,"
                        + " \"parts\": [\"JAW\", \"JAW\"]}")
                .put("/api/v1/kit-blocks/" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body("errors.field", contains("parts[1]", "season", "station", "person"));
        as("coordinator")
                .body("{\"season\": \"T2025\", \"station\": \"T_STATION_1\", \"kits\": 1, \"parts\": [\"JAW\"]}")
                .put("/api/v1/kit-blocks/" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body("errors.rule", contains("SEASON_CLOSED"));
        as("coordinator")
                .body(TWO_KITS.replace("2,", "5001,"))
                .put("/api/v1/kit-blocks/" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("kits"))
                .body("errors[0].message", containsString("5000"));
        as("coordinator")
                .body(TWO_KITS.replace("STUB", "TAIL"))
                .put("/api/v1/kit-blocks/" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("parts[3]"));
        as("coordinator")
                .body("{}")
                .put("/api/v1/kit-blocks/" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body("errors.field", contains("kits", "parts", "season", "station"));
    }

    @Test
    void onlyTheCoordinatorIssuesAndASamplerSeesTheirOwnStationsBlocks() {
        String id = UUID.randomUUID().toString();
        as("sampler").body(TWO_KITS).put("/api/v1/kit-blocks/" + id).then().statusCode(403);
        as("coordinator").body(TWO_KITS).put("/api/v1/kit-blocks/" + id).then().statusCode(201);
        as("sampler-two").get("/api/v1/kit-blocks/" + id).then().statusCode(403).body("code", equalTo("OTHER_STATION"));
        as("sampler-two").get("/api/v1/kit-blocks").then().body("items.id", not(hasItem(id)));
        as("sampler").get("/api/v1/kit-blocks").then().body("items.id", hasItem(id));
        as("coordinator")
                .get("/api/v1/kit-blocks/" + UUID.randomUUID())
                .then()
                .statusCode(404)
                .body("code", equalTo("BLOCK_UNKNOWN"));
    }

    @Test
    void fiveThousandKitsAreIssuedAtOnceHoweverMany() {
        Statistics statistics =
                entities.getEntityManagerFactory().unwrap(SessionFactory.class).getStatistics();
        statistics.setStatisticsEnabled(true);
        statistics.clear();
        List<String> codes = as("coordinator")
                .body(TWO_KITS.replace("2,", "5000,"))
                .put("/api/v1/kit-blocks/" + UUID.randomUUID())
                .then()
                .statusCode(201)
                .extract()
                .path("labels.code");
        assertEquals(20_000, new HashSet<>(codes).size());
        long statements = statistics.getPrepareStatementCount();
        assertTrue(statements < 60, statements + " statements for 20,000 labels");
    }

    @Test
    void theListGoesOnPageByPageAndLosesNone() {
        String station = SeasonFixture.WESTERN_STATION;
        List<String> made = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            String id = UUID.randomUUID().toString();
            as("coordinator")
                    .body(TWO_KITS.replace(SeasonFixture.STATION, station))
                    .put("/api/v1/kit-blocks/" + id)
                    .then()
                    .statusCode(201);
            made.add(0, id);
        }
        List<String> seen = new ArrayList<>();
        String next = "/api/v1/kit-blocks?season=T2026&limit=2";
        while (next != null) {
            Response page = as("sampler-two").get(next);
            List<String> ids = page.path("items.id");
            assertTrue(ids.size() <= 2, ids.toString());
            seen.addAll(ids);
            String link = page.header("Link");
            next = link == null ? null : link.substring(link.indexOf("/api"), link.indexOf(">"));
        }
        assertEquals(made, seen.stream().filter(made::contains).toList(), "newest first, each once");
        assertEquals(seen.size(), new HashSet<>(seen).size());
        as("sampler-two").get("/api/v1/kit-blocks?limit=0").then().statusCode(422);
        as("sampler-two").get("/api/v1/kit-blocks?season=T2025").then().body("items", empty());
    }

    @Test
    @Transactional
    void aKitThatWasDrawnBeforeIsDrawnAnewAndLeavesTheOthersInOrder() {
        UUID first = UUID.randomUUID();
        UUID second = UUID.randomUUID();
        for (UUID block : List.of(first, second)) {
            writes.block(
                    block,
                    new IssueBlock("T2026", "T_STATION_1", null, 6, List.of(Part.JAW), null),
                    "T_COORDINATOR",
                    Instant.EPOCH);
        }
        long seed = UUID.randomUUID().getLeastSignificantBits();
        List<String> taken = writes.kits(first, 3, new Minting(new Random(seed)));
        List<String> fresh = writes.kits(second, 6, new Minting(new Random(seed)));
        assertEquals(6, new HashSet<>(fresh).size());
        assertTrue(Collections.disjoint(taken, fresh));
        assertEquals(
                fresh,
                entities.createNativeQuery("select code from kit where block = :block order by position, code desc")
                        .setParameter("block", second)
                        .getResultList(),
                "printed in the order drawn, no two in one place");
    }

    static RequestSpecification as(String account) {
        return given().auth()
                .preemptive()
                .basic(account, SeasonFixture.PASSWORD)
                .contentType("application/json");
    }
}
