package org.dentary.result.notification;

import static io.restassured.RestAssured.given;
import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.identity.IdentityFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.correction.CorrectionFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is told of an animal whose only tissue was refused by a decided identity exception. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class RefusedIdentityTest {
    private static final String WORDS = "could not be shown that the tissue came from";

    @Inject
    NotificationFixture telling;

    @Inject
    IdentityFixture identity;

    @Inject
    IntakeFixture intake;

    @Inject
    EntityManager entities;

    private Deer deer;
    private String phone;

    @BeforeEach
    void setUp() {
        telling.ensure();
        QuarkusTransaction.requiringNew()
                .run(() ->
                        entities.createNativeQuery("delete from stub_look_up").executeUpdate());
        phone = "555" + Math.abs(UUID.randomUUID().hashCode());
        deer = identity.received(
                SeasonFixture.UNIT,
                body -> body.putObject("contact").put("name", "Rolf Eide").put("phone", phone));
    }

    @Test
    void heldWhileItIsOpenThenToldInWordsOfItsOwn() {
        identity.finds(deer, "NOT_DETECTED");
        attempt("NOT_DETECTED").statusCode(201);
        item().body("item.state", equalTo("TOLD"));
        UUID exception = identity.asked(deer.label(Part.NODE_LEFT));
        item().body("item.state", equalTo("HELD"));
        attempt("NOT_DETECTED").statusCode(409).body("code", equalTo("LABELS_IN_DOUBT"));
        stub().body(containsString("is not finished"));
        caller("PENDING", "is not finished");
        identity.refused(exception);
        item().body("item.state", equalTo("TELL_AGAIN"))
                .body("item.outcome", equalTo("NOT_ATTRIBUTABLE"))
                .body("item.toldBefore", equalTo("NOT_DETECTED"))
                .body("item.how", equalTo("LETTER_OR_MESSAGE"))
                .body("item.dueBy", notNullValue())
                .body("say", containsString(WORDS));
        stub().body(containsString(WORDS)).body(not(containsString("was not tested")));
        caller("NOT_ATTRIBUTABLE", WORDS);
        attempt("NOT_DETECTED").statusCode(409).body("code", equalTo("OUTCOME_CHANGED"));
        Integer correction = CorrectionFixture.newest(deer);
        hadTheWord(correction).body("recipients.find { it.kind == 'CONTACT' }.told", equalTo(false));
        attempt("NOT_ATTRIBUTABLE").statusCode(201);
        item().body("item.state", equalTo("TOLD"));
        hadTheWord(correction)
                .body("recipients.find { it.kind == 'CONTACT' }.had", equalTo("NOT_DETECTED"))
                .body("recipients.find { it.kind == 'CONTACT' }.told", equalTo(true));
        as("auditor")
                .get("/notifications/" + deer.kit() + "/CWD/attempts.csv")
                .then()
                .statusCode(200)
                .body(containsString("PHONE,REACHED,NOT_DETECTED,T_NOTIFIER"))
                .body(containsString("PHONE,REACHED,NOT_ATTRIBUTABLE,T_NOTIFIER"));
        as("notifier")
                .accept("text/html")
                .get("/notifications/" + deer.kit() + "/CWD")
                .then()
                .statusCode(200)
                .body(containsString(WORDS))
                .body(containsString("Settled"));
    }

    /** Whatever was found in refused tissue, the words are the same: it is nobody's. */
    @Test
    void theWordsAreTheSameWhateverWasFoundInIt() {
        identity.finds(deer, "SUSPECT");
        identity.refused(identity.asked(deer.label(Part.NODE_LEFT)));
        item().body("item.outcome", equalTo("NOT_ATTRIBUTABLE")).body("say", containsString(WORDS));
    }

    @Test
    void otherTissueOfTheAnimalSpeaksForItAgain() {
        identity.refused(identity.asked(deer.label(Part.NODE_LEFT)));
        item().body("item.outcome", equalTo("NOT_ATTRIBUTABLE"));
        intake.put(
                        "sampler",
                        "/animals/" + deer.kit() + "/specimens/" + deer.label(Part.NODE_RIGHT),
                        intake.specimen(deer.label(Part.NODE_RIGHT), "MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT"))
                .statusCode(201);
        as("notifier")
                .get("/api/v1/notifications?state=OPEN&limit=500")
                .then()
                .statusCode(200)
                .body("items.kit", not(hasItem(deer.kit())));
        stub().body(not(containsString(WORDS)));
    }

    private static ValidatableResponse hadTheWord(Integer correction) {
        return as("notifier").get("/api/v1/corrections/" + correction).then().statusCode(200);
    }

    private ValidatableResponse item() {
        return as("notifier")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD")
                .then()
                .statusCode(200);
    }

    private ValidatableResponse attempt(String outcome) {
        return as("notifier")
                .contentType("application/json")
                .body("{\"outcome\":\"" + outcome + "\",\"channel\":\"PHONE\",\"result\":\"REACHED\",\"at\":\""
                        + Instant.now() + "\"}")
                .put("/api/v1/notifications/" + deer.kit() + "/CWD/attempts/" + UUID.randomUUID())
                .then();
    }

    private ValidatableResponse stub() {
        return given().accept("text/html")
                .formParam("code", deer.label(Part.STUB))
                .formParam("station", SeasonFixture.STATION)
                .post("/stub")
                .then()
                .statusCode(200);
    }

    private void caller(String outcome, String words) {
        as("notifier")
                .contentType("application/json")
                .body("{\"by\":\"PHONE\",\"value\":\"" + phone + "\",\"purpose\":\"caller asks\"}")
                .post("/api/v1/caller-searches")
                .then()
                .statusCode(200)
                .body("items[0].words.outcome", hasItem(outcome))
                .body("items[0].words.say", hasItem(containsString(words)));
    }
}
