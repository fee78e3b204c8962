package org.dentary.story.dossier;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import javax.imageio.ImageIO;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.photo.PhotoFixture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One specimen's dossier on paper, read by programs that are not ours, also after a rough photocopy. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class DossierPdfTest {
    @Inject
    DossierFixture tissue;

    @TempDir
    Path folder;

    @Test
    void tellsEveryEntryItsSidesItsTimesAndWhatIsWrong() throws IOException {
        String code = tissue.aNodeWithAStory();
        Path pdf = paper("auditor", code);
        Files.createDirectories(Path.of("target", "papers"));
        Files.copy(pdf, Path.of("target", "papers", "dossier.pdf"), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        String words = Papers.words(pdf).replaceAll("\\s+", " ");
        JsonPath chain =
                as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
        List<String> hashes = chain.getList("events.hash");
        assertTrue(hashes.size() >= 9, hashes.toString());
        for (String hash : hashes) {
            assertTrue(words.contains(hash), hash);
        }
        for (String said : List.of(
                grouped(code),
                "left medial retropharyngeal node",
                "With Test courier",
                "Relinquished by",
                "Received by",
                "Test sampler",
                "Test liaison",
                "Tamper seal before: none; put on: TS 0042",
                "Tamper seal before: TS 0042; found: TS 0043",
                "tamper seal TS 0042 was expected, TS 0043 was found",
                "Open discrepancy: seal mismatch",
                "Temperature 14.5",
                "read on probe 3",
                "Reason: misread the probe",
                "Corrects entry 3; both stay",
                "Corrected by entry 4",
                "Signed on the giver's screen: R. Okonedo",
                "Place: loading bay",
                "condition when taken good",
                "fresh chilled from",
                "It does not show that the first entry was true",
                "End of dossier " + grouped(code))) {
            assertTrue(words.contains(said), said + " in " + words);
        }
        assertTrue(words.matches(".* C[SD]T.*"), "the station's clock and its zone, in winter or summer: " + words);
        // The correction's value is judged, not the misreading: 13.5 is above what a chilled specimen may have.
        assertTrue(words.matches(".*Entry 3: 13\\.5..C was read.*"), words);
    }

    @Test
    void printsTheProofWithWhichTheLastEntryCanBeChecked() throws IOException {
        String code = tissue.aNode();
        String words = Papers.words(paper("auditor", code)).replaceAll("\\s+", " ");
        JsonPath chain =
                as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
        String event = chain.getString("events[-1].id");
        long number = Long.parseLong(words.replaceAll(".*sealed by checkpoint (\\d+) as leaf.*", "$1"));
        JsonPath proof = as("auditor")
                .get("/api/v1/custody/checkpoints/" + number + "/proof?event=" + event)
                .jsonPath();
        JsonPath checkpoint =
                as("auditor").get("/api/v1/custody/checkpoints/" + number).jsonPath();
        List<String> path = proof.getList("path");
        for (String hash : path) {
            assertTrue(words.contains(hash), hash);
        }
        assertTrue(words.contains("Leaf " + proof.getInt("index") + " of " + checkpoint.getInt("treeSize")), words);
        for (String of : List.of("id", "root", "previous", "hash", "signature", "key")) {
            assertTrue(words.contains(checkpoint.getString(of)), of + " in " + words);
        }
    }

    @Test
    void whoStoodByADestructionIsNobodyItWasOfferedTo() throws IOException {
        String code = tissue.aNode();
        as("sampler")
                .contentType("application/json")
                .body(Map.of(
                        "codes",
                        List.of(code),
                        "kind",
                        "DESTROYED",
                        "occurredAt",
                        Instant.now().toString(),
                        "reason",
                        "incinerated",
                        "witness",
                        "T_LIAISON"))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        String words = Papers.words(paper("auditor", code)).replaceAll("\\s+", " ");
        assertTrue(words.contains("Stood by: Test liaison"), words);
        assertFalse(words.contains("Offered"), words);
        as("auditor")
                .get("/specimens/" + code + "/custody")
                .then()
                .body(containsString("Stood by: Test liaison"))
                .body(not(containsString("other side")));
    }

    @Test
    void itsSymbolsAreReadOffAPhotocopy() throws IOException {
        String code = tissue.aNodeWithAStory();
        List<Path> pages = Papers.pages(paper("auditor", code), 200);
        assertTrue(pages.size() >= 2, "a story of nine entries takes more than a page");
        assertEquals(List.of(code), Papers.bars(pages.get(0)));
        assertEquals(List.of(code), Papers.matrix(corner(pages.get(0))));
        assertTrue(isReadOffACopy(pages.get(0), code, Papers::bars), code);
        assertTrue(isReadOffACopy(corner(pages.get(0)), code, Papers::matrix), code);
    }

    /** Of three copies one is read: dirt across the bars of a code hid one first copy in 1,450 (measured). */
    private boolean isReadOffACopy(Path page, String code, Function<Path, List<String>> reader) throws IOException {
        for (int dirt = 4; dirt < 7; dirt++) {
            if (reader.apply(photocopied(page, dirt)).equals(List.of(code))) {
                return true;
            }
        }
        return false;
    }

    @Test
    void printsThePhotosOfAnEntryWithTheirDigests() throws IOException {
        String code = tissue.aNode();
        String photo = UUID.randomUUID().toString();
        as("sampler")
                .contentType("image/jpeg")
                .body(PhotoFixture.jpeg(640, 480))
                .put("/api/v1/custody-evidence/" + photo)
                .then()
                .statusCode(201);
        String now = as("auditor")
                .get("/api/v1/specimens/" + code + "/custody")
                .jsonPath()
                .getString("since");
        as("sampler")
                .contentType("application/json")
                .body(Map.of(
                        "codes",
                        List.of(code),
                        "kind",
                        "MOVED",
                        "place",
                        "shelf 4",
                        "occurredAt",
                        now,
                        "reason",
                        "entered by the photo",
                        "photos",
                        List.of(photo)))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        Path pdf = paper("auditor", code);
        Files.createDirectories(Path.of("target", "papers"));
        Files.copy(
                pdf,
                Path.of("target", "papers", "dossier-photo.pdf"),
                java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        String digest = as("auditor")
                .get("/api/v1/specimens/" + code + "/custody")
                .jsonPath()
                .getString("events[-1].photos[0].sha256");
        assertTrue(Papers.words(pdf).contains(digest));
        assertTrue(
                Papers.run("pdfimages", "-list", pdf.toString()).stream()
                        .anyMatch(image -> image.matches(".*\\b400 +300 .*jpeg.*")),
                "the picture itself, as it is kept");
    }

    @Test
    void countsItsPages() throws IOException {
        Path pdf = paper("auditor", tissue.aNodeWithAStory());
        int pages = Papers.pages(pdf, 30).size();
        String words = Papers.words(pdf);
        for (int page = 1; page <= pages; page++) {
            assertEquals(1, Papers.count(words, ", page " + page + " of " + pages), words);
        }
        assertEquals(pages, Papers.count(words, ", page "));
    }

    @Test
    void neverNamesTheHunter() throws IOException {
        String words = Papers.words(paper("coordinator", tissue.aNode())).replaceAll("\\s+", " ");
        for (String secret : List.of("Aspenquist", "Wendeline", DossierFixture.TELEPHONE, "(555)")) {
            assertFalse(words.contains(secret), secret);
        }
    }

    @Test
    void bothAnimalsOfASwapAreNamed() throws IOException {
        Deer from = tissue.aDeer();
        Deer to = tissue.aDeer();
        String code = tissue.aNode(from);
        tissue.aNode(to);
        tissue.put(
                        "coordinator",
                        "/specimens/" + code + "/re-attribution/" + java.util.UUID.randomUUID(),
                        "{\"kit\":\"" + to.kit()
                                + "\",\"reason\":\"jars exchanged\",\"evidence\":\"photo of the tray\"}")
                .statusCode(201);
        String words = Papers.words(paper("auditor", code)).replaceAll("\\s+", " ");
        assertTrue(words.contains("A swapped label is unresolved"), words);
        assertTrue(words.contains("from kit " + from.kit() + " to kit " + to.kit()), words);
        assertTrue(words.contains("Reason: jars exchanged. Evidence: photo of the tray."), words);
        assertTrue(words.contains("Not decided yet"), words);
    }

    @Test
    void saysWhyAnEntryIsLate() throws IOException {
        String code = tissue.aNode();
        tissue.accept("liaison", tissue.offer("sampler", code, "liaison", ""), code);
        tissue.put(
                        "sampler",
                        "/custody-events/" + java.util.UUID.randomUUID(),
                        "{\"codes\":[\"" + code + "\"],\"kind\":\"MOVED\",\"place\":\"cooler 2\",\"occurredAt\":\""
                                + tissue.ago(1) + "\"}")
                .statusCode(201);
        tissue.offer("liaison", code, "coordinator", ",\"paperForm\":\"P-9\"");
        String words = Papers.words(paper("auditor", code)).replaceAll("\\s+", " ");
        assertTrue(
                words.contains("Entry 4 (moved) was entered when something later had been recorded already, 1.0 hours"),
                words);
        assertTrue(
                words.matches(
                        ".*Entry \\d \\(handed over\\) was entered from paper form P-9, less than an hour after.*"),
                words);
        assertTrue(words.contains("(offered) was entered from paper form P-9"), words);
    }

    @Test
    void saysWhoKeptWhatWasRefused() throws IOException {
        String code = tissue.aNode();
        java.util.UUID id = java.util.UUID.randomUUID();
        org.dentary.custody.Http.json("sampler")
                .body(java.util.Map.of(
                        "codes",
                        List.of(code),
                        "to",
                        "liaison",
                        "occurredAt",
                        tissue.ago(0).toString()))
                .put("/api/v1/hand-overs/" + id)
                .then()
                .statusCode(201);
        org.dentary.custody.Http.json("liaison")
                .body(java.util.Map.of("reason", "the cooler was warm"))
                .post("/api/v1/hand-overs/" + id + "/refusal")
                .then()
                .statusCode(200);
        String words = Papers.words(paper("auditor", code)).replaceAll("\\s+", " ");
        assertTrue(words.contains("Kept by"), words);
        assertTrue(words.contains("Refused or withdrawn by"), words);
        assertFalse(words.contains("not said"), words);
    }

    @Test
    void whatALaboratoryDoesIsOnNoPaperOfThoseWhoMayNotKnow() throws IOException {
        String code = tissue.aNode();
        tissue.accept("liaison", tissue.offer("sampler", code, "liaison", ""), code);
        tissue.received(code);
        tissue.event("liaison", code, "FORWARDED", ",\"place\":\"T_LAB_CONFIRMING\",\"reason\":\"to be confirmed\"");
        for (String knowing : List.of("liaison", "auditor")) {
            assertTrue(Papers.words(paper(knowing, code)).contains("Confirming laboratory"), knowing);
        }
        for (String other : List.of("sampler", "sampler-two")) {
            String words = Papers.words(paper(other, code)).replaceAll("\\s+", " ");
            assertFalse(words.contains("Confirming laboratory") || words.contains("to be confirmed"), words);
            assertTrue(words.contains("With Test laboratory") && words.contains("recorded at the laboratory"), words);
            String csv =
                    as(other).get("/api/v1/specimens/" + code + "/custody.csv").asString();
            assertFalse(csv.contains("FORWARDED") || csv.contains("Confirming"), csv);
            assertTrue(csv.contains("AT_LABORATORY"), csv);
            String page = as(other).get("/specimens/" + code + "/custody").asString();
            assertFalse(page.contains("Confirming laboratory") || page.contains("to be confirmed"), page);
        }
    }

    @Test
    void isForWhoMayReadAnimalsAndOfWhatIsInCustody() {
        String code = tissue.aNode();
        String path = "/api/v1/specimens/" + code + "/custody.pdf";
        for (String reader : List.of("sampler", "liaison", "epidemiologist", "coordinator", "notifier", "auditor")) {
            as(reader)
                    .get(path)
                    .then()
                    .statusCode(200)
                    .contentType("application/pdf")
                    .header("Cache-Control", "private, no-store");
        }
        io.restassured.RestAssured.given().get(path).then().statusCode(401);
        String unused = tissue.aDeer().label(Part.OBEX);
        as("auditor")
                .get("/api/v1/specimens/" + unused + "/custody.pdf")
                .then()
                .statusCode(404)
                .body("code", equalTo("NOT_IN_CUSTODY"));
        as("auditor")
                .get("/api/v1/specimens/NOTACODE/custody.pdf")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("code"));
    }

    /** The upper right of a page, as a camera is pointed at the symbol there. */
    private Path corner(Path page) throws IOException {
        BufferedImage image = ImageIO.read(page.toFile());
        int left = image.getWidth() * 3 / 4;
        BufferedImage corner = image.getSubimage(left, 0, image.getWidth() - left, image.getHeight() / 7);
        Path file = folder.resolve("corner.png");
        ImageIO.write(corner, "png", file.toFile());
        return file;
    }

    /** Black or white without shades, two pixels in a thousand turned over by that dirt. */
    private Path photocopied(Path page, int dirt) throws IOException {
        BufferedImage image = ImageIO.read(page.toFile());
        BufferedImage copy = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_BINARY);
        java.util.Random noise = new java.util.Random(dirt);
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                boolean white = (image.getRGB(x, y) & 0xFF) >= 128;
                copy.setRGB(x, y, (noise.nextInt(1000) < 2) != white ? 0xFFFFFF : 0);
            }
        }
        Path file = folder.resolve("photocopy.png");
        ImageIO.write(copy, "png", file.toFile());
        return file;
    }

    private Path paper(String reader, String code) throws IOException {
        Response answer = as(reader).get("/api/v1/specimens/" + code + "/custody.pdf");
        assertEquals(200, answer.statusCode());
        return Files.write(folder.resolve("dossier.pdf"), answer.asByteArray());
    }

    private static String grouped(String code) {
        return code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8);
    }
}
