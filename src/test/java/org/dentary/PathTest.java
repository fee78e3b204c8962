package org.dentary;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The main job end to end over HTTP: kits, intake, hand-over, submission, results, release, prevalence. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PathTest {
    @Inject
    SeasonFixture season;

    private String unit = SeasonFixture.OTHER_UNIT;
    private List<String> kits;
    private final Map<String, Map<String, String>> codes = new HashMap<>();

    @BeforeEach
    void setUp() {
        season.ensure();
        JsonPath block = put("coordinator", "/kit-blocks/" + UUID.randomUUID(), """
                        {"season":"T2026","station":"T_STATION_1","kits":4,"parts":["JAW","NODE_LEFT","NODE_RIGHT","STUB"]}
                        """)
                .statusCode(201)
                .extract()
                .jsonPath();
        kits = block.getList("kits");
        block.<Map<String, String>>getList("labels")
                .forEach(label -> codes.computeIfAbsent(label.get("kit"), k -> new HashMap<>())
                        .put(label.get("part"), label.get("code")));
    }

    @Test
    void aSeasonTravelsFromKitToPrevalence() {
        for (String kit : kits) {
            takeIn(kit).statusCode(201).body("ageClass", is("ADULT")).body("keyClass", is("ADULT"));
        }
        takeIn(kits.get(0)).statusCode(200);
        put("sampler", "/animals/" + kits.get(0), animal(kits.get(0)).replace("MALE", "FEMALE"))
                .statusCode(409)
                .contentType("application/problem+json");
        List<String> left =
                kits.stream().map(kit -> codes.get(kit).get("NODE_LEFT")).toList();
        String handOver = UUID.randomUUID().toString();
        put(
                        "sampler",
                        "/hand-overs/" + handOver,
                        "{\"codes\":" + json(left)
                                + ",\"to\":\"liaison\",\"place\":\"T_STATION_1\",\"occurredAt\":\"2026-11-14T17:00:00-06:00\",\"reason\":\"entered from paper\"}")
                .statusCode(201);
        as("sampler")
                .body("{\"codes\":" + json(left) + ",\"occurredAt\":\"2026-11-14T17:05:00-06:00\"}")
                .post("/api/v1/hand-overs/" + handOver + "/acceptance")
                .then()
                .statusCode(org.hamcrest.Matchers.oneOf(403, 409, 422));
        countedByHand(handOver, left.get(0));
        as("liaison")
                .body("{\"codes\":" + json(left)
                        + ",\"occurredAt\":\"2026-11-14T17:05:00-06:00\",\"reason\":\"entered from paper\"}")
                .post("/api/v1/hand-overs/" + handOver + "/acceptance")
                .then()
                .statusCode(org.hamcrest.Matchers.oneOf(200, 201));
        as("liaison")
                .get("/api/v1/specimens/" + left.get(0) + "/custody")
                .then()
                .statusCode(200)
                .body("verified", is(true))
                .body("events.size()", greaterThan(1));
        String submission = send(left);
        results(submission, left);
    }

    /** A count is made, not confirmed: the page offers no codes of its own, and a fault loses none that were scanned. */
    private static void countedByHand(String handOver, String code) {
        String field = "<textarea id=\"codes-" + handOver + "\" ";
        String page = as("liaison").accept("text/html").get("/custody").asString();
        assertEquals("", held(page, field), "nothing is counted beforehand");
        String faulty = as("liaison")
                .contentType("application/x-www-form-urlencoded")
                .accept("text/html")
                .formParam("codes", code + "\nNOTACODE")
                .post("/custody/hand-overs/" + handOver + "/acceptance")
                .then()
                .statusCode(422)
                .extract()
                .asString();
        assertEquals(code + "\nNOTACODE", held(faulty, field), "the scans are kept");
    }

    /** What a text area of a page holds. */
    private static String held(String page, String field) {
        int from = page.indexOf('>', page.indexOf(field)) + 1;
        return page.substring(from, page.indexOf("</textarea>", from)).strip();
    }

    private String send(List<String> left) {
        String submission = UUID.randomUUID().toString();
        put("liaison", "/submissions/" + submission, "{\"laboratory\":\"T_LAB\"}")
                .statusCode(201);
        atTheBench(submission, left.get(0));
        for (String code : left) {
            put(
                            "liaison",
                            "/submissions/" + submission + "/specimens/" + code,
                            "{\"packedAt\":\"2026-11-15T09:00:00-06:00\"}")
                    .statusCode(201);
        }
        // A right node in formalin would not be taken; a code that is none is named.
        put(
                        "liaison",
                        "/submissions/" + submission + "/specimens/NOTACODE",
                        "{\"packedAt\":\"2026-11-15T09:00:00-06:00\"}")
                .statusCode(422);
        as("liaison")
                .body(
                        "{\"occurredAt\":\"2026-11-15T12:00:00-06:00\",\"carrier\":\"T_COURIER\",\"waybill\":\"W-1\",\"reason\":\"entered next week\"}")
                .post("/api/v1/submissions/" + submission + "/dispatch")
                .then()
                .statusCode(200)
                .body("state", is("DISPATCHED"));
        put(
                        "liaison",
                        "/submissions/" + submission + "/receipt",
                        "{\"receivedAt\":\"2026-11-16T10:00:00-06:00\",\"codes\":" + json(left.subList(0, 3))
                                + ",\"reason\":\"from the laboratory's list\"}")
                .statusCode(201)
                .body("state", is("RECEIVED"))
                .body("missing", is(1));
        as("liaison")
                .get("/api/v1/discrepancies?subject=" + submission)
                .then()
                .statusCode(200)
                .body("items.kind", hasItem("SHORT"));
        papers(submission, left);
        return submission;
    }

    /** A scanner's prefix and spaces are forgiven on the page, and a second scan neither repeats nor loses anything. */
    private void atTheBench(String submission, String code) {
        String grouped = "]C0" + code.substring(0, 4) + " " + code.substring(4, 8) + " " + code.substring(8);
        scan(submission, grouped).statusCode(303).header("Location", containsString("packed=" + code));
        String page = as("liaison")
                .accept("text/html")
                .get("/submissions/" + submission + "?packed=NEVERPACKD")
                .asString();
        assertFalse(page.contains("NEVERPACKD"), "only what is in it is said to be packed");
        scan(submission, code).statusCode(409).body(containsString("is in this submission already"));
        as("liaison")
                .delete("/api/v1/submissions/" + submission + "/specimens/" + code)
                .then()
                .statusCode(200);
    }

    /** Packs on the page, where the time is now: the reason lets the tissue's days in the laboratory's rules be. */
    private static ValidatableResponse scan(String submission, String code) {
        return as("liaison")
                .redirects()
                .follow(false)
                .contentType("application/x-www-form-urlencoded")
                .accept("text/html")
                .formParam("code", code)
                .formParam("overrideReason", "packed when the test runs")
                .post("/submissions/" + submission + "/pack")
                .then();
    }

    private void papers(String submission, List<String> left) {
        String csv = as("liaison")
                .get("/api/v1/submissions/" + submission + "/manifest.csv")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(left.stream().allMatch(csv::contains), csv);
        byte[] pdf = as("liaison")
                .get("/api/v1/submissions/" + submission + "/manifest.pdf")
                .then()
                .statusCode(200)
                .contentType("application/pdf")
                .extract()
                .asByteArray();
        assertTrue(new String(pdf, 0, 5).startsWith("%PDF"));
        as("liaison")
                .get("/api/v1/submissions/" + submission + "/manifest.xlsx")
                .then()
                .statusCode(200);
        for (String page : List.of("/submissions", "/submissions/" + submission)) {
            as("liaison").accept("text/html").get(page).then().statusCode(200).body(containsString("Submission"));
        }
        as("sampler")
                .accept("text/html")
                .get("/specimens/" + left.get(0) + "/custody")
                .then()
                .statusCode(200)
                .body(containsString("What happened"));
        as("sampler").accept("text/html").get("/custody").then().statusCode(200).body(containsString("Hand over"));
        as("sampler")
                .contentType("application/x-www-form-urlencoded")
                .accept("text/html")
                .formParam("codes", left.get(0))
                .formParam("to", "nobody at all")
                .post("/custody/hand-overs")
                .then()
                .statusCode(422)
                .body(containsString(left.get(0)));
        as("liaison")
                .contentType("application/x-www-form-urlencoded")
                .accept("text/html")
                .formParam("code", left.get(0))
                .post("/submissions/" + submission + "/pack")
                .then()
                .statusCode(409)
                .body(containsString("is RECEIVED"));
    }

    private void results(String submission, List<String> left) {
        String csv = "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n"
                + left.get(0) + ",A-" + submission.substring(0, 8)
                + ",T_SCREEN,SCREENING,NOT_DETECTED,2026-11-18,2026-11-19\r\n"
                + left.get(1) + ",A-" + submission.substring(0, 8)
                + ",T_SCREEN,SCREENING,SUSPECT,2026-11-18,2026-11-19\r\n"
                + "1E5,A-1,T_SCREEN,SCREENING,NOT_DETECTED,2026-11-18,2026-11-19\r\n";
        String id = UUID.randomUUID().toString();
        as("liaison")
                .contentType("text/csv")
                .body(csv)
                .put("/api/v1/result-imports/" + id + "?laboratory=T_LAB")
                .then()
                .statusCode(201)
                .body("state", is("PREVIEWED"))
                .body("rows", is(3))
                .body("postable", is(2))
                .body("problems", hasSize(1))
                .body("problems[0].line", is(4))
                .body("problems[0].rule", is("SPREADSHEET_NUMBER"));
        as("liaison")
                .body("{}")
                .post("/api/v1/result-imports/" + id + "/posting")
                .then()
                .statusCode(409);
        as("liaison")
                .body("{\"leaveOut\":[4]}")
                .post("/api/v1/result-imports/" + id + "/posting")
                .then()
                .statusCode(200)
                .body("state", is("POSTED"))
                .body("posted", is(2));
        as("liaison")
                .contentType("text/csv")
                .body(csv)
                .put("/api/v1/result-imports/" + UUID.randomUUID() + "?laboratory=T_LAB")
                .then()
                .statusCode(201)
                .body("postable", is(0))
                .body("repeats", is(2));
        as("epidemiologist")
                .get("/api/v1/animals/" + kits.get(1))
                .then()
                .statusCode(200)
                .body("outcome", is("PENDING"));
        assertFalse(as("epidemiologist")
                .get("/api/v1/animals/" + kits.get(1))
                .asString()
                .contains("SUSPECT"));
        confirm(left.get(1));
        as("epidemiologist")
                .get("/api/v1/prevalence?season=T2026&unit=" + unit + "&by=ageClass,sex")
                .then()
                .statusCode(200)
                .body("total.detected", is(1))
                .body("total.counted", is(2))
                .body("takenToCounted.find { it.step == 'PENDING' }.animals", is(2));
    }

    private void confirm(String code) {
        String submission = UUID.randomUUID().toString();
        put(
                        "liaison",
                        "/submissions/" + submission,
                        "{\"laboratory\":\"T_LAB_CONFIRMING\",\"purpose\":\"CONFIRMATORY\"}")
                .statusCode(201);
        put(
                        "liaison",
                        "/submissions/" + submission + "/specimens/" + code,
                        "{\"packedAt\":\"2026-11-20T09:00:00-06:00\"}")
                .statusCode(422)
                .body("errors[0].rule", is("PRESERVATION_NOT_ACCEPTED"));
        put(
                        "liaison",
                        "/submissions/" + submission + "/specimens/" + code,
                        "{\"packedAt\":\"2026-11-20T09:00:00-06:00\",\"overrideReason\":\"agreed with the laboratory\"}")
                .statusCode(201);
        String finding = "{\"specimens\":[\"" + code
                + "\"],\"method\":\"T_CONFIRM\",\"stage\":\"CONFIRMATORY\",\"finding\":\"DETECTED\",\"status\":\"FINAL\","
                + "\"accession\":\"C-1\",\"laboratory\":\"T_LAB_CONFIRMING\",\"testedOn\":\"2026-11-22\",\"reportedOn\":\"2026-11-23\"}";
        String id = UUID.randomUUID().toString();
        put("liaison", "/findings/" + id, finding).statusCode(201);
        put("liaison", "/findings/" + id, finding).statusCode(200);
        put("liaison", "/findings/" + id, finding.replace("C-1", "C-2")).statusCode(409);
        as("epidemiologist").get("/api/v1/animals/" + kits.get(1)).then().body("outcome", is("PENDING"));
        put("liaison", "/animals/" + kits.get(1) + "/release", "{\"disease\":\"CWD\"}")
                .statusCode(403);
        put("coordinator", "/animals/" + kits.get(0) + "/release", "{\"disease\":\"CWD\"}")
                .statusCode(409);
        put("coordinator", "/animals/" + kits.get(1) + "/release", "{\"disease\":\"CWD\"}")
                .statusCode(201);
        put("coordinator", "/animals/" + kits.get(1) + "/release", "{\"disease\":\"CWD\"}")
                .statusCode(200);
        as("epidemiologist").get("/api/v1/animals/" + kits.get(1)).then().body("outcome", is("DETECTED"));
    }

    private ValidatableResponse takeIn(String kit) {
        return put("sampler", "/animals/" + kit, animal(kit));
    }

    private String animal(String kit) {
        return """
                {"species":"WHITE_TAILED_DEER","origin":"WILD","sex":"MALE","sexEvidence":"GENITALIA_OR_UDDER","diedOn":"2026-11-14",
                 "managementUnit":"%s","station":"T_STATION_1","mortalitySource":"HUNTER_HARVEST","collectionRoute":"STATION",
                 "clinicalSigns":"NONE_SEEN","samplingBasis":"VOLUNTARY","jawStatus":"READ",
                 "jawReading":{"id":"%s","readAt":"2026-11-14T10:00:00-06:00","cheekTeeth":6,
                   "thirdTooth":{"cusps":2,"eruption":"FULL","dentine":"DEFINED"},"sixthTooth":{"eruption":"FULL","dentine":"DEFINED"}},
                 "specimens":[{"code":"%s","tissue":"MEDIAL_RETROPHARYNGEAL_NODE","side":"LEFT","preservation":"FRESH_CHILLED",
                   "condition":"GOOD","collectedAt":"2026-11-14T10:05:00-06:00"}]}
                """.formatted(
                unit, UUID.nameUUIDFromBytes(kit.getBytes()), codes.get(kit).get("NODE_LEFT"));
    }

    private static ValidatableResponse put(String username, String path, String body) {
        return as(username).body(body).put("/api/v1" + path).then();
    }

    private static RequestSpecification as(String username) {
        return given().auth()
                .preemptive()
                .basic(username, SeasonFixture.PASSWORD)
                .contentType("application/json");
    }

    private static String json(List<String> texts) {
        return "[\"" + String.join("\",\"", texts) + "\"]";
    }
}
