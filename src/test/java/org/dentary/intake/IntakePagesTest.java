package org.dentary.intake;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** The pages of intake as a browser without script uses them. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class IntakePagesTest {
    @Inject
    IntakeFixture deer;

    @Test
    void aScannedLabelOpensTheFormOfItsKitWithWhatTheTableHasInCommon() {
        Deer one = deer.aDeer();
        String address = page("sampler")
                .redirects()
                .follow(false)
                .get("/intake?kit=" + one.label(Part.STUB) + "&samplingBasis=QUOTA")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        page("sampler")
                .get(address)
                .then()
                .statusCode(200)
                .body(containsString(one.kit().substring(0, 4) + "-" + one.kit().substring(4)))
                .body(containsString("value=\"QUOTA\" selected"));
        page("sampler")
                .get("/intake?kit=A2C4B6H8JK")
                .then()
                .statusCode(422)
                .body(containsString("character 5 is B"), containsString("value=\"A2C4B6H8JK\""));
    }

    @Test
    void aDeerIsTakenInByTheFormAndTheNextIsOffered() {
        Deer one = deer.aDeer();
        String next = post("sampler", "/intake/" + one.kit(), IntakeFixture.form(one))
                .statusCode(303)
                .header("Location", containsString("done=" + one.kit()))
                .extract()
                .header("Location");
        page("sampler")
                .get(next)
                .then()
                .statusCode(200)
                .body(containsString("Next deer"), containsString("Yearling"), containsString("1 specimen."));
        as("auditor")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("keyClass", equalTo("YEARLING_MILK_THIRD"))
                .body("specimens[0].side", equalTo("LEFT"))
                .body("jawReadings[0].readAt", equalTo("2025-11-14T15:20:00Z"));
        post("sampler", "/intake/" + one.kit(), IntakeFixture.form(one)).statusCode(303);
    }

    @Test
    void aFaultyFormIsShownAgainWithEveryFaultAndWhatWasTyped() {
        Deer one = deer.aDeer();
        Map<String, String> form = IntakeFixture.form(one);
        form.remove("sex");
        form.put("notes", "three-legged");
        post("sampler", "/intake/" + one.kit(), form)
                .statusCode(422)
                .body(containsString("say MALE, FEMALE or UNKNOWN"), containsString("three-legged"));
        form = IntakeFixture.form(one);
        form.put("specimens", one.label(Part.NODE_LEFT) + "\n" + deer.aDeer().label(Part.NODE_RIGHT));
        post("sampler", "/intake/" + one.kit(), form)
                .statusCode(422)
                .body(containsString("belongs to kit"), containsString(one.label(Part.NODE_LEFT)));
        form = IntakeFixture.form(one);
        form.remove("jaw.sixthTooth.dentine");
        post("sampler", "/intake/" + one.kit(), form)
                .statusCode(422)
                .body(containsString("the sixth tooth, the last? Pick an answer; “Unsure” is one."))
                .body(not(containsString("sixthTooth.dentine:")));
        as("auditor").get("/api/v1/animals/" + one.kit()).then().statusCode(404);
    }

    @Test
    void clinicalSignsStopAtTheCautionFirst() {
        Deer one = deer.aDeer();
        Map<String, String> form = IntakeFixture.form(one);
        form.put("clinicalSigns", "SEEN");
        post("sampler", "/intake/" + one.kit(), form)
                .statusCode(422)
                .body(containsString("Do not open the head"), containsString("name=\"stopRead\""));
        form.put("stopRead", "true");
        form.put("seenWith", "drooling; told the supervisor");
        post("sampler", "/intake/" + one.kit(), form).statusCode(303);
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body("clinicalSigns", equalTo("SEEN"));
    }

    @Test
    void factsAreCorrectedByTheSameFormAndWhatItDoesNotShowStays() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts().put("antlerPoints", 6).put("antlers", "HARD_BRANCHED"));
        page("sampler")
                .get("/intake/" + one.kit())
                .then()
                .body(containsString("Save the correction"), containsString("name=\"version\" value=\"0\""));
        Map<String, String> form = IntakeFixture.form(one);
        form.keySet().removeIf(name -> name.startsWith("jaw.") || name.equals("specimens"));
        form.put("jawStatus", "COLLECTED_TO_READ");
        form.put("version", "0");
        form.put("sex", "FEMALE");
        post("sampler", "/intake/" + one.kit(), form).statusCode(422).body(containsString("Say why"));
        form.put("reason", "seen again");
        post("sampler", "/intake/" + one.kit(), form).statusCode(303);
        as("auditor")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("sex", equalTo("FEMALE"))
                .body("antlerPoints", equalTo(6));
        form.put("notes", "stale");
        post("sampler", "/intake/" + one.kit(), form).statusCode(422).body(containsString("was changed since"));
    }

    @Test
    void aNumberThatTheFormDoesNotOfferIsKeptByACorrectionWithWhoGaveIt() {
        Deer one = deer.aDeer();
        ObjectNode facts = deer.facts();
        facts.putArray("identifiers")
                .addObject()
                .put("type", "HUNTER_TAG")
                .put("issuer", "Fen Valley office")
                .put("value", "7-01");
        deer.take(one, facts);
        page("sampler")
                .get("/intake/" + one.kit())
                .then()
                .body(
                        containsString("value=\"Fen Valley office\""),
                        containsString("<option value=\"HUNTER_TAG\" selected>"));
        Map<String, String> form = IntakeFixture.form(one);
        form.keySet().removeIf(name -> name.startsWith("jaw.") || name.equals("specimens"));
        form.put("jawStatus", "COLLECTED_TO_READ");
        form.put("version", "0");
        form.put("reason", "seen again");
        form.put("sex", "FEMALE");
        form.put("identifierType", "HUNTER_TAG");
        form.put("identifierIssuer", "Fen Valley office");
        form.put("identifier", "7-01");
        post("sampler", "/intake/" + one.kit(), form).statusCode(303);
        as("auditor")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("sex", equalTo("FEMALE"))
                .body("identifiers[0].type", equalTo("HUNTER_TAG"))
                .body("identifiers[0].issuer", equalTo("Fen Valley office"));
    }

    @Test
    void theStoryOpensWithWhatIsNextAndKeepsTheEmbargo() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        page("sampler")
                .get("/animals/" + one.kit())
                .then()
                .statusCode(200)
                .body(
                        containsString("What is next"),
                        containsString("Take the nodes"),
                        containsString("Read the jaw."),
                        containsString("Not tested"),
                        not(containsString("By the findings")));
        page("liaison").get("/animals/" + one.kit()).then().body(containsString("By the findings"));
        page("sampler")
                .get("/animals?q=" + one.kit())
                .then()
                .statusCode(200)
                .body(containsString("/animals/" + one.kit()), containsString("/api/v1/animals.csv?q=" + one.kit()));
        as("sampler")
                .get("/api/v1/animals.csv?q=" + one.kit())
                .then()
                .statusCode(200)
                .contentType(startsWith("text/csv"));
        page("sampler").get("/animals?limit=0").then().body(containsString("allowed is 1 to 1000"));
    }

    @Test
    void jawAndTissueAreAddedOnTheirPages() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        page("sampler")
                .get("/animals/" + one.kit() + "/jaw")
                .then()
                .statusCode(200)
                .body(containsString("cusps"));
        Map<String, String> jaw = IntakeFixture.form(one);
        jaw.keySet().removeIf(name -> !name.startsWith("jaw.") && !name.equals("at"));
        jaw.put("readingId", UUID.randomUUID().toString());
        post("sampler", "/animals/" + one.kit() + "/jaw", jaw).statusCode(303);
        jaw.put("readingId", UUID.randomUUID().toString());
        post("sampler", "/animals/" + one.kit() + "/jaw", jaw)
                .statusCode(422)
                .body(containsString("has read the jaw of kit"));
        page("liaison").get("/animals/" + one.kit() + "/specimens").then().statusCode(200);
        post("liaison", "/animals/" + one.kit() + "/specimens", Map.of("at", "2025-11-14T10:00", "specimens", ""))
                .statusCode(422)
                .body(containsString("Scan at least one label"));
        post(
                        "liaison",
                        "/animals/" + one.kit() + "/specimens",
                        Map.of(
                                "at",
                                "2025-11-14T10:00",
                                "specimens",
                                one.label(Part.NODE_LEFT) + "\r\n" + one.label(Part.OBEX) + "\r\n"))
                .statusCode(303);
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body("specimens", hasSize(2));
        page("auditor").get("/jaws").then().statusCode(200).body(containsString("To read again"));
        as("auditor").get("/api/v1/jaws/queue.csv").then().statusCode(200).body(startsWith("kit,task,since"));
    }

    @Test
    void aSwapIsPutRightWithBothAnimalsSideBySide() {
        Deer from = deer.aDeer();
        Deer to = deer.aDeer();
        deer.take(from, deer.yearlingWithLeftNode(from));
        deer.take(to, deer.facts());
        String code = from.label(Part.NODE_LEFT);
        String page = "/animals/" + from.kit() + "/put-right";
        String id = UUID.randomUUID().toString();
        post(
                        "sampler",
                        page,
                        Map.of(
                                "readingId",
                                id,
                                "code",
                                code,
                                "with",
                                to.label(Part.JAW),
                                "reason",
                                "swapped",
                                "evidence",
                                ""))
                .statusCode(422)
                .body(containsString("say what shows it"), containsString("value=\"swapped\""));
        post(
                        "sampler",
                        page,
                        Map.of(
                                "readingId",
                                id,
                                "code",
                                code,
                                "with",
                                to.label(Part.JAW),
                                "reason",
                                "swapped",
                                "evidence",
                                "photo"))
                .statusCode(303);
        page("epidemiologist")
                .get(page)
                .then()
                .statusCode(200)
                .body(allOf(
                        containsString("/animals/" + from.kit() + "\""),
                        containsString("/animals/" + to.kit() + "\""),
                        containsString("Waiting for a second person")));
        post("epidemiologist", page + "/confirmation", Map.of("code", code, "id", id))
                .statusCode(422)
                .body(containsString("Compare both animals"));
        post("epidemiologist", page + "/confirmation", Map.of("code", code, "id", id, "compared", "true"))
                .statusCode(303);
        as("auditor").get("/api/v1/animals/" + to.kit()).then().body("specimens[0].code", equalTo(code));
        post(
                        "epidemiologist",
                        "/animals/" + from.kit() + "/same-as",
                        Map.of("with", to.kit(), "linkReason", "one deer", "linkEvidence", "tag"))
                .statusCode(303);
        as("auditor").get("/api/v1/animals/" + from.kit()).then().body("sameAs", equalTo(to.kit()));
        post("epidemiologist", "/animals/" + from.kit() + "/same-as", Map.of("undo", "true", "linkReason", "two deer"))
                .statusCode(303);
        page("epidemiologist").get(page).then().statusCode(200).body(containsString("counts for itself again"));
    }

    @Test
    void theThirdPersonDecidesOnAPageThatShowsTheReadings() {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one));
        UUID second = UUID.randomUUID();
        deer.put("coordinator", "/animals/" + one.kit() + "/jaw-readings/" + second, deer.adult(second))
                .statusCode(201);
        String page = "/animals/" + one.kit() + "/age";
        page("epidemiologist").get(page).then().statusCode(200).body(containsString(second.toString()));
        post("coordinator", page, Map.of("version", "0", "stands", second.toString(), "reason", "mine"))
                .statusCode(422)
                .body(containsString("gave a reading of this jaw"));
        post("epidemiologist", page, Map.of("version", "0", "reason", "none chosen"))
                .statusCode(422)
                .body(containsString("give either reading or ageClass"));
        post("epidemiologist", page, Map.of("version", "0", "stands", second.toString(), "reason", "worn"))
                .statusCode(303);
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body("ageClass", equalTo("ADULT"));
    }

    @Test
    void theAnswerAboutTheMeatIsTheAgencysAndOneTapAway() {
        Deer one = deer.aDeer();
        for (String address : List.of("/intake", "/intake/" + one.kit())) {
            page("sampler")
                    .get(address)
                    .then()
                    .statusCode(200)
                    .body(
                            containsString("If the hunter asks about the meat"),
                            containsString("leave your own opinion out"));
        }
    }

    /** The slips that laboratories name: the lateral node, salivary gland, muscle, fat, thymus (common practice, no source). */
    @Test
    void whereTissueIsEnteredTheRightNodeIsToldFromWhatIsTakenForIt() {
        Deer one = deer.aDeer();
        page("sampler").get("/intake/" + one.kit()).then().body(containsString("Is it the right node?"));
        deer.take(one, deer.facts());
        page("sampler")
                .get("/animals/" + one.kit() + "/specimens")
                .then()
                .body(
                        containsString("The lateral one"),
                        containsString("salivary gland"),
                        containsString("instructions stand above"));
    }

    /** A pound is 0.45359237 kg (NIST Special Publication 811, appendix B): 120 lb are 54.4 kg. */
    @Test
    void whomToTellAndWhatWasWeighedGoWithTheFormAndAreNotShownAgain() {
        Deer one = deer.aDeer();
        Map<String, String> form = IntakeFixture.form(one);
        form.putAll(Map.of(
                "contactName", "Osric Penhale",
                "contactPhone", "555-0177",
                "contactMessages", "true",
                "pointWords", "below the ruined kiln",
                "mass", "120",
                "massUnit", "LB",
                "lactating", "true"));
        form.put("fetusMillimetres", "long");
        post("sampler", "/intake/" + one.kit(), form)
                .statusCode(422)
                .body(containsString("is not a number"), containsString("Osric Penhale"));
        form.put("fetusMillimetres", "");
        form.put("pointLatitude", "91");
        form.put("pointLongitude", "-94.5");
        post("sampler", "/intake/" + one.kit(), form)
                .statusCode(422)
                .body(containsString("a latitude is -90 to 90 degrees"));
        form.remove("pointLatitude");
        form.remove("pointLongitude");
        post("sampler", "/intake/" + one.kit(), form).statusCode(303).header("Location", not(containsString("Osric")));
        as("auditor")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("fieldDressedKilograms", equalTo(54.4f), "lactating", equalTo(true));
        page("sampler")
                .get("/intake/" + one.kit())
                .then()
                .body(containsString("value=\"54.4\""), not(containsString("Osric")), not(containsString("kiln")));
        String later = "/animals/" + one.kit() + "/contact";
        page("sampler")
                .get(later)
                .then()
                .statusCode(200)
                .body(containsString("kept already"), not(containsString("Osric")));
        page("epidemiologist").get(later).then().statusCode(403);
        post("notifier", later, Map.of("contactPhone", "555-0178", "contactName", "Osric Penhale"))
                .statusCode(303);
        post("notifier", later, Map.of("contactMessages", "true"))
                .statusCode(422)
                .body(containsString("give a contact, a point or both"));
        as("notifier")
                .get("/api/v1/animals/" + one.kit() + "/contact?purpose=test")
                .then()
                .body("contact.phone", equalTo("555-0178"), "contact.mayBeMessaged", equalTo(false))
                .body("point.words", equalTo("below the ruined kiln"));
    }

    private static RequestSpecification page(String account) {
        return as(account).accept("text/html");
    }

    private static ValidatableResponse post(String account, String path, Map<String, String> form) {
        return page(account)
                .redirects()
                .follow(false)
                .contentType("application/x-www-form-urlencoded; charset=UTF-8")
                .formParams(form)
                .post(path)
                .then();
    }
}
