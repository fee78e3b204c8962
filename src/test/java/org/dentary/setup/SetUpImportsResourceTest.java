package org.dentary.setup;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.dentary.SeasonFixture;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SetUpImportsResourceTest {
    private static final AtomicInteger NEXT = new AtomicInteger(1);

    @Inject
    SeasonFixture season;

    @Inject
    PlanService plan;

    @Inject
    PeopleService people;

    @Inject
    EntityManager entities;

    private final String mark = "I" + NEXT.getAndIncrement() + "_";

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void aFileIsLookedThroughThenPostedWhole() {
        UUID id = UUID.randomUUID();
        String file = "code,name,unit,time_zone\n" + mark + "A,Gate A,T_UNIT_1,America/Chicago\n" + mark
                + "B,Gate B,,America/Denver\n";
        put(id, "stations", file)
                .statusCode(201)
                .header("ETag", "\"0\"")
                .body("state", equalTo("PREVIEWED"))
                .body("list", equalTo("stations"))
                .body("rows", equalTo(2))
                .body("adds", equalTo(2))
                .body("problems", empty());
        assertFalse(plan.stations().stream().anyMatch(s -> s.code().equals(mark + "A")), "a dry run writes nothing");
        put(id, "stations", file).statusCode(200).body("state", equalTo("PREVIEWED"));
        post(id).statusCode(200).body("state", equalTo("POSTED")).body("adds", equalTo(2));
        assertEquals("T_NORTH", plan.station(mark + "A").region());
        post(id).statusCode(200).body("state", equalTo("POSTED")).body("adds", equalTo(2));
        put(id, "stations", file)
                .statusCode(200)
                .body("state", equalTo("POSTED"))
                .header("ETag", "\"1\"");
        UUID again = UUID.randomUUID();
        put(again, "stations", file).statusCode(201).body("adds", equalTo(0)).body("changes", equalTo(0));
        int before = historyOfStations();
        post(again).statusCode(200);
        assertEquals(before, historyOfStations(), "the same file twice changes nothing");
    }

    @Test
    void aFileWithAProblemIsPostedNotAtAll() {
        UUID id = UUID.randomUUID();
        put(
                        id,
                        "stations",
                        "code,name,unit,time_zone\n" + mark + "A,Gate A,T_UNIT_1,America/Chicago\n" + mark
                                + "B,Gate B,NO_UNIT,America/Denver\n")
                .statusCode(201)
                .body("problems", hasSize(1))
                .body("problems[0].line", equalTo(3))
                .body("problems[0].field", equalTo("unit"))
                .body("problems[0].rule", equalTo("INVALID_VALUE"))
                .body("problems[0].message", containsString("management-units"));
        post(id).statusCode(409)
                .contentType("application/problem+json")
                .body("code", equalTo("IMPORT_HAS_PROBLEMS"))
                .body("errors[0].field", equalTo("line 3: unit"));
        assertFalse(plan.stations().stream().anyMatch(s -> s.code().equals(mark + "A")));
    }

    @Test
    void anotherFileUnderTheSameIdNeedsTheVersionSeen() {
        UUID id = UUID.randomUUID();
        put(id, "diseases", "code,name\n" + mark + "D,One\n").statusCode(201);
        put(id, "diseases", "code,name\n" + mark + "D,Two\n").statusCode(409).body("code", equalTo("ALREADY_RECORDED"));
        coordinator()
                .contentType("text/csv")
                .header("If-Match", "\"0\"")
                .body("code,name\n" + mark + "D,Two\n")
                .put("/api/v1/set-up-imports/" + id + "?list=diseases")
                .then()
                .statusCode(200);
        post(id).statusCode(200);
        assertTrue(plan.diseases().stream().anyMatch(d -> d.name().equals("Two")));
    }

    @Test
    void whatCannotBeReadIsAProblem() {
        put(UUID.randomUUID(), "horses", "code\nA\n").statusCode(404).body("code", equalTo("LIST_UNKNOWN"));
        put(UUID.randomUUID(), "diseases", "code;name\nA;a\n").statusCode(422).body("code", equalTo("SEPARATOR"));
        coordinator()
                .contentType("text/csv")
                .body(new byte[] {'c', 'o', (byte) 0xE4})
                .put("/api/v1/set-up-imports/" + UUID.randomUUID() + "?list=diseases")
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("code", equalTo("CHARACTER_SET"));
        coordinator()
                .contentType("application/pdf")
                .body(new byte[] {1})
                .put("/api/v1/set-up-imports/" + UUID.randomUUID() + "?list=diseases")
                .then()
                .statusCode(415)
                .contentType("application/problem+json");
        post(UUID.randomUUID()).statusCode(404).body("code", equalTo("IMPORT_UNKNOWN"));
    }

    @Test
    void onlyACoordinatorSetsUp() {
        for (String who : List.of("sampler", "liaison", "epidemiologist", "notifier", "auditor")) {
            given().auth()
                    .preemptive()
                    .basic(who, SeasonFixture.PASSWORD)
                    .contentType("text/csv")
                    .body("code,name\nA,a\n")
                    .put("/api/v1/set-up-imports/" + UUID.randomUUID() + "?list=diseases")
                    .then()
                    .statusCode(403);
        }
    }

    @Test
    void everyListCanBeWrittenAndReadBack() {
        load("diseases", "code,name\n" + mark + "D,Disease\n");
        load("species", "code,name,key_reviewed\n" + mark + "SP,Species,yes\n");
        load("regions", "code,name\n" + mark + "R,Region\n");
        int year = 1901 + NEXT.get() * 2;
        load(
                "seasons",
                "code,name,starts_on,ends_on\n" + mark + "SE,Season," + year + "-06-01," + (year + 1) + "-05-31\n");
        load("management-units", "code,name,region\n" + mark + "U,Unit," + mark + "R\n");
        coordinatorFile(
                "management-unit-boundaries",
                "application/geo+json",
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"code\":\"" + mark
                        + "U\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[100,0],[101,0],[101,1],[100,0]]]}}]}");
        load("stations", "code,name,unit,time_zone\n" + mark + "ST,Station," + mark + "U,America/Denver\n");
        load("laboratories", "code,name,address,turnaround_days\n" + mark + "L,Laboratory,\"1 Way, Town\",9\n");
        load("test-methods", "code,name,disease,accepted_tissues\n" + mark + "M,Method," + mark + "D,OBEX TONSIL\n");
        load(
                "laboratory-acceptance",
                "laboratory,method,tissue,preservation,max_days,in_force_from\n" + mark + "L," + mark
                        + "M,OBEX,FROZEN,30,2001-01-01\n");
        load("persons", "code,name,active\n" + mark + "P,Person,yes\n" + mark + "Q,Other,\n");
        load("parties", "code,name\n" + mark + "O,Party\n");
        load(
                "stores",
                "code,name,station,keeper,people\n" + mark + "F,Store," + mark + "ST," + mark + "P," + mark
                        + "Q T_LIAISON\n");
        String user = mark.toLowerCase(java.util.Locale.ROOT) + "user";
        load("accounts", "username,person,role,stations,password\n" + user + "," + mark + "P,AUDITOR,,correct horse\n");
        load("plan-settings", "name,value,season,region,unit\nDESIGN_PREVALENCE,0.03,,," + mark + "U\n");
        load(
                "cautions",
                "code,version,disease,hazard,text,authority\n" + mark + "C,1," + mark
                        + "D,PACKING,\"Mind, the step\",Someone\n");

        assertEquals(List.of("OBEX", "TONSIL"), plan.method(mark + "M").acceptedTissues());
        assertEquals(mark + "R", plan.station(mark + "ST").region());
        assertTrue(plan.boundaries().stream().anyMatch(b -> b.unit().equals(mark + "U")));
        assertEquals(
                30,
                plan.acceptance(mark + "L", java.time.LocalDate.of(2002, 1, 1))
                        .get(0)
                        .maxDays());
        assertTrue(people.mayUse(mark + "F", mark + "Q"));
        load("stores", "code,name,station,keeper,people\n" + mark + "F,Store," + mark + "ST," + mark + "P,T_LIAISON\n");
        assertFalse(people.mayUse(mark + "F", mark + "Q"), "who is no longer named may no longer use it");
        given().auth()
                .preemptive()
                .basic(user, "correct horse")
                .get("/api/v1/seasons")
                .then()
                .statusCode(200);
        load("accounts", "username,role\n" + user + ",LIAISON\n");
        given().auth()
                .preemptive()
                .basic(user, "correct horse")
                .get("/api/v1/seasons")
                .then()
                .statusCode(200);
        load("accounts", "username,role,active\n" + user + ",LIAISON,no\n");
        given().auth()
                .preemptive()
                .basic(user, "correct horse")
                .get("/api/v1/seasons")
                .then()
                .statusCode(401);
        assertEquals(
                "0.03",
                plan.settings().text(org.dentary.plan.setting.PlanSetting.DESIGN_PREVALENCE, null, null, mark + "U"));
    }

    @Test
    void passwordsAreNeverKeptAsTyped() {
        UUID id = UUID.randomUUID();
        String user = mark.toLowerCase(java.util.Locale.ROOT) + "user";
        put(id, "accounts", "username,role,password\n" + user + ",AUDITOR,open sesame now\n")
                .statusCode(201)
                .body("problems", empty());
        String kept = (String) entities.createNativeQuery("select content from set_up_import where id = :id")
                .setParameter("id", id)
                .getSingleResult();
        assertFalse(kept.contains("sesame"));
        assertTrue(kept.contains("$2a$"));
        post(id).statusCode(200);
        kept = (String) entities.createNativeQuery("select content from set_up_import where id = :id")
                .setParameter("id", id)
                .getSingleResult();
        assertFalse(kept.contains("$2a$"), "what was posted is emptied");
        put(UUID.randomUUID(), "accounts", "username,role,password\n" + user + "x,AUDITOR,short\n")
                .statusCode(201)
                .body("problems.rule", hasItem("INVALID_VALUE"))
                .body("problems.message", not(hasItem(containsString("short"))));
    }

    private void load(String list, String file) {
        coordinatorFile(list, "text/csv", file);
    }

    private void coordinatorFile(String list, String type, String file) {
        UUID id = UUID.randomUUID();
        coordinator()
                .contentType(type)
                .body(file)
                .put("/api/v1/set-up-imports/" + id + "?list=" + list)
                .then()
                .statusCode(201)
                .body("problems", empty());
        post(id).statusCode(200).body("state", equalTo("POSTED"));
    }

    private int historyOfStations() {
        return ((Number) entities.createNativeQuery(
                                "select count(*) from history where table_name = 'station' and key like :mark")
                        .setParameter("mark", mark + "%")
                        .getSingleResult())
                .intValue();
    }

    private static ValidatableResponse put(UUID id, String list, String file) {
        return coordinator()
                .contentType("text/csv")
                .body(file)
                .put("/api/v1/set-up-imports/" + id + "?list=" + list)
                .then();
    }

    private static ValidatableResponse post(UUID id) {
        return coordinator().post("/api/v1/set-up-imports/" + id + "/posting").then();
    }

    private static RequestSpecification coordinator() {
        return given().auth().preemptive().basic("coordinator", SeasonFixture.PASSWORD);
    }
}
