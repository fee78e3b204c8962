package org.dentary.jaw.practice;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.dentary.platform.photo.PhotoFixture;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PracticeTest {
    @Inject
    IntakeFixture deer;

    @Inject
    EntityManager entities;

    @Inject
    AccountService accounts;

    @Inject
    ObjectMapper json;

    @Test
    void aRoundTellsNothingBeforeItsLastAnswerAndThenTheKeysWayToEachJaw() {
        String learner = learner();
        UUID id = UUID.randomUUID();
        String text = begin(learner, id)
                .statusCode(201)
                .body("items", hasSize(10))
                .extract()
                .asString();
        assertFalse(text.contains("rightClass") || text.contains("steps") || text.contains("drawn-"), text);
        begin(learner, id).statusCode(200);
        for (int position = 1; position <= 10; position++) {
            assertNoAnswerYet(learner, id);
            give(learner, id, position, "ADULT").statusCode(200).body("answered", equalTo(position));
        }
        give(learner, id, 3, "ADULT").statusCode(200);
        give(learner, id, 3, "FAWN").statusCode(409).body("code", equalTo("ANSWERED_ALREADY"));
        JsonPath done =
                as(learner).get(path(id)).then().statusCode(200).extract().jsonPath();
        long adults = done.getList("items.rightClass").stream()
                .filter("ADULT"::equals)
                .count();
        assertEquals(adults, done.getInt("right"));
        assertEquals(
                adults,
                done.getList("items.isRight").stream()
                        .filter(Boolean.TRUE::equals)
                        .count());
        as(learner).get(path(id)).then().body("items.steps", everyItem(not(equalTo(List.of()))));
        as(learner)
                .get("/api/v1/practice-rounds/rounds.csv")
                .then()
                .body(containsString(id + "," + person(learner) + ",2026.1,10,10," + adults + ","));
    }

    @Test
    void whoAnswersAsTheKeyDoesIsRightInEveryJaw() {
        String learner = learner();
        UUID id = UUID.randomUUID();
        begin(learner, id);
        answerAll(learner, id, true);
        as(learner).get(path(id)).then().body("right", equalTo(10)).body("items.isRight", everyItem(equalTo(true)));
    }

    @Test
    void jawsMetLeastComeFirstSoThatTwoRoundsHoldTwentyJaws() {
        String learner = learner();
        Set<String> met = new HashSet<>();
        for (int i = 0; i < 2; i++) {
            UUID id = UUID.randomUUID();
            begin(learner, id);
            answerAll(learner, id, false);
            met.addAll(jaws(id));
        }
        assertEquals(20, met.size());
    }

    @Test
    void aRoundIsOnesOwnUntilItIsFinished() {
        String learner = learner();
        UUID id = UUID.randomUUID();
        begin(learner, id);
        as(learner()).get(path(id)).then().statusCode(403);
        as("epidemiologist").get(path(id)).then().statusCode(403);
        give("epidemiologist", id, 1, "ADULT").statusCode(403);
        begin("coordinator", id).statusCode(403);
        answerAll(learner, id, true);
        as("epidemiologist").get(path(id)).then().statusCode(200).body("right", equalTo(10));
        as(learner()).get(path(id)).then().statusCode(403);
        as("notifier").get(path(id)).then().statusCode(403);
        begin("auditor", UUID.randomUUID()).statusCode(403);
        give(learner, id, 11, "ADULT").statusCode(404);
        give(learner, id, 1, "OLD")
                .statusCode(422)
                .body("errors[0].field", equalTo("ageClass"))
                .body("errors[0].message", containsString("FAWN"));
        as(learner).get(path(UUID.randomUUID())).then().statusCode(404);
    }

    @Test
    void aKnownJawGoesOnThePanelAndIsAskedOfThoseWhoHaveNotReadItUnderNoName() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        UUID panel = UUID.randomUUID();
        put("epidemiologist", panel, one.kit()).statusCode(409).body("code", equalTo("AGE_NOT_ESTABLISHED"));
        UUID mark = UUID.randomUUID();
        deer.put("coordinator", "/animals/" + one.kit() + "/jaw-readings/" + mark, deer.knownAge(mark, "YEARLING"))
                .statusCode(201);
        put("epidemiologist", panel, one.kit()).statusCode(409).body("code", equalTo("NO_PHOTO"));
        as("sampler")
                .contentType("image/jpeg")
                .body(PhotoFixture.jpeg(400, 300))
                .put("/api/v1/animals/" + one.kit() + "/jaw-photos/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        put("sampler", panel, one.kit()).statusCode(403);
        put("epidemiologist", panel, one.kit())
                .statusCode(201)
                .body("kind", equalTo("KNOWN_AGE"))
                .body("ageClass", equalTo("YEARLING"))
                .body("stepsKnown", equalTo(true));
        put("epidemiologist", panel, one.kit()).statusCode(200);
        put("coordinator", UUID.randomUUID(), one.kit()).statusCode(409).body("code", equalTo("ON_THE_PANEL"));
        as("sampler").get("/api/v1/reference-jaws").then().statusCode(403);
        as("auditor").get("/api/v1/reference-jaws").then().body("items.kit", hasItem(one.kit()));

        String learner = learner();
        UUID id = UUID.randomUUID();
        String text = begin(learner, id).statusCode(201).extract().asString();
        assertFalse(text.contains(one.kit()) || text.contains(panel.toString()), text);
        assertTrue(jaws(id).contains(panel.toString()), "half of a round are photos where there are any");
        String photo = JsonPath.from(text).getList("items.pictures.href").stream()
                .flatMap(list -> ((List<?>) list).stream())
                .map(String::valueOf)
                .filter(href -> href.contains("/photos/"))
                .findFirst()
                .orElseThrow();
        as(learner).get(photo).then().statusCode(200).contentType("image/jpeg");
        as(learner()).get(photo).then().statusCode(403);
        answerAll(learner, id, true);
        as(learner)
                .get(path(id))
                .then()
                .body("items.find { it.kind == 'KNOWN_AGE' }.source", containsString("mark"))
                .body("items.find { it.kind == 'KNOWN_AGE' }.steps.size()", equalTo(4));
        // The sampler read this jaw, the epidemiologist put it here: neither is asked.
        for (String knows : new String[] {"sampler", "epidemiologist"}) {
            UUID own = UUID.randomUUID();
            begin(knows, own);
            assertFalse(jaws(own).contains(panel.toString()), knows);
        }
        retire(panel, "").statusCode(422);
        retire(panel, "the photo shows the label").statusCode(200).body("retiredReason", containsString("label"));
        UUID later = UUID.randomUUID();
        begin(learner, later);
        assertFalse(jaws(later).contains(panel.toString()));
        as(learner).get(path(id)).then().body("items.kind", hasItem("KNOWN_AGE"));
    }

    @Test
    void whereThePlanAsksForAScoreReadingsCountAloneOnlyWithOne() {
        String learner = learner();
        setting("PRACTICE_SCORE_NEEDED", "0.8", SeasonFixture.OTHER_UNIT);
        try {
            String first = readBy(learner, SeasonFixture.OTHER_UNIT, "UNKNOWN", true);
            as("coordinator").get("/api/v1/jaws/queue?task=READ_AGAIN").then().body("items.kit", hasItem(first));
            UUID second = UUID.randomUUID();
            deer.put("coordinator", "/animals/" + first + "/jaw-readings/" + second, deer.yearling(second))
                    .statusCode(201)
                    .body("ageClass", equalTo("YEARLING")); // two who have no score, and say the same
            assertEquals("YEARLING", lineAge(first));
            readBy(learner, SeasonFixture.UNIT, "YEARLING", false); // elsewhere the plan asks for none

            UUID poor = UUID.randomUUID();
            begin(learner, poor);
            answerAll(learner, poor, false);
            readBy(learner, SeasonFixture.OTHER_UNIT, "UNKNOWN", true);

            UUID good = UUID.randomUUID();
            begin(learner, good);
            answerAll(learner, good, true);
            readBy(learner, SeasonFixture.OTHER_UNIT, "YEARLING", false);
        } finally {
            sql("delete from plan_setting where name = 'PRACTICE_SCORE_NEEDED'");
        }
    }

    @Test
    void withoutADemandReadingsCountWithoutAScore() {
        readBy(learner(), SeasonFixture.OTHER_UNIT, "YEARLING", false);
    }

    private String readBy(String account, String unit, String ageClass, boolean second) {
        Deer one = deer.aDeer();
        ObjectNode body = deer.yearlingWithLeftNode(one).put("managementUnit", unit);
        deer.put(account, "/animals/" + one.kit(), body)
                .statusCode(201)
                .body("ageClass", equalTo(ageClass))
                .body("ageDisputed", equalTo(false))
                .body("jawReadings[0].ageClass", equalTo("YEARLING"))
                .body("jawReadings[0].needsSecondReader", equalTo(second))
                .body("jawReadings[0].countsAlone", equalTo(!second));
        return one.kit();
    }

    private String lineAge(String kit) {
        return (String) QuarkusTransaction.requiringNew()
                .call(() -> entities.createNativeQuery("select age_class from line where kit = '" + kit
                                + "' and disease = 'CWD' and closed_at is null")
                        .getSingleResult());
    }

    /** Answers what is left of a round, each rightly or each wrongly. */
    private void answerAll(String account, UUID id, boolean rightly) {
        List<?> right = QuarkusTransaction.requiringNew()
                .call(() -> entities.createNativeQuery(
                                "select right_class from practice_jaw where round = '" + id + "' order by position")
                        .getResultList());
        for (int i = 0; i < right.size(); i++) {
            String wrong = right.get(i).equals("ADULT") ? "FAWN" : "ADULT";
            give(account, id, i + 1, rightly ? (String) right.get(i) : wrong).statusCode(200);
        }
    }

    private static void assertNoAnswerYet(String account, UUID id) {
        as(account)
                .get(path(id))
                .then()
                .body("right", nullValue())
                .body("items.rightClass", everyItem(nullValue()))
                .body("items.steps", everyItem(nullValue()));
    }

    private Set<String> jaws(UUID id) {
        return new HashSet<>(QuarkusTransaction.requiringNew()
                .call(() -> entities.createNativeQuery(
                                "select jaw from practice_jaw where round = '" + id + "'", String.class)
                        .getResultList()));
    }

    /** A new sampler who serves every station and has acknowledged the protocol. */
    private String learner() {
        deer.aDeer();
        String name = "learner-" + UUID.randomUUID().toString().substring(0, 8);
        sql("insert into person (code, name, position) values ('" + person(name) + "', 'Learner', 99)");
        accounts.put(name, person(name), Role.SAMPLER, List.of("*"), SeasonFixture.PASSWORD);
        sql("insert into protocol_acknowledgement (account, protocol_version, at) select '" + name
                + "', coalesce((select value from plan_setting where name = 'PROTOCOL_VERSION' and season is null), '1'),"
                + " now() on conflict do nothing");
        return name;
    }

    private static String person(String account) {
        return account.replace('-', '_').toUpperCase(Locale.ROOT);
    }

    private void setting(String name, String value, String unit) {
        sql("insert into plan_setting (name, value, unit) values ('" + name + "', '" + value + "', '" + unit + "')");
    }

    private static String path(UUID id) {
        return "/api/v1/practice-rounds/" + id;
    }

    private static ValidatableResponse begin(String account, UUID id) {
        return as(account).put(path(id)).then();
    }

    private ValidatableResponse give(String account, UUID id, int position, String ageClass) {
        return deer.put(
                account,
                "/practice-rounds/" + id + "/answers/" + position,
                json.createObjectNode().put("ageClass", ageClass));
    }

    private ValidatableResponse put(String account, UUID id, String kit) {
        return deer.put(
                account, "/reference-jaws/" + id, json.createObjectNode().put("kit", kit));
    }

    private ValidatableResponse retire(UUID id, String reason) {
        return deer.put(
                "epidemiologist",
                "/reference-jaws/" + id + "/retirement",
                json.createObjectNode().put("reason", reason));
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
