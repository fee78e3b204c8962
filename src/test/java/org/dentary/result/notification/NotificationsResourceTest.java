package org.dentary.result.notification;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.util.List;
import java.util.UUID;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who is told what, over HTTP. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class NotificationsResourceTest {
    @Inject
    NotificationFixture telling;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        telling.ensure();
    }

    @Test
    void aReleasedOutcomeIsToldOnceAndToldAgainWhenItIsRevised() {
        Deer deer = telling.broughtBy("Ida Hollowell", "555 0100");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        one(deer).body("item.state", equalTo("DUE")).body("item.how", equalTo("LETTER_OR_MESSAGE"));
        UUID sent = UUID.randomUUID();
        attempt(deer, sent, "NOT_DETECTED", "LETTER", "SENT").statusCode(201).body("item.state", equalTo("TOLD"));
        attempt(deer, sent, "NOT_DETECTED", "LETTER", "SENT").statusCode(200).body("attempts", hasSize(1));
        attempt(deer, sent, "NOT_DETECTED", "PHONE", "REACHED").statusCode(409);
        telling.outcome(deer, "DETECTED", "DETECTED");
        one(deer)
                .body("item.state", equalTo("TELL_AGAIN"))
                .body("item.toldBefore", equalTo("NOT_DETECTED"))
                .body("item.how", equalTo("PHONE_THEN_LETTER"));
        attempt(deer, UUID.randomUUID(), "NOT_DETECTED", "PHONE", "REACHED")
                .statusCode(409)
                .body("code", equalTo("OUTCOME_CHANGED"));
        attempt(deer, UUID.randomUUID(), "DETECTED", "PHONE", "NO_ANSWER")
                .statusCode(201)
                .body("item.state", equalTo("TELL_AGAIN"));
        attempt(deer, UUID.randomUUID(), "DETECTED", "PHONE", "REACHED")
                .statusCode(201)
                .body("item.state", equalTo("TOLD"))
                .body("attempts", hasSize(3));
    }

    @Test
    void aLetterThatCameBackAndAnEntryThatWasWrongLeaveItToBeTold() {
        Deer deer = telling.broughtBy("Otto Brandvold", "555 0101");
        telling.outcome(deer, "UNSUITABLE", "UNSUITABLE");
        attempt(deer, UUID.randomUUID(), "UNSUITABLE", "LETTER", "SENT").body("item.state", equalTo("TOLD"));
        attempt(deer, UUID.randomUUID(), "UNSUITABLE", "LETTER", "RETURNED").body("item.state", equalTo("DUE"));
        UUID wrong = UUID.randomUUID();
        attempt(deer, wrong, "UNSUITABLE", "PHONE", "REACHED").body("item.state", equalTo("TOLD"));
        put(deer, UUID.randomUUID(), "UNSUITABLE", "PHONE", "NO_ANSWER", wrong)
                .statusCode(201)
                .body("item.state", equalTo("DUE"))
                .body("item.attempts", equalTo(3));
        put(deer, UUID.randomUUID(), "UNSUITABLE", "PHONE", "NO_ANSWER", wrong)
                .statusCode(409)
                .body("code", equalTo("ALREADY_CORRECTED"));
    }

    @Test
    void nothingUnreleasedStandsOnTheList() {
        Deer pending = telling.broughtBy("Una Fairweather", "555 0102");
        Deer suspect = telling.broughtBy("Sven Fairweather", "555 0103");
        telling.outcome(suspect, "SUSPECT", "PENDING");
        for (Deer deer : List.of(pending, suspect)) {
            as("notifier")
                    .get("/api/v1/notifications/" + deer.kit() + "/CWD")
                    .then()
                    .statusCode(404)
                    .body("code", equalTo("NOTHING_TO_TELL"));
        }
        as("notifier")
                .get("/api/v1/notifications?limit=1000")
                .then()
                .body(not(containsString(suspect.kit())), not(containsString(pending.kit())));
    }

    /** A place is kept with the contacts and names nobody: there is no letter to make from it. */
    @Test
    void aPlaceAloneIsNobodysContactUntilSomebodyIsAdded() {
        Deer detected = telling.withoutContact();
        telling.outcome(detected, "DETECTED", "DETECTED");
        keeps(detected, "{\"point\": {\"words\": \"north shore of the second pond\"}}");
        one(detected).body("item.state", equalTo("NO_CONTACT")).body("item.contactKept", equalTo(false));
        keeps(detected, "{\"contact\": {\"name\": \"Una Fairweather\"}}");
        one(detected).body("item.state", equalTo("DUE")).body("item.contactKept", equalTo(true));
    }

    private static void keeps(Deer deer, String body) {
        as("notifier")
                .contentType("application/json")
                .body(body)
                .put("/api/v1/animals/" + deer.kit() + "/contact")
                .then()
                .statusCode(204);
    }

    @Test
    void aDetectionThatNobodyLeftAContactForIsLookedForAndOthersAreNot() {
        Deer detected = telling.withoutContact();
        Deer other = telling.withoutContact();
        telling.outcome(detected, "DETECTED", "DETECTED");
        telling.outcome(other, "NOT_DETECTED", "NOT_DETECTED");
        one(detected).body("item.state", equalTo("NO_CONTACT")).body("item.contactKept", equalTo(false));
        as("notifier")
                .get("/api/v1/notifications/" + other.kit() + "/CWD")
                .then()
                .statusCode(404);
    }

    @Test
    void whileALabelIsInDoubtNothingIsTold() {
        Deer deer = telling.broughtBy("Mara Quist", "555 0104");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "update animal set not_attributable = true where kit = '" + deer.kit() + "'")
                        .executeUpdate());
        one(deer).body("item.state", equalTo("HELD"));
        attempt(deer, UUID.randomUUID(), "NOT_DETECTED", "PHONE", "REACHED")
                .statusCode(409)
                .body("code", equalTo("LABELS_IN_DOUBT"));
        as("notifier")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD/letter.pdf?purpose=letter")
                .then()
                .statusCode(409);
    }

    @Test
    void theListIsPagedByAKeyWithDetectionsFirstAndStreamsAsCsv() {
        Deer first = telling.broughtBy("Ada Lindqvist", "555 0105");
        Deer second = telling.broughtBy("Bo Lindqvist", "555 0106");
        telling.outcome(first, "NOT_DETECTED", "NOT_DETECTED");
        telling.outcome(second, "DETECTED", "DETECTED");
        var page = as("auditor")
                .get("/api/v1/notifications?state=OPEN&limit=1")
                .then()
                .statusCode(200);
        page.body("items", hasSize(1)).body("items[0].outcome", equalTo("DETECTED"));
        String link = page.extract().header("Link");
        assertTrue(link.endsWith("; rel=\"next\""), link);
        String csv = as("auditor")
                .accept("text/csv")
                .get("/api/v1/notifications?state=OPEN")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(csv.startsWith("kit,disease,outcome,state,how,"), csv);
        assertTrue(csv.indexOf(second.kit()) > 0 && csv.indexOf(second.kit()) < csv.indexOf(first.kit()));
        assertFalse(csv.contains("Lindqvist") || csv.contains("555 0105"));
        as("auditor").get("/api/v1/notifications?state=LATE").then().statusCode(422);
        as("auditor").get("/api/v1/notifications?after=x").then().statusCode(422);
    }

    @Test
    void onlyThoseWhoTellMayRecordATryAndOthersSeeNoList() {
        Deer deer = telling.broughtBy("Per Aune", "555 0107");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        for (String account : List.of("sampler", "liaison", "epidemiologist")) {
            as(account).get("/api/v1/notifications").then().statusCode(403);
        }
        as("auditor")
                .contentType("application/json")
                .body(body("NOT_DETECTED", "PHONE", "REACHED", null))
                .put("/api/v1/notifications/" + deer.kit() + "/CWD/attempts/" + UUID.randomUUID())
                .then()
                .statusCode(403);
        as("auditor")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD/letter.pdf?purpose=look")
                .then()
                .statusCode(403);
        attempt(deer, UUID.randomUUID(), "NOT_DETECTED", "LETTER", "NO_ANSWER")
                .statusCode(422)
                .body("errors[0].rule", equalTo("NOT_OF_CHANNEL"));
        as("notifier")
                .contentType("application/json")
                .body(body("NOT_DETECTED", "PHONE", "REACHED", null).replace("2026-03-02", "2099-03-02"))
                .put("/api/v1/notifications/" + deer.kit() + "/CWD/attempts/" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body("errors[0].rule", equalTo("IN_THE_FUTURE"));
    }

    @Test
    void aCallerIsFoundByRegistrationPhoneOrNameAndEverySearchIsAudited() {
        Deer deer = telling.broughtBy("Inés de la Mora", "+1 (555) 010-8811");
        search("REGISTRATION", "r-" + deer.kit()).body("items.kit", equalTo(List.of(deer.kit())));
        search("PHONE", "555.010.8811").body("items.kit", equalTo(List.of(deer.kit())));
        search("NAME", "MORA, ines de  la").body("items.kit", equalTo(List.of(deer.kit())));
        search("NAME", "Mora").body("items", hasSize(0));
        assertEquals(
                3L,
                number("select count(*) from read_audit where what = 'contact-search' and key = '" + deer.kit()
                        + "' and purpose = 'caller asks' and actor = 'T_NOTIFIER'"));
        assertTrue(number("select count(*) from read_audit where what = 'contact-search' and key = 'none'"
                        + " and purpose = 'caller asks'")
                > 0);
        as("notifier")
                .contentType("application/json")
                .body("{\"by\":\"PHONE\",\"value\":\"5550108811\",\"purpose\":\" \"}")
                .post("/api/v1/caller-searches")
                .then()
                .statusCode(422);
        for (String account : List.of("sampler", "liaison", "epidemiologist", "auditor")) {
            as(account)
                    .contentType("application/json")
                    .body("{\"by\":\"PHONE\",\"value\":\"5550108811\",\"purpose\":\"x\"}")
                    .post("/api/v1/caller-searches")
                    .then()
                    .statusCode(403);
        }
    }

    @Test
    void theWordsForPendingAndSuspectAreTheSame() {
        Deer pending = telling.broughtBy("Rolf Eide", "555 7001");
        Deer suspect = telling.broughtBy("Rolf Eide", "555 7001");
        Deer detected = telling.broughtBy("Rolf Eide", "555 7001");
        telling.outcome(suspect, "SUSPECT", "PENDING");
        telling.outcome(detected, "DETECTED", "PENDING");
        List<String> said = search("PHONE", "5557001")
                .body("items", hasSize(3))
                .extract()
                .path("items.words.flatten().findAll { it.disease == 'CWD' }.say");
        assertEquals(1, said.stream().distinct().count(), said.toString());
        assertTrue(said.get(0).contains("not finished"), said.toString());
        assertFalse(pending.kit().isEmpty());
    }

    @Test
    void aLetterSaysWhatWasReviewedWithTheAgencysAdviceAndPromisesNothing() throws IOException {
        Deer deer = telling.broughtBy("Gudrun Vale", "555 0110");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        String text = letter(deer);
        for (String part : List.of(
                "Gudrun Vale",
                "7 Larch Lane",
                "Test wildlife agency",
                "was not detected in the tissue",
                "can be missed",
                "not an inspection of food",
                NotificationFixture.ADVICE.substring(0, 40),
                "555-0151",
                "555-0150",
                deer.kit(),
                "November 14, 2025")) {
            assertTrue(text.contains(part), part + " is missing in: " + text);
        }
        assertFalse(text.matches("(?is).*\\b(safe|negative|clean|edible)\\b.*"), text);
        assertEquals(
                1L,
                number("select count(*) from read_audit where what = 'contact' and purpose = 'letter' and key = '"
                        + deer.kit() + "'"));
        as("notifier")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD/letter.pdf")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("purpose"));
    }

    @Test
    void aDetectionIsCalledAboutBeforeALetterLeaves() throws IOException {
        Deer deer = telling.broughtBy("Knut Orre", "555 0111");
        telling.outcome(deer, "DETECTED", "DETECTED");
        as("notifier")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD/letter.pdf?purpose=letter")
                .then()
                .statusCode(409)
                .body("code", equalTo("CALL_FIRST"));
        attempt(deer, UUID.randomUUID(), "DETECTED", "PHONE", "NO_ANSWER").statusCode(201);
        assertTrue(letter(deer).contains("was detected in its tissue"));
    }

    @Test
    void aWordingIsWrittenByOneAndReviewedByAnotherAndPromisesNothing() {
        // From its review on it is what letters of other tests say.
        String good = "It was not tested for {disease}. No result says nothing about the animal. {agency},"
                + " {agencyPhone}, advises: {agencyAdvice}";
        int next = 1
                + as("coordinator")
                        .get("/api/v1/letter-wordings")
                        .then()
                        .extract()
                        .<List<Integer>>path("items.findAll { it.outcome == 'NOT_TESTED' }.edition")
                        .stream()
                        .mapToInt(i -> i)
                        .max()
                        .orElse(0);
        String path = "/api/v1/letter-wordings/NOT_TESTED/" + next;
        word(path, "The meat is safe. {name}")
                .statusCode(422)
                .body(
                        "errors.rule",
                        equalTo(List.of(
                                "PLACE_UNKNOWN",
                                "PLACE_MISSING",
                                "PLACE_MISSING",
                                "PLACE_MISSING",
                                "PLACE_MISSING",
                                "WORD_PROMISES")));
        word("/api/v1/letter-wordings/NOT_TESTED/" + (next + 3), good).statusCode(409);
        word(path, good).statusCode(201).body("reviewedBy", nullValue());
        word(path, good).statusCode(200);
        word(path, good + " More.").statusCode(409).body("code", equalTo("EDITION_WRITTEN"));
        as("coordinator").post(path + "/review").then().statusCode(403).body("code", equalTo("SECOND_PERSON"));
        as("coordinator-two")
                .post(path + "/review")
                .then()
                .statusCode(200)
                .body("reviewedBy", equalTo("T_COORDINATOR_TWO"));
        as("notifier").post(path + "/review").then().statusCode(403);
    }

    private static ValidatableResponse word(String path, String wording) {
        return as("coordinator")
                .contentType("application/json")
                .body("{\"wording\":\"" + wording + "\"}")
                .put(path)
                .then();
    }

    private static String letter(Deer deer) throws IOException {
        byte[] pdf = as("notifier")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD/letter.pdf?purpose=letter")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        try (PdfReader reader = new PdfReader(pdf)) {
            return new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
        }
    }

    private static ValidatableResponse search(String by, String value) {
        return as("notifier")
                .contentType("application/json")
                .body("{\"by\":\"" + by + "\",\"value\":\"" + value + "\",\"purpose\":\"caller asks\"}")
                .post("/api/v1/caller-searches")
                .then()
                .statusCode(200);
    }

    private static ValidatableResponse one(Deer deer) {
        return as("notifier")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD")
                .then()
                .statusCode(200);
    }

    private static ValidatableResponse attempt(Deer deer, UUID id, String outcome, String channel, String result) {
        return put(deer, id, outcome, channel, result, null);
    }

    private static ValidatableResponse put(
            Deer deer, UUID id, String outcome, String channel, String result, UUID corrects) {
        return as("notifier")
                .contentType("application/json")
                .body(body(outcome, channel, result, corrects))
                .put("/api/v1/notifications/" + deer.kit() + "/CWD/attempts/" + id)
                .then();
    }

    private static String body(String outcome, String channel, String result, UUID corrects) {
        return "{\"outcome\":\"" + outcome + "\",\"channel\":\"" + channel + "\",\"result\":\"" + result
                + "\",\"at\":\"2026-03-02T10:00:00-06:00\""
                + (corrects == null ? "" : ",\"corrects\":\"" + corrects + "\"") + "}";
    }

    private long number(String query) {
        return QuarkusTransaction.requiringNew()
                .call(() -> ((Number) entities.createNativeQuery(query).getSingleResult()).longValue());
    }
}
