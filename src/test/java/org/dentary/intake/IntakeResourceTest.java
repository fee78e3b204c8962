package org.dentary.intake;

import static org.dentary.intake.IntakeFixture.as;
import static org.dentary.intake.IntakeFixture.with;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.Test;

/** The contract of intake, each refusal with its status and code. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class IntakeResourceTest {
    @Inject
    IntakeFixture deer;

    @Inject
    AccountService accounts;

    @Inject
    EntityManager entities;

    @Test
    void takesADeerInWithJawAndNodeInOneGo() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one))
                .header("ETag", equalTo("\"0\""))
                .header("Cache-Control", containsString("no-store"))
                .body("kit", equalTo(one.kit()))
                .body("keyClass", equalTo("YEARLING_MILK_THIRD"))
                .body("ageClass", equalTo("YEARLING"))
                .body("outcome", equalTo("PENDING"))
                .body("season", equalTo(SeasonFixture.EARLIER_SEASON))
                .body("managementUnit", equalTo(SeasonFixture.UNIT))
                .body("specimens", hasSize(1))
                .body("specimens[0].code", equalTo(one.label(Part.NODE_LEFT)))
                .body("specimens[0].custodian", equalTo("T_SAMPLER"))
                .body("jawReadings[0].examiner", equalTo("T_SAMPLER"))
                .body("derivedOutcome", nullValue());
        assertEquals(
                "1 INTAKE",
                count("select count(*) || ' ' || max(cause) from line where kit = '" + one.kit()
                        + "' and disease = 'CWD'"));
        assertEquals(
                "COLLECTED",
                count("select string_agg(kind, ' ') from ledger_event where chain = '" + one.label(Part.NODE_LEFT)
                        + "'"));
    }

    @Test
    void aKitIsAlsoMeantByOneOfItsLabelsHoweverTyped() {
        Deer one = deer.aDeer();
        String label = one.label(Part.STUB).toLowerCase(java.util.Locale.ROOT);
        deer.put("sampler", "/animals/" + label.substring(0, 4) + "-" + label.substring(4), deer.facts())
                .statusCode(201)
                .body("kit", equalTo(one.kit()))
                .body("outcome", equalTo("NOT_TESTED"));
    }

    @Test
    void leavesOutWhatHasADefault() {
        Deer one = deer.aDeer();
        ObjectNode body = deer.facts();
        body.remove(List.of("origin", "clinicalSigns", "sexEvidence"));
        deer.take(one, body)
                .body("origin", equalTo("WILD"))
                .body("clinicalSigns", equalTo("NOT_OBSERVED"))
                .body("sexEvidence", equalTo("UNKNOWN"));
    }

    @Test
    void theDayOfATimeIsTheStationsAndDecidesTheSeason() {
        Deer one = deer.aDeer();
        ObjectNode lastEvening =
                deer.facts().put("diedOn", "2025-09-01T04:30:00Z").put("jawStatus", "READ");
        deer.put("sampler", "/animals/" + one.kit(), lastEvening)
                .statusCode(422)
                .body("errors[0].rule", equalTo("NO_SEASON"))
                .body("errors[0].message", containsString("2025-08-31"));
        deer.take(one, deer.facts().put("diedOn", "2025-09-01T05:30:00Z"))
                .body("diedOn", equalTo("2025-09-01"))
                .body("season", equalTo(SeasonFixture.EARLIER_SEASON));
    }

    @Test
    void theSameBodyAgainAnswers200AndChangesNothing() {
        Deer one = deer.aDeer();
        ObjectNode body = deer.yearlingWithLeftNode(one);
        deer.take(one, body);
        ObjectNode elsewhere = body.deepCopy();
        ((ObjectNode) elsewhere.get("jawReading")).put("readAt", "2025-11-14T15:10:00Z");
        for (ObjectNode again : List.of(body, elsewhere)) {
            deer.put("sampler", "/animals/" + one.kit(), again)
                    .statusCode(200)
                    .header("ETag", equalTo("\"0\""))
                    .body("specimens", hasSize(1))
                    .body("jawReadings", hasSize(1));
        }
        assertEquals("1", count("select count(*)::text from line where kit = '" + one.kit() + "' and disease = 'CWD'"));
    }

    @Test
    void otherContentIs409WithoutIfMatchAnd412WithAnOldOne() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        ObjectNode other = deer.facts().put("sex", "FEMALE").put("reason", "seen again in daylight");
        deer.put("sampler", "/animals/" + one.kit(), other)
                .statusCode(409)
                .contentType("application/problem+json")
                .body("code", equalTo("ALREADY_RECORDED"));
        change(one, "\"7\"", other).statusCode(412).body("code", equalTo("STALE_VERSION"));
        change(one, "\"0\"", other)
                .statusCode(200)
                .header("ETag", equalTo("\"1\""))
                .body("sex", equalTo("FEMALE"));
        change(one, "\"0\"", deer.facts().put("sex", "UNKNOWN").put("reason", "x"))
                .statusCode(412);
        deer.put("sampler", "/animals/" + one.kit(), deer.facts())
                .statusCode(200)
                .header("ETag", equalTo("\"1\""))
                .body("sex", equalTo("FEMALE"));
        assertEquals(
                "MALE seen again in daylight T_SAMPLER",
                count("select (old ->> 'sex') || ' ' || reason || ' ' || actor from history"
                        + " where table_name = 'animal' and key = '" + one.kit() + "' order by id limit 1"));
    }

    @Test
    void aCorrectionNeedsAReasonAndAFirstIntakeNoIfMatch() {
        Deer one = deer.aDeer();
        change(one, "\"0\"", deer.facts()).statusCode(412);
        deer.take(one, deer.facts());
        change(one, "\"0\"", deer.facts().put("sex", "FEMALE"))
                .statusCode(422)
                .body("errors[0].field", equalTo("reason"));
    }

    @Test
    void aCorrectionAddsNewTissueKeepsAbsentAndRefusesAChangedOne() {
        Deer one = deer.aDeer();
        ObjectNode body = deer.yearlingWithLeftNode(one);
        deer.take(one, body);
        ObjectNode more = deer.facts().put("sex", "FEMALE").put("reason", "button buck");
        with(more, deer.specimen(one.label(Part.NODE_RIGHT), "MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT"));
        change(one, "\"0\"", more).statusCode(200).body("specimens", hasSize(2));
        ObjectNode changed = deer.facts().put("reason", "again");
        with(changed, deer.node(one).put("condition", "SOFT"));
        change(one, "\"1\"", changed).statusCode(409);
        ObjectNode otherReading = deer.facts().put("jawStatus", "READ").put("reason", "again");
        otherReading.set(
                "jawReading",
                deer.adult(UUID.fromString(body.at("/jawReading/id").asText())));
        change(one, "\"1\"", otherReading).statusCode(409);
        as("sampler").get("/api/v1/animals/" + one.kit()).then().header("ETag", equalTo("\"1\""));
    }

    @Test
    void refusesALabelThatIsUnknownAnothersVoidOrForPapers() {
        Deer one = deer.aDeer();
        Deer other = deer.aDeer();
        String stranger = new Minting().mint().label(Part.NODE_LEFT).value();
        refused(
                one,
                with(deer.facts(), deer.specimen(stranger, "OBEX", "NONE")),
                422,
                "LABEL_UNKNOWN",
                "specimens[0].code");
        refused(
                one,
                with(deer.facts(), deer.specimen("A2C4B6H8JK", "OBEX", "NONE")),
                422,
                "NOT_A_CODE",
                "specimens[0].code");
        refused(one, with(deer.facts(), deer.node(one).without("code")), 422, "REQUIRED", "specimens[0].code");
        refused(one, with(deer.facts(), deer.node(other)), 409, "LABEL_OF_OTHER_KIT", "specimens[0].code");
        refused(
                one,
                with(deer.facts(), deer.specimen(one.label(Part.STUB), "OBEX", "NONE")),
                422,
                "PART_HOLDS_NO_TISSUE",
                "specimens[0].code");
        refused(one, with(with(deer.facts(), deer.node(one)), deer.node(one)), 422, "TWICE", "specimens[1].code");
        sql("update label set voided_at = now(), voided_by = 'test', void_reason = 'torn' where code = '"
                + one.label(Part.OBEX) + "'");
        refused(
                one,
                with(deer.facts(), deer.specimen(one.label(Part.OBEX), "OBEX", "NONE")),
                409,
                "LABEL_VOIDED",
                "specimens[0].code");
        as("sampler").get("/api/v1/animals/" + one.kit()).then().statusCode(404);
    }

    @Test
    void refusesTissueTakenBeforeDeathOrInTheFuture() {
        Deer one = deer.aDeer();
        refused(
                one,
                with(deer.facts(), deer.node(one).put("collectedAt", "2025-11-13T09:00:00-06:00")),
                422,
                "BEFORE_DEATH",
                "specimens[0].collectedAt");
        refused(
                one,
                with(deer.facts(), deer.node(one).put("collectedAt", "2199-11-13T09:00:00-06:00")),
                422,
                "FUTURE",
                "specimens[0].collectedAt");
    }

    @Test
    void namesTheAllowedValuesOfACode() {
        Deer one = deer.aDeer();
        deer.put("sampler", "/animals/" + one.kit(), deer.facts().put("mortalitySource", "SHOT"))
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors[0].field", equalTo("mortalitySource"))
                .body("errors[0].message", containsString("HUNTER_HARVEST"))
                .body("errors[0].message", containsString("'SHOT'"));
        deer.put("sampler", "/animals/" + one.kit(), deer.facts().put("station", "T_NOWHERE"))
                .statusCode(422)
                .body("errors[0].field", equalTo("station"))
                .body("errors[0].message", containsString(SeasonFixture.STATION));
        deer.put(
                        "sampler",
                        "/animals/" + one.kit(),
                        deer.facts().put("species", "UNICORN").put("managementUnit", "X"))
                .statusCode(422)
                .body("errors.field", equalTo(List.of("managementUnit", "species")));
        deer.put("sampler", "/animals/" + one.kit(), deer.facts().put("color", "brown"))
                .statusCode(422)
                .body("errors[0].field", equalTo("color"));
    }

    @Test
    void anEmptyBrokenOrIncompleteBodyIsAProblem() {
        Deer one = deer.aDeer();
        as("sampler")
                .contentType("application/json")
                .put("/api/v1/animals/" + one.kit())
                .then()
                .statusCode(400)
                .contentType("application/problem+json");
        as("sampler")
                .contentType("application/json")
                .body("{\"species\":")
                .put("/api/v1/animals/" + one.kit())
                .then()
                .statusCode(400)
                .contentType("application/problem+json");
        deer.put("sampler", "/animals/" + one.kit(), "{}")
                .statusCode(422)
                .body("errors.field", hasItem("species"))
                .body("errors.field", hasItem("sex"))
                .body("errors.field", hasItem("station"));
        ObjectNode noDay = deer.facts();
        noDay.remove("diedOn");
        deer.put("sampler", "/animals/" + one.kit(), noDay).statusCode(422).body("errors[0].field", equalTo("diedOn"));
        deer.take(one, noDay.put("diedOnReason", "found frozen")).body("season", nullValue());
    }

    @Test
    void anUnknownKitIs404AndAStringThatIsNoneIs422() {
        String stranger = new Minting().mint().value();
        deer.put("sampler", "/animals/" + stranger, deer.facts())
                .statusCode(404)
                .body("code", equalTo("KIT_UNKNOWN"));
        deer.put("sampler", "/animals/BBBB", deer.facts()).statusCode(422).body("code", equalTo("NOT_A_CODE"));
    }

    @Test
    void onlyWhoTakesInMayAndOnlyAtTheirStationAfterTheProtocol() {
        Deer one = deer.aDeer();
        deer.put("auditor", "/animals/" + one.kit(), deer.facts()).statusCode(403);
        deer.put("liaison", "/animals/" + one.kit(), deer.facts()).statusCode(403);
        deer.put("sampler-two", "/animals/" + one.kit(), deer.facts())
                .statusCode(403)
                .body("code", equalTo("STATION_NOT_SERVED"));
        accounts.put("intake-newcomer", null, Role.SAMPLER, List.of("*"), SeasonFixture.PASSWORD);
        deer.put("intake-newcomer", "/animals/" + one.kit(), deer.facts())
                .statusCode(403)
                .body("code", equalTo("PROTOCOL_NOT_ACKNOWLEDGED"));
        io.restassured.RestAssured.given()
                .contentType("application/json")
                .body(deer.facts().toString())
                .put("/api/v1/animals/" + one.kit())
                .then()
                .statusCode(401)
                .contentType("application/problem+json");
    }

    @Test
    void aReadingThatContradictsItselfIsKeptAndTheAnimalSaved() {
        Deer one = deer.aDeer();
        ObjectNode body = deer.facts().put("jawStatus", "READ");
        body.set("jawReading", deer.contradicting(UUID.randomUUID()));
        deer.take(one, body)
                .body("ageClass", equalTo("UNKNOWN"))
                .body("keyClass", nullValue())
                .body("jawReadings[0].disputed", equalTo(true))
                .body("jawReadings[0].observation.cheekTeeth", equalTo(4))
                .body("jawReadings[0].contradictions.rule", hasItem("J02"));
        as("coordinator")
                .get("/api/v1/jaws/queue?task=READ_AGAIN&station=" + SeasonFixture.STATION)
                .then()
                .statusCode(200)
                .body("items.kit", hasItem(one.kit()));
    }

    @Test
    void anExamBeforeDeathIsRefusedAndNothingIsHalfStored() {
        Deer one = deer.aDeer();
        ObjectNode body = deer.facts().put("jawStatus", "READ");
        body.set("jawReading", deer.adult(UUID.randomUUID()).put("readAt", "2025-11-12T09:00:00-06:00"));
        refused(one, body, 422, "J28", "jawReading.readAt");
        as("sampler").get("/api/v1/animals/" + one.kit()).then().statusCode(404);
    }

    @Test
    void jawAndTissueMayComeLaterEachByItsOwnAddress() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts()).body("ageClass", equalTo("UNKNOWN")).body("outcome", equalTo("NOT_TESTED"));
        UUID id = UUID.randomUUID();
        ObjectNode reading = deer.adult(id);
        deer.put("sampler", "/animals/" + one.kit() + "/jaw-readings/" + id, reading)
                .statusCode(201)
                .body("ageClass", equalTo("ADULT"));
        deer.put("sampler", "/animals/" + one.kit() + "/jaw-readings/" + id, reading)
                .statusCode(200);
        deer.put("sampler", "/animals/" + one.kit() + "/jaw-readings/" + id, reading.put("cheekTeeth", 5))
                .statusCode(409);
        deer.put("sampler", "/animals/" + one.kit() + "/jaw-readings/" + UUID.randomUUID(), deer.adult(id))
                .statusCode(422)
                .body("errors[0].rule", equalTo("OTHER_ID"));
        UUID second = UUID.randomUUID();
        deer.put("sampler", "/animals/" + one.kit() + "/jaw-readings/" + second, deer.yearling(second))
                .statusCode(409)
                .body("code", equalTo("SAME_READER"));
        String code = one.label(Part.NODE_LEFT);
        deer.put("liaison", "/animals/" + one.kit() + "/specimens/" + code, deer.node(one))
                .statusCode(201)
                .body("outcome", equalTo("PENDING"));
        deer.put("liaison", "/animals/" + one.kit() + "/specimens/" + code, deer.node(one))
                .statusCode(200);
        deer.put(
                        "liaison",
                        "/animals/" + one.kit() + "/specimens/" + code,
                        deer.node(one).without("code"))
                .statusCode(200);
        deer.put(
                        "liaison",
                        "/animals/" + one.kit() + "/specimens/" + code,
                        deer.node(one).put("condition", "SOFT"))
                .statusCode(409);
        as("liaison")
                .header("If-Match", "\"0\"")
                .contentType("application/json")
                .body(deer.node(one)
                        .put("preservation", "FROZEN")
                        .put("preservedAt", "2025-11-15T09:00:00-06:00")
                        .put("reason", "no courier until Monday")
                        .toString())
                .put("/api/v1/animals/" + one.kit() + "/specimens/" + code)
                .then()
                .statusCode(200)
                .header("ETag", equalTo("\"1\""))
                .body("specimens[0].preservation", equalTo("FROZEN"))
                .body("specimens[0].preserved.preservation", equalTo(List.of("FRESH_CHILLED", "FROZEN")));
    }

    @Test
    void aSpecimenThatIsNotThereIsNoneThatWasSeenBefore() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        String path = "/api/v1/animals/" + one.kit() + "/specimens/" + one.label(Part.NODE_LEFT);
        for (String ifMatch : List.of("\"0\"", "*")) {
            as("sampler")
                    .header("If-Match", ifMatch)
                    .contentType("application/json")
                    .body(deer.node(one).toString())
                    .put(path)
                    .then()
                    .statusCode(412)
                    .body("code", equalTo("STALE_VERSION"));
        }
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body("specimens", hasSize(0));
    }

    @Test
    void aPieceIsCutFromASpecimenUnderALabelOfTheSameKit() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        String parent = one.label(Part.NODE_LEFT);
        String child = one.label(Part.SPARE_1);
        ObjectNode piece = deer.facts().objectNode();
        piece.put("preservation", "FORMALIN").put("collectedAt", "2025-11-14T11:00:00-06:00");
        deer.put("sampler", "/specimens/" + parent + "/pieces/" + child, piece)
                .statusCode(201)
                .body("specimens.find { it.code == '" + child + "' }.parent", equalTo(parent))
                .body("specimens.find { it.code == '" + child + "' }.side", equalTo("LEFT"))
                .body("specimens.find { it.code == '" + child + "' }.custodian", equalTo("T_SAMPLER"));
        deer.put("sampler", "/specimens/" + parent + "/pieces/" + child, piece).statusCode(200);
        deer.put("sampler", "/specimens/" + parent + "/pieces/" + deer.aDeer().label(Part.SPARE_1), piece)
                .statusCode(409)
                .body("code", equalTo("LABEL_OF_OTHER_KIT"));
    }

    @Test
    void anEntryMadeInErrorStaysAndIsCountedNowhere() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        change(one, "\"0\"", deer.facts().put("enteredInError", true).put("reason", "practice deer"))
                .statusCode(200)
                .body("enteredInError", equalTo(true))
                .body("outcomes[0].exclusion", equalTo("ENTERED_IN_ERROR"));
    }

    private io.restassured.response.ValidatableResponse change(Deer one, String ifMatch, ObjectNode body) {
        return as("sampler")
                .header("If-Match", ifMatch)
                .contentType("application/json")
                .body(body.toString())
                .put("/api/v1/animals/" + one.kit())
                .then();
    }

    private void refused(Deer one, ObjectNode body, int status, String rule, String field) {
        deer.put("sampler", "/animals/" + one.kit(), body)
                .statusCode(status)
                .contentType("application/problem+json")
                .body("errors[0].field", equalTo(field))
                .body("errors[0].rule", equalTo(rule));
    }

    private String count(String query) {
        return QuarkusTransaction.requiringNew()
                .call(() -> (String) entities.createNativeQuery(query).getSingleResult());
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
