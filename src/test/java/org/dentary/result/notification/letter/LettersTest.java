package org.dentary.result.notification.letter;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.identity.IdentityFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.notification.NotificationFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every kind of letter; each stays under target/letters to be looked at. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LettersTest {
    @Inject
    NotificationFixture telling;

    @Inject
    IdentityFixture identity;

    @BeforeEach
    void setUp() {
        telling.ensure();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            DETECTED     | was detected in its tissue         | before you do anything with the meat
            NOT_DETECTED | was not detected in the tissue     | can be missed
            INCONCLUSIVE | could not come to a result         | neither that the disease is there nor that it is not
            UNSUITABLE   | was not suitable for the test      | No result says nothing about the animal
            NOT_TESTED   | was not tested                     | No result says nothing about the animal
            """)
    void saysTheOutcomeWhatItMeansAndWhoseAdviceCounts(String outcome, String word, String meaning) throws IOException {
        Deer deer = telling.broughtBy("Łucja Åkerlund-Ørsted", "555 0199");
        telling.outcome(deer, outcome, outcome);
        if (outcome.equals("DETECTED")) {
            called(deer, outcome);
        }
        String text = letter(deer, outcome.toLowerCase(java.util.Locale.ROOT));
        holds(
                text,
                word,
                meaning,
                "the Test Health Department",
                "555-0151",
                NotificationFixture.ADVICE,
                "Łucja Åkerlund-Ørsted");
        assertFalse(text.contains("puts right"), text);
        assertFalse(text.matches("(?is).*\\b(safe|negative|positive|clean|edible)\\b.*"), text);
        assertFalse(text.matches("(?s).*[{}].*"), "a place was left open: " + text);
    }

    @Test
    void aLetterToSomebodyWhoWasToldAnotherWordPutsThatRightFirst() throws IOException {
        Deer deer = telling.broughtBy("Łucja Åkerlund-Ørsted", "555 0199");
        telling.outcome(deer, "DETECTED", "DETECTED");
        called(deer, "DETECTED");
        telling.outcome(deer, "NOT_DETECTED", "NOT_DETECTED");
        String text = letter(deer, "correction");
        holds(
                text,
                "Corrected result of your",
                "We told you then: Chronic wasting disease detected. That no longer holds.",
                "was not detected in the tissue",
                "wording not-detected 1, correction 1");
        assertTrue(text.indexOf("no longer holds") < text.indexOf("was not detected in the tissue"), text);
    }

    @Test
    void aCorrectionsWordingNamesWhatWasToldBefore() {
        as("coordinator")
                .contentType("application/json")
                .body("{\"wording\":\"We were wrong about {disease}.\"}")
                .put("/api/v1/letter-wordings/CORRECTION/2")
                .then()
                .statusCode(422)
                .body("errors[0].message", org.hamcrest.Matchers.containsString("{toldBefore} is missing"));
    }

    /** All its tissue was refused: first what it was told, then that the tissue was not shown to be the animal's. */
    @Test
    void anAnimalWhoseOnlyTissueWasRefusedHasALetterOfItsOwn() throws IOException {
        Deer deer = identity.received(
                SeasonFixture.UNIT,
                body -> body.putObject("contact")
                        .put("name", "Łucja Åkerlund-Ørsted")
                        .put("address", "7 Larch Lane\nMillbrook"));
        identity.refused(identity.asked(deer.label(Part.NODE_LEFT)));
        String text = letter(deer, "not_attributable");
        holds(
                text,
                "could not be shown that the tissue came from your animal",
                "there is no result for Chronic wasting disease",
                "No result says nothing about the animal",
                NotificationFixture.ADVICE,
                "wording not-attributable 1");
        assertFalse(text.matches("(?is).*\\b(safe|negative|positive|clean|edible)\\b.*"), text);
        assertFalse(text.matches("(?s).*[{}].*"), "a place was left open: " + text);
    }

    private static void called(Deer deer, String outcome) {
        as("notifier")
                .contentType("application/json")
                .body("{\"outcome\":\"" + outcome
                        + "\",\"channel\":\"PHONE\",\"result\":\"REACHED\",\"at\":\"2026-03-02T10:00:00-06:00\"}")
                .put("/api/v1/notifications/" + deer.kit() + "/CWD/attempts/" + UUID.randomUUID())
                .then()
                .statusCode(201);
    }

    private static String letter(Deer deer, String name) throws IOException {
        byte[] pdf = as("notifier")
                .get("/api/v1/notifications/" + deer.kit() + "/CWD/letter.pdf?purpose=letter")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        Files.write(Files.createDirectories(Path.of("target", "letters")).resolve(name + ".pdf"), pdf);
        try (PdfReader reader = new PdfReader(pdf)) {
            assertEquals(1, reader.getNumberOfPages(), "a letter of ordinary length is one page");
            return new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
        }
    }

    private static void holds(String text, String... parts) {
        for (String part : parts) {
            assertTrue(text.contains(part), part + " is missing in: " + text);
        }
    }
}
