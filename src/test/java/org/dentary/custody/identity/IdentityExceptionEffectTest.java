package org.dentary.custody.identity;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.dentary.story.dossier.Papers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an identity exception does to an animal: held, counted with a footnote for ever, or attributed to nobody. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class IdentityExceptionEffectTest {
    @Inject
    IdentityFixture people;

    @Inject
    FindingsFixture findings;

    @Inject
    IntakeFixture intake;

    @TempDir
    Path folder;

    private static ValidatableResponse story(String account, Deer deer) {
        return as(account).get("/api/v1/animals/" + deer.kit()).then().statusCode(200);
    }

    private static JsonPath report(String unit, String more) {
        return as("epidemiologist")
                .get("/api/v1/prevalence?season=T2025&unit=" + unit + more)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private static int leaving(JsonPath report, String step) {
        return report.getInt("takenToCounted.find { it.step == '" + step + "' }.animals");
    }

    @Test
    void untilDecidedTheAnimalIsCountedNowhereAndAGrantedOneCountsWithAFootnoteInEveryForm() throws IOException {
        String unit = findings.unitWithoutTheDisease();
        Deer deer = people.received(unit);
        Deer other = people.received(unit);
        people.finds(deer, "NOT_DETECTED");
        people.finds(other, "NOT_DETECTED");
        UUID id = people.asked(deer.label(Part.NODE_LEFT));
        JsonPath held = report(unit, "");
        assertEquals(1, leaving(held, "NOT_ATTRIBUTABLE"));
        assertEquals(1, leaving(held, "COUNTED"));
        assertEquals(List.of(), held.getList("footnotes"));
        story("sampler", deer)
                .body("outcomes[0].exclusion", equalTo("NOT_ATTRIBUTABLE"))
                .body("identityExceptions[0].state", equalTo("OPEN"))
                .body("next.what", hasItem("IDENTITY_EXCEPTION"))
                .body("next.what", not(hasItem("PUT_RIGHT")));
        people.granted(id);
        JsonPath counted = report(unit, "");
        assertEquals(0, leaving(counted, "NOT_ATTRIBUTABLE"));
        assertEquals(2, leaving(counted, "COUNTED"));
        assertEquals(List.of("IDENTITY_EXCEPTION"), counted.getList("footnotes.code"));
        assertEquals(List.of(1), counted.getList("footnotes.animals"));
        String sentence = counted.getString("footnotes[0].text");
        assertTrue(sentence.startsWith("1 counted animal: a specimen came to the laboratory under a label"), sentence);
        assertEquals(
                1, leaving(report(unit, "&identityException=false"), "COUNTED"), "counted without them on request");
        as("epidemiologist")
                .get("/api/v1/line-list?season=T2025&disease=CWD&unit=" + unit + "&identityException=true")
                .then()
                .body("items.kit", contains(deer.kit()))
                .body("items[0].identityException", equalTo(true))
                .body("items[0].outcome", equalTo("NOT_DETECTED"));
        String csv = as("epidemiologist")
                .get("/api/v1/line-list.csv?season=T2025&unit=" + unit)
                .asString();
        assertTrue(csv.lines().findFirst().orElseThrow().endsWith(",identityException"), csv);
        assertTrue(csv.lines().anyMatch(line -> line.startsWith(deer.kit() + ",") && line.endsWith(",true")), csv);
        assertTrue(csv.lines().anyMatch(line -> line.startsWith(other.kit() + ",") && line.endsWith(",false")), csv);
        Path pdf = folder.resolve("report.pdf");
        Files.write(
                pdf,
                as("epidemiologist")
                        .get("/api/v1/prevalence.pdf?season=T2025&unit=" + unit)
                        .asByteArray());
        String words = Papers.words(pdf).replaceAll("\\s+", " ");
        assertTrue(words.contains(sentence), words);
    }

    @Test
    void theFootnoteOutlivesRelabelingLinksCorrectionsAndCuts() {
        String unit = findings.unitWithoutTheDisease();
        Deer deer = people.received(unit);
        Deer second = people.taken(unit);
        String code = deer.label(Part.NODE_LEFT);
        UUID finding = people.finds(deer, "NOT_DETECTED");
        people.granted(people.asked(code));
        UUID cut = UUID.randomUUID();
        intake.put("epidemiologist", "/data-cuts/" + cut, "{\"season\":\"T2025\",\"name\":\"cut " + cut + "\"}")
                .statusCode(201);
        String corrected = "{\"specimens\":[\"" + code + "\"],\"method\":\"T_SCREEN\",\"stage\":\"SCREENING\","
                + "\"finding\":\"NOT_DETECTED\",\"status\":\"CORRECTED\",\"corrects\":\"" + finding
                + "\",\"accession\":\"X-" + deer.kit() + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"" + people.today()
                + "\","
                + "\"reportedOn\":\"" + people.today() + "\",\"measuredValue\":\"OD 0.04\"}";
        intake.put("liaison", "/findings/" + UUID.randomUUID(), corrected).statusCode(201);
        assertEquals(List.of("IDENTITY_EXCEPTION"), footnotes(deer), "after a correction");
        // What is under the label came from the second animal: tissue, finding and exception go with it.
        String swap = "/specimens/" + code + "/re-attribution/" + UUID.randomUUID();
        intake.put(
                        "coordinator",
                        swap,
                        "{\"kit\":\"" + second.kit() + "\",\"reason\":\"trays mixed\",\"evidence\":\"photo\"}")
                .statusCode(201);
        json("epidemiologist").post("/api/v1" + swap + "/confirmation").then().statusCode(200);
        assertEquals(List.of(""), footnotes(deer), "the tissue is no more this animal's");
        assertEquals(List.of("IDENTITY_EXCEPTION"), footnotes(second), "after re-attribution");
        story("auditor", second).body("identityExceptions.code", contains(code));
        // The second turns out to be the first's animal: the one that counts tells of it.
        intake.put(
                        "epidemiologist",
                        "/animals/" + second.kit() + "/same-as/" + deer.kit(),
                        "{\"reason\":\"one deer, two kits\",\"evidence\":\"same tag\"}")
                .statusCode(201);
        assertEquals(List.of("IDENTITY_EXCEPTION"), footnotes(deer), "after linking");
        story("auditor", deer).body("outcome", equalTo("NOT_DETECTED"));
        assertEquals(1, leaving(report(unit, ""), "COUNTED"));
        assertEquals(List.of(1), report(unit, "").getList("footnotes.animals"));
        json("epidemiologist")
                .body("{\"reason\":\"the tag was misread\"}")
                .post("/api/v1/animals/" + second.kit() + "/same-as/undoing")
                .then()
                .statusCode(200);
        assertEquals(List.of(""), footnotes(deer), "after undoing");
        story("auditor", deer).body("outcome", equalTo("NOT_TESTED"));
        assertEquals(
                List.of("IDENTITY_EXCEPTION"), report(unit, "&cut=" + cut).getList("footnotes.code"), "on the cut");
    }

    private static List<String> footnotes(Deer deer) {
        return story("auditor", deer)
                .extract()
                .jsonPath()
                .getList("outcomes.findAll { it.disease == 'CWD' }.footnotes");
    }

    @Test
    void whatIsFoundInARefusedSpecimenSpeaksOfNobodyAndTheAnimalsOtherTissueStillDoes() {
        String unit = findings.unitWithoutTheDisease();
        Deer deer = people.received(unit);
        String left = deer.label(Part.NODE_LEFT);
        people.finds(deer, "NOT_DETECTED");
        people.refused(people.asked(left));
        story("coordinator", deer)
                .body("outcomes[0].exclusion", equalTo("NOT_ATTRIBUTABLE"))
                .body("outcomes[0].outcome", equalTo("NOT_TESTED"))
                .body("outcomes[0].explanation", containsString("identity was refused is left out"));
        assertEquals(1, leaving(report(unit, ""), "NOT_ATTRIBUTABLE"));
        intake.put(
                        "sampler",
                        "/animals/" + deer.kit() + "/specimens/" + deer.label(Part.NODE_RIGHT),
                        intake.specimen(deer.label(Part.NODE_RIGHT), "MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT"))
                .statusCode(201);
        UUID again = UUID.randomUUID();
        people.asks("liaison", again, people.asking(left).put("evidence", "still the same"))
                .statusCode(201);
        people.refused(again);
        story("coordinator", deer)
                .body("outcomes[0].exclusion", equalTo(""))
                .body("outcomes[0].outcome", equalTo("PENDING"))
                .body("outcomes[0].footnotes", equalTo(""))
                .body("identityExceptions", hasSize(2));
    }

    /** A suspicion in refused tissue is nobody's: none sees one, and who reviews is told that some animal has it. */
    @Test
    void aSuspicionInRefusedTissueIsReviewedAndAFootnoteTellsNothingOfOneThatIsWithheld() {
        String unit = findings.unitWithoutTheDisease();
        Deer withheld = people.received(unit);
        people.granted(people.asked(withheld.label(Part.NODE_LEFT)));
        String before = story("sampler", withheld).extract().jsonPath().getString("outcomes");
        people.finds(withheld, "SUSPECT");
        assertEquals(before, story("sampler", withheld).extract().jsonPath().getString("outcomes"));
        story("coordinator", withheld).body("outcomes[0].derivedOutcome", equalTo("SUSPECT"));
        Deer refused = people.received(unit);
        people.finds(refused, "SUSPECT");
        people.refused(people.asked(refused.label(Part.NODE_LEFT)));
        story("coordinator", refused)
                .body("outcomes[0].derivedOutcome", equalTo("NOT_TESTED"))
                .body("outcomes[0].review", containsString("some animal has it"));
        story("sampler", refused).body("outcomes[0].review", nullValue());
    }

    @Test
    void aPieceCutFromAnAcceptedSpecimenCarriesItAndSoDoItsPapersAndTheAnimalsStory() throws IOException {
        Deer deer = people.received("T_UNIT_1");
        String code = deer.label(Part.NODE_LEFT);
        String piece = deer.label(Part.SPARE_1);
        people.granted(people.asked(code));
        intake.put(
                        "liaison",
                        "/specimens/" + code + "/pieces/" + piece,
                        "{\"preservation\":\"FORMALIN\",\"condition\":\"GOOD\",\"collectedAt\":\""
                                + java.time.Instant.now() + "\"}")
                .statusCode(201);
        as("auditor")
                .get("/api/v1/specimens/" + piece + "/custody")
                .then()
                .body("identityExceptions.code", contains(code));
        story("sampler", deer)
                .body("timeline.what", hasItems("IDENTITY_EXCEPTION_ASKED", "IDENTITY_EXCEPTION_GRANTED"));
        Path pdf = Path.of("target", "papers", "identity-exception.pdf");
        Files.createDirectories(pdf.getParent());
        Files.write(
                pdf,
                as("auditor").get("/api/v1/specimens/" + code + "/custody.pdf").asByteArray());
        String words = Papers.words(pdf).replaceAll("\\s+", " ");
        int told = words.indexOf("Accepted by a signed identity exception");
        assertTrue(
                told > 0 && told < words.indexOf("Look closer") + words.length() && told < words.indexOf("What it is"),
                words);
        for (String said : List.of(
                "Test liaison vouched for it on",
                "granted by Test coordinator on",
                "its label and the list disagree (the list says 7G where the jar says 7Q)",
                "Why it could not be collected again: the hunter has left with the carcass",
                "On what evidence: the only jar of its box",
                "Why granted: compared jar, list and stub",
                "This stays on its report for ever")) {
            assertTrue(words.contains(said), said + " in " + words);
        }
        String onPiece = Papers.words(written("piece.pdf", "/api/v1/specimens/" + piece + "/custody.pdf"))
                .replaceAll("\\s+", " ");
        assertTrue(onPiece.contains("which it was cut from"), onPiece);
    }

    @Test
    void aManifestSaysItWhereSuchASpecimenIsSentOn() throws IOException {
        Deer deer = people.received("T_UNIT_1");
        String code = deer.label(Part.NODE_LEFT);
        people.granted(people.asked(code));
        String onward = UUID.randomUUID().toString();
        intake.put(
                        "liaison",
                        "/submissions/" + onward,
                        "{\"laboratory\":\"T_LAB_CONFIRMING\",\"purpose\":\"CONFIRMATORY\"}")
                .statusCode(201);
        intake.put(
                        "liaison",
                        "/submissions/" + onward + "/specimens/" + code,
                        "{\"packedAt\":\"" + java.time.Instant.now() + "\",\"overrideReason\":\"agreed\"}")
                .statusCode(201)
                .body("specimens[0].identityException", equalTo(true));
        String csv = as("liaison")
                .get("/api/v1/submissions/" + onward + "/manifest.csv")
                .asString();
        assertTrue(csv.lines().findFirst().orElseThrow().endsWith(",identity_exception"), csv);
        assertTrue(csv.contains(code) && csv.stripTrailing().endsWith(",YES"), csv);
        String words = Papers.words(written("manifest.pdf", "/api/v1/submissions/" + onward + "/manifest.pdf"))
                .replaceAll("\\s+", " ");
        assertTrue(words.contains("its identity was accepted by a signed exception"), words);
    }

    private Path written(String name, String address) throws IOException {
        Path file = folder.resolve(name);
        Files.write(file, as("liaison").get(address).asByteArray());
        return file;
    }
}
