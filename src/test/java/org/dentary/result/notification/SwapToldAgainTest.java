package org.dentary.result.notification;

import static io.restassured.RestAssured.given;
import static org.dentary.intake.IntakeFixture.as;
import static org.dentary.intake.putright.SwapFixture.stands;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertNull;

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
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.intake.putright.SwapFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.dentary.result.correction.CorrectionFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Whoever was told a result of an animal whose label was swapped: told nothing while it is open, then told again. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SwapToldAgainTest {
    @Inject
    NotificationFixture telling;

    @Inject
    SwapFixture swaps;

    @Inject
    FindingsFixture laboratory;

    @Inject
    EntityManager entities;

    private Deer one;
    private Deer two;
    private String phone;

    /** Two deer with a hunter and tissue each. */
    @BeforeEach
    void setUp() {
        telling.ensure();
        QuarkusTransaction.requiringNew()
                .run(() ->
                        entities.createNativeQuery("delete from stub_look_up").executeUpdate());
        phone = "555" + Math.abs(UUID.randomUUID().hashCode());
        one = brought();
        two = brought();
    }

    private Deer brought() {
        return laboratory.atTheLaboratory(
                SeasonFixture.UNIT,
                facts -> facts.putObject("contact").put("name", "Rolf Eide").put("phone", phone));
    }

    @Test
    void ofAnAnimalThatHadNoneOfTheTissueAfterAllThePersonIsToldThatItWasNotTested() {
        found(one, "NOT_DETECTED");
        told(one, "NOT_DETECTED").statusCode(201);
        String swap = swaps.asked(node(one), two);
        item(one).body("item.state", equalTo("HELD"));
        told(one, "NOT_DETECTED").statusCode(409).body("code", equalTo("LABELS_IN_DOUBT"));
        swaps.confirmed(swap);
        item(one)
                .body("item.state", equalTo("TELL_AGAIN"))
                .body("item.outcome", equalTo("NOT_TESTED"))
                .body("item.toldBefore", equalTo("NOT_DETECTED"));
        Integer correction = CorrectionFixture.newest(one);
        correction(correction).body("recipients.find { it.kind == 'CONTACT' }.told", equalTo(false));
        told(one, "NOT_TESTED").statusCode(201);
        item(one).body("item.state", equalTo("TOLD"));
        correction(correction)
                .body("head.state", equalTo("DONE"))
                .body("recipients.find { it.kind == 'CONTACT' }.told", equalTo(true));
    }

    @Test
    void underADuplicateNothingIsToldEitherWhileTheAnimalIsInDoubt() {
        Deer duplicate = brought();
        found(one, "NOT_DETECTED");
        found(duplicate, "NOT_DETECTED");
        swaps.links(duplicate, one).statusCode(201);
        stands(duplicate, "NOT_DETECTED", "DUPLICATE");
        told(duplicate, "NOT_DETECTED").statusCode(201);
        stub(duplicate).body(not(containsString("is not finished")));
        String swap = swaps.asked(node(one), two);
        item(duplicate).body("item.state", equalTo("HELD"));
        told(duplicate, "NOT_DETECTED").statusCode(409).body("code", equalTo("LABELS_IN_DOUBT"));
        stub(duplicate).body(containsString("is not finished"));
        as("notifier")
                .contentType("application/json")
                .body("{\"by\":\"PHONE\",\"value\":\"" + phone + "\",\"purpose\":\"caller asks\"}")
                .post("/api/v1/caller-searches")
                .then()
                .statusCode(200)
                .body(
                        "items.findAll { it.kit == '" + duplicate.kit() + "' }.words.outcome.flatten()",
                        hasItem("PENDING"));
        swaps.refused(swap);
        item(duplicate).body("item.state", equalTo("TOLD"));
        stub(duplicate).body(not(containsString("is not finished")));
    }

    @Test
    void whoWasToldUnderADuplicateHadTheWordOfTheAnimalThatIsCorrected() {
        Deer duplicate = brought();
        found(one, "NOT_DETECTED");
        found(duplicate, "NOT_DETECTED");
        swaps.links(duplicate, one).statusCode(201);
        told(one, "NOT_DETECTED").statusCode(201);
        told(duplicate, "NOT_DETECTED").statusCode(201);
        swaps.confirmed(swaps.asked(node(one), two));
        assertNull(CorrectionFixture.newest(one), "the duplicate's tissue says the same");
        swaps.confirmed(swaps.asked(node(duplicate), two));
        Integer correction = CorrectionFixture.newest(one);
        correction(correction)
                .body("head.word", equalTo("NOT_TESTED"))
                .body("recipients.findAll { it.kind == 'CONTACT' }.recipient", hasItems(one.kit(), duplicate.kit()));
        told(duplicate, "NOT_TESTED").statusCode(201);
        correction(correction)
                .body("recipients.find { it.recipient == '" + duplicate.kit() + "' }.told", equalTo(true))
                .body("recipients.find { it.recipient == '" + one.kit() + "' }.told", equalTo(false));
        item(one).body("item.state", equalTo("TELL_AGAIN"));
    }

    /** The usual swap: what is under the one's label came from the other, and the reverse. */
    @Test
    void whoWasToldIsToldOnceBothLabelsAreSettledAndOnlyWhatDiffersThen() {
        Deer same = brought();
        found(one, "NOT_DETECTED");
        found(two, "INCONCLUSIVE");
        found(same, "NOT_DETECTED");
        told(one, "NOT_DETECTED").statusCode(201);
        told(two, "INCONCLUSIVE").statusCode(201);
        told(same, "NOT_DETECTED").statusCode(201);
        String there = swaps.asked(node(one), two);
        String back = swaps.asked(node(two), one);
        swaps.confirmed(there);
        stands(one, "NOT_TESTED", "NOT_ATTRIBUTABLE");
        item(one).body("item.state", equalTo("HELD"));
        assertNull(CorrectionFixture.newest(one), "nothing is said while the other label is open");
        swaps.confirmed(back);
        stands(one, "INCONCLUSIVE", "");
        stands(two, "NOT_DETECTED", "");
        item(one).body("item.state", equalTo("TELL_AGAIN")).body("item.outcome", equalTo("INCONCLUSIVE"));
        item(two).body("item.state", equalTo("TELL_AGAIN")).body("item.outcome", equalTo("NOT_DETECTED"));
        correction(CorrectionFixture.newest(one))
                .body("head.earlier", equalTo("NOT_DETECTED"))
                .body("head.word", equalTo("INCONCLUSIVE"))
                .body("head.state", equalTo("OPEN"));
        there = swaps.asked(node(one), same);
        back = swaps.asked(node(same), two);
        swaps.confirmed(back);
        swaps.confirmed(there);
        item(same).body("item.state", equalTo("TOLD"));
        assertNull(CorrectionFixture.newest(same), "the same word stands as before");
    }

    @Test
    void aDetectionIsNotReleasedWhileItMayBeAnotherAnimals() {
        String unit = laboratory.unitWithoutTheDisease();
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "update plan_setting set value = 'CWD' where name = 'DISEASES_ESTABLISHED' and unit = '"
                                        + unit + "'")
                        .executeUpdate());
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", "SUSPECT", null).statusCode(201);
        laboratory.finds(deer, "CONFIRMATORY", "DETECTED", null).statusCode(201);
        String swap = swaps.asked(node(deer), two);
        laboratory.releases(deer).statusCode(409).body("code", equalTo("LABELS_IN_DOUBT"));
        swaps.confirmed(swap);
        stands(deer, "NOT_TESTED", "");
        stands(two, "PENDING", "");
        as("sampler").get("/api/v1/animals/" + two.kit()).then().body("outcomes[0].derivedOutcome", nullValue());
    }

    private void found(Deer deer, String word) {
        laboratory.finds(deer, "SCREENING", word, null).statusCode(201);
        stands(deer, word, "");
    }

    private static String node(Deer deer) {
        return deer.label(Part.NODE_LEFT);
    }

    private static ValidatableResponse correction(Integer id) {
        return as("notifier").get("/api/v1/corrections/" + id).then().statusCode(200);
    }

    private static ValidatableResponse item(Deer deer) {
        return as("notifier")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD")
                .then()
                .statusCode(200);
    }

    private static ValidatableResponse told(Deer deer, String outcome) {
        return as("notifier")
                .contentType("application/json")
                .body("{\"outcome\":\"" + outcome + "\",\"channel\":\"PHONE\",\"result\":\"REACHED\",\"at\":\""
                        + Instant.now() + "\"}")
                .put("/api/v1/notifications/" + deer.kit() + "/CWD/attempts/" + UUID.randomUUID())
                .then();
    }

    private static ValidatableResponse stub(Deer deer) {
        return given().accept("text/html")
                .formParam("code", deer.label(Part.STUB))
                .formParam("station", SeasonFixture.STATION)
                .post("/stub")
                .then()
                .statusCode(200);
    }
}
