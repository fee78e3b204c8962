package org.dentary.submission;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Packing, sending and counting in over HTTP: what is done, and every refusal. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SubmissionsResourceTest {
    @Inject
    SeasonFixture season;

    @Inject
    IntakeFixture http;

    @Inject
    SubmissionFixture bench;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void beginsOnceHoweverOftenItIsSent() {
        String path = "/submissions/" + UUID.randomUUID();
        String body = "{\"laboratory\":\"T_LAB\"}";
        http.put("liaison", path, body)
                .statusCode(201)
                .header("ETag", notNullValue())
                .header("Cache-Control", "private, no-store")
                .body("state", equalTo("PACKING"))
                .body("purpose", equalTo("SURVEILLANCE"))
                .body("number", greaterThan(0));
        http.put("liaison", path, body).statusCode(200);
        refused(http.put("liaison", path, "{\"laboratory\":\"T_LAB_CONFIRMING\"}"), 409, "ALREADY_RECORDED");
    }

    @Test
    void changesItsLaboratoryOnlyWhileItIsEmptyAndOnlyForWhoSawIt() {
        String id = bench.begun("T_LAB");
        String other = "{\"laboratory\":\"T_LAB_CONFIRMING\"}";
        String tag = as("liaison").get("/api/v1/submissions/" + id).header("ETag");
        refused(change(id, "\"99\"", other), 412, "STALE_VERSION");
        change(id, tag, other).statusCode(200).body("laboratory", equalTo("T_LAB_CONFIRMING"));
        String full = bench.packed(bench.aNode());
        String newest = as("liaison").get("/api/v1/submissions/" + full).header("ETag");
        refused(change(full, newest, other), 409, "NOT_EMPTY");
    }

    @Test
    void refusesALaboratoryThatIsNoneAndWordsThatItDoesNotKnow() {
        String path = "/submissions/" + UUID.randomUUID();
        refused(http.put("liaison", path, "{\"laboratory\":\"NOWHERE\"}"), 404, "LABORATORY_UNKNOWN");
        http.put("liaison", path, "{\"laboratory\":\" \"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("laboratory"));
        http.put("liaison", path, "{\"laboratory\":\"T_LAB\",\"purpose\":\"FUN\"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("purpose"));
        http.put("liaison", path, "{\"laboratory\":\"T_LAB\",\"hunter\":\"x\"}").statusCode(422);
        http.put("liaison", path, "{\"laboratory\":").statusCode(400);
        http.put("liaison", "/submissions/seven", "{\"laboratory\":\"T_LAB\"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("id"));
        as("liaison").get("/api/v1" + path).then().statusCode(404).body("code", equalTo("SUBMISSION_UNKNOWN"));
    }

    @Test
    void packsATubeOnceHoweverOftenItIsSent() {
        String code = bench.aNode();
        String id = bench.begun("T_LAB");
        bench.pack(id, code)
                .statusCode(201)
                .body("specimens.code", contains(code))
                .body("specimens[0].tissue", equalTo("MEDIAL_RETROPHARYNGEAL_NODE"))
                .body("specimens[0].collectedOn", equalTo("2025-11-14"))
                .body("specimens[0].sex", equalTo("MALE"));
        bench.pack(id, code).statusCode(200).body("specimens", hasSize(1));
        refused(bench.pack(id, code, "{\"packedAt\":\"2025-11-15T08:01:00-06:00\"}"), 409, "ALREADY_PACKED");
    }

    @Test
    void movesATubeToAnotherBoxAndTakesItOut() {
        String code = bench.aNode();
        String id = bench.packed(code);
        String box = bench.aBox();
        String moved = "{\"packedAt\":\"2025-11-15T08:05:00-06:00\",\"box\":\"" + box + "\"}";
        bench.pack(id, code, moved).statusCode(200).body("specimens.box", contains(box));
        takeOut(id, code).statusCode(200).body("specimens", empty());
        takeOut(id, code).statusCode(200);
        refused(takeOut(id, "NOTACODE"), 422, "NOT_A_CODE");
    }

    @Test
    void refusesABoxThatIsNone() {
        String code = bench.aNode();
        String id = bench.begun("T_LAB");
        String tube = bench.anUnusedLabel();
        refused(bench.pack(id, code, inBox("NOTACODE")), 422, "NOT_A_CODE");
        refused(bench.pack(id, code, inBox(tube)), 422, "NOT_A_BOX");
        refused(bench.pack(id, code, inBox(bench.anUnopenedBox())), 422, "BOX_UNKNOWN");
        assertEquals(List.of(), bench.view(id).getList("specimens"));
    }

    @Test
    void refusesFormalinBesideColdTissueInOneBoxUnlessAReasonIsGiven() {
        String cold = bench.aNode();
        String fixed = bench.aNode("liaison", "FORMALIN");
        String id = bench.begun("T_LAB");
        String box = bench.aBox();
        bench.pack(id, cold, inBox(box)).statusCode(201);
        bench.pack(id, fixed, inBox(box))
                .statusCode(422)
                .body("errors.find { it.rule == 'FORMALIN_APART' }.field", equalTo("box"));
        bench.pack(id, fixed, inBox(bench.aBox()))
                .statusCode(422)
                .body("errors.rule", org.hamcrest.Matchers.not(org.hamcrest.Matchers.hasItem("FORMALIN_APART")));
        bench.pack(id, fixed, inBox(box).replace("}", ",\"overrideReason\":\"agreed, blue ice below\"}"))
                .statusCode(201);
    }

    @Test
    void refusesWhatIsNoSpecimen() {
        String id = bench.begun("T_LAB");
        refused(bench.pack(id, "NOTACODE"), 422, "NOT_A_CODE");
        refused(bench.pack(id, bench.anUnusedLabel()), 422, "SPECIMEN_UNKNOWN");
        refused(bench.pack(UUID.randomUUID().toString(), bench.aNode()), 404, "SUBMISSION_UNKNOWN");
    }

    @Test
    void holdsTheLaboratorysRulesUnlessAReasonIsGiven() {
        String fresh = bench.aNode();
        String fixed = bench.aNode("liaison", "FORMALIN");
        String id = bench.begun("T_LAB");
        refused(bench.pack(id, fresh, at("2025-11-29T08:00:00-06:00")), 422, "TOO_OLD");
        refused(bench.pack(id, fixed), 422, "PRESERVATION_NOT_ACCEPTED");
        bench.pack(id, fresh, at("2025-11-28T08:00:00-06:00")).statusCode(201);
        bench.pack(
                        id,
                        fixed,
                        "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT
                                + "\",\"overrideReason\":\"agreed by telephone\"}")
                .statusCode(201)
                .body("specimens.overrideReason", hasItem("agreed by telephone"));
    }

    /** The 28th at half past ten in the evening at the station, the 29th in UTC: fourteen days, which the laboratory takes. */
    @Test
    void daysAreThoseOfTheStationsClockWhateverTheOffsetOfTheCall() {
        String id = bench.begun("T_LAB");
        bench.pack(id, bench.aNode(), at("2025-11-29T04:30:00Z")).statusCode(201);
        refused(bench.pack(id, bench.aNode(), at("2025-11-29T06:30:00Z")), 422, "TOO_OLD");
    }

    @Test
    void noReasonPassesWhatWouldMakeAWrongRecord() {
        String code = bench.aNode();
        String id = bench.begun("T_LAB");
        String over = ",\"overrideReason\":\"because\"}";
        refused(
                bench.pack(id, code, "{\"packedAt\":\"2025-11-13T08:00:00-06:00\"" + over),
                422,
                "PACKED_BEFORE_COLLECTED");
        refused(
                bench.pack(id, code, "{\"packedAt\":\"" + SubmissionFixture.tomorrow() + "\"" + over),
                422,
                "IN_THE_FUTURE");
        bench.packed(code);
        refused(
                bench.pack(id, code, "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT + "\"" + over),
                422,
                "IN_ANOTHER_SUBMISSION");
        bench.pack(id, code, "{\"box\":null}").statusCode(422).body("errors[0].field", equalTo("packedAt"));
        String longer = "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT + "\",\"overrideReason\":\"" + "x".repeat(301);
        bench.pack(id, code, longer + "\"}").statusCode(422).body("errors[0].field", equalTo("overrideReason"));
    }

    @Test
    void leavesOnceAndClosesTheBench() {
        String code = bench.aNode();
        String later = bench.aNode();
        String id = bench.packed(code);
        bench.dispatch(id)
                .statusCode(200)
                .body("state", equalTo("DISPATCHED"))
                .body("carrier", equalTo("T_COURIER"))
                .body("shipper", equalTo("a trained shipper"));
        bench.dispatch(id).statusCode(200);
        bench.dispatch(id, "2025-11-15T10:00:00-06:00").statusCode(409);
        bench.pack(id, later).statusCode(409);
        takeOut(id, code).statusCode(409);
        as("liaison")
                .get("/api/v1/specimens/" + code + "/custody")
                .then()
                .body("verified", equalTo(true))
                .body("events.kind", hasItem("SHIPPED"));
    }

    @Test
    void refusesToLeaveEmptyUnsaidOrInTheFuture() {
        refused(bench.dispatch(bench.begun("T_LAB")), 409, "NOTHING_PACKED");
        String id = bench.packed(bench.aNode());
        bench.post(id + "/dispatch", "{\"occurredAt\":\"" + SubmissionFixture.LEFT_AT + "\",\"carrier\":\" \"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("carrier"));
        bench.post(id + "/dispatch", "{\"carrier\":\"T_COURIER\"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("occurredAt"));
        bench.dispatch(id, SubmissionFixture.tomorrow()).statusCode(422);
        assertEquals("PACKING", bench.view(id).getString("state"));
    }

    @Test
    void packsWhatSomebodyElseHoldsOnlyForAReasonAndDoesNotSendIt() {
        String code = bench.aNode("sampler", "FRESH_CHILLED");
        String id = bench.begun("T_LAB");
        refused(bench.pack(id, code), 422, "NOT_WITH_YOU");
        bench.pack(
                        id,
                        code,
                        "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT
                                + "\",\"overrideReason\":\"the sampler stands beside me\"}")
                .statusCode(201);
        bench.dispatch(id).statusCode(409);
        assertEquals("PACKING", bench.view(id).getString("state"));
    }

    @Test
    void whatComesBackIsHeldAgainAndGoesToAnotherLaboratory() {
        String back = bench.aNode();
        String on = bench.aNode();
        String packing = bench.packed(bench.aNode());
        refused(recall(packing, "null"), 409, "WRONG_STATE");
        String id = bench.sent(back, on);
        bench.post(id + "/recall", "{\"occurredAt\":\"2025-11-15T11:00:00-06:00\",\"reason\":\" \"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("reason"));
        refused(recall(id, "[\"" + bench.aNode() + "\"]"), 409, "NOT_IN_IT");
        recall(id, "[\"" + back + "\"]")
                .statusCode(200)
                .body("specimens.find { it.code == '" + back + "' }.receipt", equalTo("RECALLED"));
        recall(id, "[\"" + back + "\"]").statusCode(200);
        as("liaison")
                .get("/api/v1/specimens/" + back + "/custody")
                .then()
                .body("verified", equalTo(true))
                .body("custodian", equalTo("T_LIAISON"))
                .body("events.kind", hasItem("RETURNED"));
        as("liaison").get("/api/v1/submissions/waiting.csv").then().body(containsString(back));
        String other = bench.packed(back);
        bench.dispatch(other, "2025-11-15T12:00:00-06:00").statusCode(200);
        bench.receive(id, on).statusCode(201).body("missing", equalTo(0));
        assertEquals(List.of(), bench.discrepancies(id));
        recall(id, "null").statusCode(409);
    }

    @Test
    void whatWasTakenBackAndIsCountedInAllTheSameIsADiscrepancyAndAtTheLaboratory() {
        String back = bench.aNode();
        String id = bench.sent(back, bench.aNode());
        recall(id, "[\"" + back + "\"]").statusCode(200);
        bench.receive(id, back).statusCode(201).body("received", equalTo(1)).body("missing", equalTo(1));
        assertEquals(2, bench.discrepancies(id).size());
        assertEquals("OVER " + back, bench.discrepancies(id).get(0));
        as("liaison")
                .get("/api/v1/specimens/" + back + "/custody")
                .then()
                .body("verified", equalTo(true))
                .body("custodian", equalTo("T_LAB"));
    }

    @Test
    void whatWasTakenBackAndWentToAnotherLaboratoryIsOverWhereItIsCountedInAndKeepsItsCustody() {
        String back = bench.aNode();
        String id = bench.sent(back);
        recall(id, "[\"" + back + "\"]").statusCode(200);
        String other = bench.packed(back);
        bench.dispatch(other, "2025-11-15T12:00:00-06:00").statusCode(200);
        Object custodian =
                as("liaison").get("/api/v1/specimens/" + back + "/custody").path("custodian");
        bench.receive(id, back).statusCode(201).body("received", equalTo(0)).body("over", contains(back));
        assertEquals(List.of("OVER " + back), bench.discrepancies(id));
        assertEquals(List.of("RECALLED"), bench.view(id).getList("specimens.receipt"));
        as("liaison").get("/api/v1/specimens/" + back + "/custody").then().body("custodian", equalTo(custodian));
        bench.receive(other, back).statusCode(201).body("missing", equalTo(0));
    }

    private ValidatableResponse recall(String id, String codes) {
        return bench.post(
                id + "/recall",
                "{\"codes\":" + codes
                        + ",\"occurredAt\":\"2025-11-15T11:00:00-06:00\",\"reason\":\"meant for another laboratory\"}");
    }

    @Test
    void countsInAndOpensADiscrepancyForEachDifference() {
        List<String> codes = List.of(bench.aNode(), bench.aNode(), bench.aNode());
        String stray = bench.aNode();
        String id = bench.sent(codes.toArray(String[]::new));
        http.put(
                        "liaison",
                        "/submissions/" + id + "/receipt",
                        SubmissionFixture.receipt(
                                List.of(codes.get(0), codes.get(1), stray, "illegible"), List.of(codes.get(1))))
                .statusCode(201)
                .body("state", equalTo("RECEIVED"))
                .body("received", equalTo(2))
                .body("missing", equalTo(1))
                .body("over", containsInAnyOrder(stray, "illegible"));
        assertEquals(
                List.of("DAMAGED " + codes.get(1), "OVER " + stray, "SHORT " + codes.get(2)), bench.discrepancies(id));
    }

    @Test
    void countsInACodeCalledDamagedThatIsOnNoList() {
        String code = bench.aNode();
        String id = bench.sent(code);
        http.put(
                        "liaison",
                        "/submissions/" + id + "/receipt",
                        SubmissionFixture.receipt(List.of(code), List.of("illegible")))
                .statusCode(201)
                .body("over", contains("illegible"));
        assertEquals(List.of(), bench.discrepancies(id));
    }

    @Test
    void aLaterCountAddsCodesAndRemovesNone() {
        String first = bench.aNode();
        String second = bench.aNode();
        String id = bench.sent(first, second);
        bench.receive(id, first).statusCode(201).body("missing", equalTo(1));
        bench.receive(id, first).statusCode(200);
        refused(bench.receive(id, second), 409, "ALREADY_RECORDED");
        String body = SubmissionFixture.receipt(List.of(second), List.of());
        refused(bench.receive(id, "\"1\"", body), 412, "STALE_VERSION");
        String tag = as("liaison").get("/api/v1/submissions/" + id).header("ETag");
        bench.receive(id, tag, body)
                .statusCode(200)
                .body("received", equalTo(2))
                .body("missing", equalTo(0));
        assertEquals(List.of("RECEIVED", "RECEIVED"), bench.view(id).getList("specimens.receipt"));
    }

    @Test
    void aLaterCountTakesNoDamageBackAndMayFindIt() {
        String leaking = bench.aNode();
        String whole = bench.aNode();
        String id = bench.sent(leaking, whole);
        String path = "/submissions/" + id + "/receipt";
        http.put("liaison", path, SubmissionFixture.receipt(List.of(leaking, whole), List.of(leaking)))
                .statusCode(201);
        bench.receive(id, tag(id), SubmissionFixture.receipt(List.of(whole, leaking), List.of(whole)))
                .statusCode(200)
                .body("specimens.receipt", contains("DAMAGED", "DAMAGED"))
                .body("received", equalTo(2));
    }

    @Test
    void saysWhetherItWasScannedOrIsFromTheLaboratorysListAndKeepsWhatWasPackedBefore() {
        String scanned = bench.aNode();
        String listed = bench.aNode();
        String taken = bench.aNode();
        String id = bench.packed(scanned, listed, taken);
        takeOut(id, taken).statusCode(200);
        bench.dispatch(id).statusCode(200);
        bench.receive(id, scanned).statusCode(201).body(of(scanned) + "receiptSource", equalTo("SCAN"));
        bench.receive(
                        id,
                        tag(id),
                        SubmissionFixture.receipt(List.of(scanned, listed), List.of())
                                .replace("{", "{\"source\":\"LABORATORY_LIST\","))
                .statusCode(200)
                .body(of(scanned) + "receiptSource", equalTo("SCAN"))
                .body(of(listed) + "receiptSource", equalTo("LABORATORY_LIST"));
        as("liaison")
                .accept("text/html")
                .get("/submissions/" + id)
                .then()
                .body(containsString("Received, reported by the laboratory"));
        assertEquals(
                1L,
                ((Number) entities.createNativeQuery(
                                        "select count(*) from history where table_name = 'submission_specimen' and key = '"
                                                + taken + "'")
                                .getSingleResult())
                        .longValue(),
                "what was taken out stays in the history");
    }

    private static String of(String code) {
        return "specimens.find { it.code == '" + code + "' }.";
    }

    private static String tag(String id) {
        return as("liaison").get("/api/v1/submissions/" + id).header("ETag");
    }

    @Test
    void refusesACountThatCannotBe() {
        String code = bench.aNode();
        refused(bench.receive(bench.packed(code), code), 409, "WRONG_STATE");
        String id = bench.sent(bench.aNode());
        String path = "/submissions/" + id + "/receipt";
        http.put("liaison", path, "{\"receivedAt\":\"" + SubmissionFixture.COUNTED_AT + "\"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("codes"));
        http.put("liaison", path, "{\"receivedAt\":\"" + SubmissionFixture.COUNTED_AT + "\",\"codes\":[null]}")
                .statusCode(422)
                .body("errors[0].field", containsString("codes"));
        http.put("liaison", path, "{\"codes\":[]}").statusCode(422).body("errors[0].field", equalTo("receivedAt"));
        refused(
                http.put("liaison", path, "{\"receivedAt\":\"" + SubmissionFixture.tomorrow() + "\",\"codes\":[]}"),
                422,
                "IN_THE_FUTURE");
        assertEquals("DISPATCHED", bench.view(id).getString("state"));
    }

    @Test
    void keepsOutWhoMayNot() {
        String code = bench.aNode();
        String id = bench.packed(code);
        for (String account : List.of("sampler", "epidemiologist", "auditor", "notifier")) {
            http.put(account, "/submissions/" + UUID.randomUUID(), "{\"laboratory\":\"T_LAB\"}")
                    .statusCode(403);
            http.put(account, "/submissions/" + id + "/receipt", SubmissionFixture.receipt(List.of(code), List.of()))
                    .statusCode(403);
        }
        as("notifier").get("/api/v1/submissions/" + id).then().statusCode(403);
        as("auditor").get("/api/v1/submissions/" + id).then().statusCode(200);
        io.restassured.RestAssured.get("/api/v1/submissions/" + id)
                .then()
                .statusCode(401)
                .contentType("application/problem+json");
    }

    private static String at(String packedAt) {
        return "{\"packedAt\":\"" + packedAt + "\"}";
    }

    private static String inBox(String box) {
        return "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT + "\",\"box\":\"" + box + "\"}";
    }

    private static ValidatableResponse takeOut(String id, String code) {
        return as("liaison")
                .delete("/api/v1/submissions/" + id + "/specimens/" + code)
                .then();
    }

    private static ValidatableResponse change(String id, String ifMatch, String body) {
        return as("liaison")
                .header("If-Match", ifMatch)
                .contentType("application/json")
                .body(body)
                .put("/api/v1/submissions/" + id)
                .then();
    }

    /** A problem of that status whose own code, or whose first fault's rule, is this. */
    private static void refused(ValidatableResponse answer, int status, String rule) {
        String body = answer.extract().asString();
        assertEquals(status, answer.extract().statusCode(), body);
        answer.contentType("application/problem+json");
        String code = answer.extract().path("code");
        String first = answer.extract().path("errors[0].rule");
        assertEquals(rule, first == null ? code : first, body);
    }

    @Test
    void listsArePagedToTheirEndAndNoPageIsEmpty() {
        for (int i = 0; i < 3; i++) {
            bench.begun("T_LAB_CONFIRMING");
        }
        String list = "/api/v1/submissions?laboratory=T_LAB_CONFIRMING&state=PACKING&limit=";
        int all = as("liaison").get(list + "1000").jsonPath().getList("items").size();
        assertEquals(null, as("liaison").get(list + all).header("Link"), "a last page that is full leads nowhere");
        String next = list + (all - 1);
        String link = as("liaison").get(next).header("Link");
        as("liaison")
                .urlEncodingEnabled(false)
                .get(link.substring(1, link.indexOf('>')))
                .then()
                .statusCode(200)
                .body("items", hasSize(1));
        for (String what : List.of("waiting", "overdue")) {
            bench.sent(bench.aNode());
            bench.aNode();
            bench.aNode();
            bench.sent(bench.aNode());
            String first = "/api/v1/submissions/" + what + "?limit=1";
            String after = as("liaison").get(first).header("Link");
            String one = as("liaison").get(first).jsonPath().getString("items[0].code");
            String two = as("liaison")
                    .urlEncodingEnabled(false)
                    .get(after.substring(1, after.indexOf('>')))
                    .jsonPath()
                    .getString("items[0].code");
            assertEquals(
                    List.of(one, two),
                    as("liaison")
                            .get("/api/v1/submissions/" + what + "?limit=2")
                            .jsonPath()
                            .getList("items.code"));
            assertEquals(
                    List.of(one, two),
                    as("liaison")
                            .get("/api/v1/submissions/overview?limit=2")
                            .jsonPath()
                            .getList(what + ".code"));
        }
        refused(as("liaison").get("/api/v1/submissions/overdue?after=nowhere").then(), 422, "INVALID_VALUE");
    }

    @Test
    void refusesAStateALaboratoryAndASizeThatAreNone() {
        refused(as("liaison").get("/api/v1/submissions?state=LOST").then(), 422, "INVALID_VALUE");
        refused(as("liaison").get("/api/v1/submissions?laboratory=NOWHERE").then(), 404, "LABORATORY_UNKNOWN");
        for (String path : List.of("", "/waiting", "/overdue", "/overview")) {
            refused(as("liaison").get("/api/v1/submissions" + path + "?limit=0").then(), 422, "INVALID_VALUE");
            refused(
                    as("liaison")
                            .get("/api/v1/submissions" + path + "?limit=1001")
                            .then(),
                    422,
                    "INVALID_VALUE");
        }
    }
}
