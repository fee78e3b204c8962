package org.dentary.result.stub;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.notification.NotificationFixture;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What somebody without an account learns from a stub, and what not. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class StubPagesTest {
    /** Well formed and never issued: its kit was minted for this test. */
    private static final String UNKNOWN =
            LabelCode.of(new KitStem("Z9Z9Z9Z9"), Part.STUB).value();

    @Inject
    NotificationFixture telling;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        telling.ensure();
        sql("delete from stub_look_up");
    }

    @Test
    void aReleasedOutcomeIsReadByCodeAndDayOrStationWithoutAnAccount() {
        Deer deer = telling.broughtBy("Ida Hollowell", "555 0100");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        String stub = deer.label(Part.STUB);
        String page = look(stub, IntakeFixture.DIED_ON, "", 200);
        assertTrue(page.contains("was not detected in the tissue"), page);
        assertTrue(page.contains("555-0151") && page.contains(NotificationFixture.ADVICE.substring(0, 30)), page);
        assertFalse(page.contains("Hollowell") || page.replace(stub, "*").contains(deer.kit()), page);
        assertTrue(look(stub, "", SeasonFixture.STATION, 200).contains("was not detected"));
    }

    @Test
    void pendingAndSuspectAndAnUnreleasedDetectionReadTheSame() {
        Deer pending = telling.broughtBy("A", "1");
        Deer suspect = telling.broughtBy("B", "2");
        Deer detected = telling.broughtBy("C", "3");
        telling.outcome(suspect, "SUSPECT", "PENDING");
        telling.outcome(detected, "DETECTED", "PENDING");
        String words = words(pending);
        assertTrue(words.contains("is not finished"), words);
        assertEquals(words, words(suspect));
        assertEquals(words, words(detected));
    }

    @Test
    void aDetectionOnlyAsksForACallUntilSomebodyWasReached() {
        Deer deer = telling.broughtBy("D", "4");
        telling.outcome(deer, "DETECTED", "DETECTED");
        String before = words(deer);
        assertTrue(before.contains("Please call this number") && before.contains("555-0150"), before);
        assertFalse(before.contains("was detected in this"), before);
        IntakeFixture.as("notifier")
                .contentType("application/json")
                .body("{\"outcome\":\"DETECTED\",\"channel\":\"PHONE\",\"result\":\"REACHED\","
                        + "\"at\":\"2026-03-02T10:00:00-06:00\"}")
                .put("/api/v1/notifications/" + deer.kit() + "/CWD/attempts/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        assertTrue(words(deer).contains("was detected in this"));
        Deer unclear = telling.broughtBy("E", "5");
        telling.outcome(unclear, "INCONCLUSIVE", "INCONCLUSIVE");
        assertEquals(before, words(unclear), "a call is asked for in the same words");
    }

    @Test
    void aWrongCodeAndAWrongFactGetTheSameAnswer() {
        Deer deer = telling.broughtBy("F", "6");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        String wrongFact = look(deer.label(Part.STUB), "2025-11-15", "", 422);
        String wrongCode = look(UNKNOWN, "2025-11-15", "", 422);
        String noStub = look(deer.label(Part.NODE_LEFT), "2025-11-15", "", 422);
        assertEquals(
                wrongFact.replace(deer.label(Part.STUB), "*"),
                wrongCode.replace(UNKNOWN, "*"),
                "nothing may tell whether a code exists");
        assertEquals(wrongFact.replace(deer.label(Part.STUB), "*"), noStub.replace(deer.label(Part.NODE_LEFT), "*"));
        assertTrue(wrongFact.contains("We have nothing under this code"));
    }

    @Test
    void aWrongCodeAsksTheDatabaseWhatAWrongFactAsks() {
        Deer deer = telling.broughtBy("G", "7");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        assertEquals(asked(UNKNOWN), asked(deer.label(Part.STUB)), "a difference would take time that can be measured");
    }

    @Test
    void triesAreCountedPerCodeAndPerAddressWhetherTheCodeExistsOrNot() {
        Deer deer = telling.broughtBy("H", "8");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        for (String code : new String[] {deer.label(Part.STUB), UNKNOWN}) {
            sql("delete from stub_look_up");
            for (int i = 0; i < StubRules.TRIES_PER_CODE; i++) {
                look(code, "2025-11-15", "", 422);
            }
            look(code, IntakeFixture.DIED_ON, "", 429);
        }
        sql("delete from stub_look_up");
        for (int i = 0; i < StubRules.TRIES_PER_ADDRESS; i++) {
            Deer other = i % 2 == 0 ? deer : telling.broughtBy("I", "9");
            look(other.label(i % 4 == 0 ? Part.STUB : Part.OBEX), "2025-11-15", "", 422);
        }
        look(telling.broughtBy("J", "10").label(Part.STUB), IntakeFixture.DIED_ON, "", 429);
        assertEquals(0L, number("select count(*) from stub_look_up where code_digest like '%" + UNKNOWN + "%'"));
    }

    @Test
    void aVoidedStubAnAnimalEnteredInErrorAndAFormWithoutAFactTellNothing() {
        Deer deer = telling.broughtBy("K", "11");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        assertTrue(look(deer.label(Part.STUB), "", "", 422).contains("Give the day the deer died"));
        assertTrue(look("ABC", IntakeFixture.DIED_ON, "", 422).contains("code"));
        sql("update label set voided_at = now() where code = '" + deer.label(Part.STUB) + "'");
        look(deer.label(Part.STUB), IntakeFixture.DIED_ON, "", 422);
        sql("update label set voided_at = null where code = '" + deer.label(Part.STUB) + "'");
        sql("update animal set entered_in_error = true where kit = '" + deer.kit() + "'");
        look(deer.label(Part.STUB), IntakeFixture.DIED_ON, "", 422);
    }

    @Test
    void aHouseholdsPrefixIsOneAddress() {
        assertEquals(StubRules.address("2001:db8:1:2::1"), StubRules.address("2001:db8:1:2:ffff::9"));
        assertFalse(StubRules.address("2001:db8:1:2::1").equals(StubRules.address("2001:db8:1:3::1")));
        assertEquals("192.0.2.7", StubRules.address("192.0.2.7"));
    }

    @Test
    void thePageIsThereForEverybody() {
        given().get("/stub")
                .then()
                .statusCode(200)
                .header("Cache-Control", containsString("no-store"))
                .body(containsString("Code on your stub"));
    }

    private static String words(Deer deer) {
        return look(deer.label(Part.STUB), IntakeFixture.DIED_ON, "", 200).replace(deer.label(Part.STUB), "*");
    }

    private long asked(String code) {
        sql("delete from stub_look_up");
        Statistics statistics =
                entities.getEntityManagerFactory().unwrap(SessionFactory.class).getStatistics();
        statistics.setStatisticsEnabled(true);
        statistics.clear();
        look(code, "2025-11-15", "", 422);
        return statistics.getPrepareStatementCount();
    }

    private static String look(String code, String diedOn, String station, int status) {
        Response answer = given().formParam("code", code)
                .formParam("diedOn", diedOn)
                .formParam("station", station)
                .post("/stub");
        assertEquals(status, answer.statusCode(), answer.asString());
        return answer.asString();
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }

    private long number(String query) {
        return QuarkusTransaction.requiringNew()
                .call(() -> ((Number) entities.createNativeQuery(query).getSingleResult()).longValue());
    }
}
