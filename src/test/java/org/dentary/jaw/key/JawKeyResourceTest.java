package org.dentary.jaw.key;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class JawKeyResourceTest {
    private static final String NAME = "jaw-key-test";
    private static final String PASSWORD = "six cheek teeth";

    @Inject
    AccountService accounts;

    @BeforeEach
    void account() {
        accounts.put(NAME, null, Role.AUDITOR, List.of("*"), PASSWORD);
    }

    @Test
    void agesAYearlingAndSaysHow() {
        post("""
                {"diedOn": "2025-11-15", "cheekTeeth": 6,
                 "thirdTooth": {"cusps": 2, "eruption": "ERUPTING", "dentine": "NOT_EXPOSED"},
                 "sixthTooth": {"eruption": "ERUPTING", "dentine": "NOT_EXPOSED"}}
                """)
                .statusCode(200)
                .body("keyClass", equalTo("YEARLING_NEW_THIRD"))
                .body("ageClass", equalTo("YEARLING"))
                .body("label", equalTo("Yearling, new third tooth come through"))
                .body("novemberMonths", equalTo(18))
                .body("ageInMonths.from", equalTo(15.0f))
                .body("ageInMonths.to", equalTo(18.2f))
                .body("certainty", equalTo("CLEAR"))
                .body("steps", hasSize(6))
                .body("steps[1].question", startsWith("How many cheek teeth"))
                .body("steps[1].answer", equalTo("Six"))
                .body("steps[5].leadsTo", equalTo("Yearling, new third tooth come through"))
                .body("contradictions", hasSize(0))
                .body("needsSecondReader", equalTo(false));
    }

    @Test
    void keepsADisputedReadingWithoutAClass() {
        post("""
                {"cheekTeeth": 5, "thirdTooth": {"cusps": 2, "eruption": "FULL", "dentine": "DEFINED"}}
                """)
                .statusCode(200)
                .body("keyClass", nullValue())
                .body("ageClass", equalTo("UNKNOWN"))
                .body("novemberMonths", nullValue())
                .body("ageInMonths", nullValue())
                .body("certainty", equalTo("UNRESOLVED"))
                .body("contradictions.rule", hasItems("J02", "J06"))
                .body("contradictions[0].severity", equalTo("REFUSE"))
                .body("contradictions[0].teeth", equalTo(List.of(3)))
                .body("needsSecondReader", equalTo(true));
    }

    @Test
    void refusesWhatTheKeyNeedsAndWasNotGivenNamingEachField() {
        post("{}")
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors.field", equalTo(List.of("cheekTeeth", "thirdTooth.cusps")))
                .body("errors.rule", equalTo(List.of("REQUIRED", "REQUIRED")));
        post("{\"cheekTeeth\": 6, \"thirdTooth\": {\"cusps\": 3}, \"unsure\": [\"sixthTooth.dentine\"]}")
                .statusCode(200)
                .body("certainty", equalTo("UNRESOLVED"));
    }

    @Test
    void namesTheFieldTheValueAndWhatIsAllowed() {
        post("{\"cheekTeeth\": 9, \"thirdTooth\": {\"cusps\": 3}}")
                .statusCode(422)
                .body("errors[0].field", equalTo("cheekTeeth"))
                .body("errors[0].message", equalTo("cheekTeeth is 9; allowed is 0 to 6."));
        post("{\"cheekTeeth\": 6, \"thirdTooth\": {\"cusps\": 2, \"eruption\": \"HALF\"}}")
                .statusCode(422)
                .body("errors[0].field", equalTo("thirdTooth.eruption"))
                .body("errors[0].message", containsString("NOT_ERUPTED, ERUPTING, FULL"));
        post("{\"cheekTeeth\": \"many\"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("cheekTeeth"))
                .body("errors[0].message", containsString("whole number"));
        post("{\"diedOn\": \"2999-01-01\", \"cheekTeeth\": 5, \"thirdTooth\": {\"cusps\": 3}}")
                .statusCode(422)
                .body("errors[0].field", equalTo("diedOn"));
    }

    @Test
    void answersThatASpeciesHasNoReviewedKey() {
        post("{\"species\": \"SITATUNGA\"}")
                .statusCode(200)
                .body("label", equalTo("No reviewed key for this species"))
                .body("ageClass", equalTo("UNKNOWN"))
                .body("certainty", equalTo("UNRESOLVED"));
    }

    @Test
    void takesAYearClassByItsCode() {
        post("""
                {"cheekTeeth": 6, "examinersClass": "ADULT", "examinersYearClass": "6.5_PLUS",
                 "thirdTooth": {"cusps": 2, "eruption": "FULL", "dentine": "DEFINED"},
                 "sixthTooth": {"eruption": "FULL", "dentine": "DEFINED"}}
                """).statusCode(200).body("ageClass", equalTo("ADULT")).body("contradictions.rule", hasItem("J24"));
    }

    @Test
    void asksForAnAccount() {
        given().contentType("application/json")
                .body("{}")
                .post("/api/v1/jaw-key")
                .then()
                .statusCode(401);
    }

    @Test
    void servesTheDrawingsAndThePrintedKey() {
        given().get("/jaw-drawings.svg")
                .then()
                .statusCode(200)
                .contentType("image/svg+xml")
                .body(containsString("third-two-cusps"));
        given().get("/jaw-drawings/third-loose-cap.svg").then().statusCode(200).body(containsString("currentColor"));
        given().get("/jaw-drawings/nose.svg").then().statusCode(404);
        given().auth()
                .preemptive()
                .basic(NAME, PASSWORD)
                .get("/jaw-key.pdf")
                .then()
                .statusCode(200)
                .contentType("application/pdf");
    }

    @Test
    void printsTheCautionsInForceOnOnePage() throws IOException {
        byte[] pdf = given().auth()
                .preemptive()
                .basic(NAME, PASSWORD)
                .get("/jaw-key.pdf")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        Files.createDirectories(Path.of("target", "screenshots"));
        Files.write(Path.of("target", "screenshots", "jaw-key.pdf"), pdf);
        PdfReader reader = new PdfReader(pdf);
        String words = new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
        assertEquals(1, reader.getNumberOfPages());
        assertTrue(words.contains("no ground for a prize"), words);
        assertTrue(words.contains("Do not open the head"), words);
        assertFalse(words.contains("Formalin"), words);
    }

    @Test
    void thePageRefusesAnAnswerThatIsNone() {
        given().auth()
                .preemptive()
                .basic(NAME, PASSWORD)
                .accept("text/html")
                .get("/jaw-key?rowSeen=WHOLE&cheekTeeth=12")
                .then()
                .statusCode(422)
                .body(containsString("cheekTeeth"));
    }

    private static ValidatableResponse post(String body) {
        return given().auth()
                .preemptive()
                .basic(NAME, PASSWORD)
                .contentType("application/json")
                .body(body)
                .post("/api/v1/jaw-key")
                .then();
    }
}
