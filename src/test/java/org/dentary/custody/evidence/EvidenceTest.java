package org.dentary.custody.evidence;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.dentary.SeasonFixture;
import org.dentary.custody.Arrival;
import org.dentary.custody.CustodyFixture;
import org.dentary.custody.ParcelService;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.photo.PhotoFixture;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Photographs that show what a custody event says: named in its hashed bytes, seen by whoever may see the event. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class EvidenceTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    ParcelService parcels;

    @Inject
    EvidenceService evidence;

    @Inject
    LedgerStore ledger;

    @Inject
    DataSource database;

    @Inject
    Clock clock;

    @TempDir
    Path folder;

    private Instant collectedAt;
    private String code;

    @BeforeEach
    void aSpecimen() {
        collectedAt = clock.instant().minus(Duration.ofHours(2));
        code = fixture.collected(1, collectedAt).get(0);
    }

    @Test
    void anEventHoldsTheDigestOfThePictureAsItIsKept() throws IOException, InterruptedException {
        UUID photo = UUID.randomUUID();
        byte[] sent = PhotoFixture.withExif(PhotoFixture.jpeg(640, 480), 6);
        assertTrue(PhotoFixture.contains(sent, PhotoFixture.DEVICE));
        keep("sampler", photo, sent).statusCode(201).body("width", equalTo(480));
        keep("sampler", photo, sent).statusCode(200);
        keep("sampler", photo, PhotoFixture.jpeg(640, 480)).statusCode(409);
        UUID event = UUID.randomUUID();
        record("sampler", event, code, photo).statusCode(201);
        record("sampler", event, code, photo).statusCode(200);
        JsonPath chain = chain("auditor");
        assertTrue(chain.getBoolean("verified"));
        assertEquals(List.of(), chain.getList("events[0].photos"));
        String digest = chain.getString("events[1].photos[0].sha256");
        String bytes = ledger.find(event).orElseThrow().bytes();
        assertTrue(bytes.contains("\"evidencePhotos\":[{\"sha256\":\"" + digest + "\"}]"), bytes);
        byte[] kept = as("auditor")
                .get(chain.getString("events[1].photos[0].href"))
                .then()
                .statusCode(200)
                .contentType("image/jpeg")
                .header("Cache-Control", "private, no-store")
                .extract()
                .asByteArray();
        assertFalse(PhotoFixture.contains(kept, "Exif"));
        assertFalse(PhotoFixture.contains(kept, PhotoFixture.DEVICE));
        // What docs/custody-verification.md says, by a program that is not ours: sha256sum of GNU coreutils.
        Path both = folder.resolve("salt-and-picture");
        Files.write(both, HexFormat.of().parseHex(chain.getString("events[1].photos[0].salt")));
        Files.write(both, kept, java.nio.file.StandardOpenOption.APPEND);
        Process sum = new ProcessBuilder("sha256sum", both.toString()).start();
        assertEquals(digest, new String(sum.getInputStream().readAllBytes()).substring(0, 64));
        sum.waitFor();
        as("auditor")
                .get("/api/v1/specimens/" + code + "/custody.csv")
                .then()
                .body(containsString("evidence_photos"))
                .body(containsString(digest));
    }

    @Test
    void oneActOnABoxShowsOnePhotoOnEveryChain() {
        String box = fixture.aBoxLabel();
        json("sampler")
                .body(Map.of("place", "van", "occurredAt", collectedAt.toString()))
                .put("/api/v1/boxes/" + box)
                .then()
                .statusCode(201);
        as("sampler").put("/api/v1/boxes/" + box + "/contents/" + code).then().statusCode(201);
        UUID photo = photo("sampler");
        record("sampler", UUID.randomUUID(), box, photo).statusCode(201).body("events", hasSize(2));
        JsonPath inside = chain("auditor");
        assertEquals(photo.toString(), inside.getString("events[-1].photos[0].id"));
        assertEquals(
                inside.getString("events[-1].photos[0].sha256"),
                as("auditor")
                        .get("/api/v1/specimens/" + box + "/custody")
                        .jsonPath()
                        .getString("events[-1].photos[0].sha256"));
    }

    @Test
    void isSeenByWhoeverMaySeeTheEventAndByNobodyElse() {
        UUID before = photo("sampler");
        record("sampler", UUID.randomUUID(), code, before).statusCode(201);
        picture("notifier", before).statusCode(200);
        picture("auditor", UUID.randomUUID()).statusCode(404);
        String other = fixture.collected(1, collectedAt).get(0);
        as("auditor")
                .get("/api/v1/specimens/" + other + "/custody/evidence/" + before)
                .then()
                .statusCode(404);
        fixture.as("liaison");
        parcels.receive(new Arrival(
                List.of(code),
                SeasonFixture.LABORATORY,
                collectedAt.plusSeconds(600),
                null,
                null,
                UUID.randomUUID(),
                null));
        UUID atTheLaboratory = photo("liaison");
        record("liaison", UUID.randomUUID(), code, atTheLaboratory).statusCode(201);
        picture("liaison", atTheLaboratory).statusCode(200);
        // What a laboratory does with tissue tells what it found: not for the field.
        picture("sampler", atTheLaboratory).statusCode(404);
        picture("sampler", before).statusCode(200);
        assertEquals(List.of(), chain("sampler").getList("events[-1].photos"));
        for (String reader : List.of("epidemiologist", "notifier", "auditor")) {
            keep(reader, UUID.randomUUID(), PhotoFixture.jpeg(300, 300)).statusCode(403);
        }
    }

    @Test
    void whatIsNoPhotoOrNotOnesOwnIsRefusedAndNothingIsWritten() {
        keep("sampler", UUID.randomUUID(), "%PDF-1.7".getBytes())
                .statusCode(422)
                .body("errors[0].rule", equalTo("NOT_A_PHOTO"));
        keep("sampler", UUID.randomUUID(), PhotoFixture.jpeg(100, 100)).statusCode(422);
        record("sampler", UUID.randomUUID(), code, UUID.randomUUID())
                .statusCode(422)
                .body("code", equalTo("PHOTO_UNKNOWN"));
        record("sampler", UUID.randomUUID(), code, photo("liaison"))
                .statusCode(422)
                .body("code", equalTo("PHOTO_UNKNOWN"));
        record(
                        "sampler",
                        UUID.randomUUID(),
                        code,
                        Stream.generate(UUID::randomUUID).limit(5).toArray(UUID[]::new))
                .statusCode(422)
                .body("code", equalTo("TOO_MANY"));
        assertEquals(1, ledger.chain(code).size());
    }

    @Test
    void theServiceCannotChangeItAndAChangeBehindItsBackIsNamed() throws SQLException {
        UUID photo = photo("sampler");
        record("sampler", UUID.randomUUID(), code, photo).statusCode(201);
        for (String sql : List.of(
                "update custody_evidence set digest = ''",
                "delete from custody_evidence",
                "truncate custody_evidence cascade",
                "update custody_event_evidence set evidence = evidence",
                "delete from custody_event_evidence",
                "update custody_evidence_content set large = ''",
                "delete from custody_evidence_erasure")) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                SQLException refusal = assertThrows(SQLException.class, () -> statement.execute(sql), sql);
                // insufficient_privilege (PostgreSQL, appendix A)
                assertEquals("42501", refusal.getSQLState(), refusal.getMessage());
            }
        }
        try (Connection connection = owner();
                Statement statement = connection.createStatement()) {
            statement.execute("update custody_evidence_content set large = small where evidence = '" + photo + "'");
            statement.execute("update custody_evidence_content set large = large || '\\x00'::bytea where evidence = '"
                    + photo + "'");
            picture("auditor", photo).statusCode(409).body("code", equalTo("EVIDENCE_CHANGED"));
        }
    }

    @Test
    void theCoordinatorErasesAPhotoForGoodAndEveryPlaceSaysSo() throws IOException {
        UUID photo = photo("sampler");
        record("sampler", UUID.randomUUID(), code, photo).statusCode(201);
        String digest = chain("auditor").getString("events[1].photos[0].sha256");
        String hash = chain("auditor").getString("events[1].hash");
        for (String other : List.of("sampler", "liaison", "epidemiologist", "notifier", "auditor")) {
            erase(other, photo, "a face").statusCode(403);
        }
        erase("coordinator", photo, " ").statusCode(422).body("errors[0].field", equalTo("reason"));
        erase("coordinator", UUID.randomUUID(), "a face").statusCode(404);
        as("coordinator")
                .formParam("reason", "")
                .post("/specimens/" + code + "/custody/evidence/" + photo + "/erasure")
                .then()
                .statusCode(422)
                .body(containsString("Say why the photo is erased"));
        picture("auditor", photo).statusCode(200);
        as("coordinator")
                .redirects()
                .follow(false)
                .formParam("reason", "a hunter's face is on it")
                .post("/specimens/" + code + "/custody/evidence/" + photo + "/erasure")
                .then()
                .statusCode(303);
        erase("coordinator", photo, "once more").statusCode(204);
        picture("auditor", photo).statusCode(404);
        JsonPath chain = chain("auditor");
        assertTrue(chain.getBoolean("verified"), "an erased picture leaves the chain whole");
        assertEquals(hash, chain.getString("events[1].hash"));
        assertEquals(digest, chain.getString("events[1].photos[0].sha256"));
        assertTrue(chain.getBoolean("events[1].photos[0].erased"));
        assertEquals("a hunter's face is on it", chain.getString("events[1].photos[0].erasure.reason"));
        assertNull(chain.getString("events[1].photos[0].salt"));
        String erased = "erased on .*by .*: a hunter.*s face is on it";
        String page = as("auditor").get("/specimens/" + code + "/custody").asString();
        assertTrue(Pattern.compile(erased).matcher(page).find(), page);
        assertTrue(page.contains("1 photo that is evidence was erased since"), page);
        assertFalse(page.contains("Erase it for good"), page);
        byte[] pdf = as("auditor")
                .get("/api/v1/specimens/" + code + "/custody.pdf")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        PdfReader paper = new PdfReader(pdf);
        String text = new PdfTextExtractor(paper).getTextFromPage(1)
                + new PdfTextExtractor(paper).getTextFromPage(paper.getNumberOfPages());
        assertTrue(text.replaceAll("\\s+", " ").contains("a hunter's face is on it"), text);
        assertTrue(text.replaceAll("\\s+", " ").contains("1 photo that is evidence was erased since"), text);
        // An erased photo shows nothing more.
        record("sampler", UUID.randomUUID(), code, photo).statusCode(422).body("code", equalTo("PHOTO_UNKNOWN"));
    }

    @Test
    void whatARestoredDatabaseBringsBackIsErasedAgainAtTheNextStart() throws SQLException {
        UUID photo = photo("sampler");
        record("sampler", UUID.randomUUID(), code, photo).statusCode(201);
        erase("coordinator", photo, "a license plate").statusCode(204);
        try (Connection connection = owner();
                Statement statement = connection.createStatement()) {
            // As it stands in a backup from before: the picture is there, the erasure is not.
            statement.execute("insert into custody_evidence_content (evidence, salt, large, small)" + " select '"
                    + photo + "', salt, large, small from custody_evidence_content limit 1");
        }
        evidence.eraseAgain(null);
        picture("auditor", photo).statusCode(404);
        assertEquals("a license plate", chain("auditor").getString("events[1].photos[0].erasure.reason"));
    }

    @Test
    void aPageTakesThePhotoAndKeepsItWhenTheFormIsFaulty() {
        String key = UUID.randomUUID().toString();
        String page = as("sampler")
                .multiPart("key", key)
                .multiPart("codes", code)
                .multiPart("kind", "LOST")
                .multiPart("zone", "America/Chicago")
                .multiPart("photo", "cooler.jpg", PhotoFixture.jpeg(500, 400), "image/jpeg")
                .post("/custody/events")
                .then()
                .statusCode(422)
                .body(containsString("LOST needs a reason"))
                .body(containsString("Photo 1 is kept"))
                .extract()
                .asString();
        String photo = page.replaceAll("(?s).*name=\"photos\" value=\"([^\"]+)\".*", "$1");
        as("sampler")
                .redirects()
                .follow(false)
                .multiPart("key", key)
                .multiPart("codes", code)
                .multiPart("kind", "LOST")
                .multiPart("reason", "the cooler was open")
                .multiPart("zone", "America/Chicago")
                .multiPart("photos", photo)
                .post("/custody/events")
                .then()
                .statusCode(303);
        as("auditor")
                .get("/specimens/" + code + "/custody")
                .then()
                .body(containsString("evidence/" + photo + "?size=small"))
                .body(containsString(chain("auditor").getString("events[1].photos[0].sha256")))
                .body(not(containsString("was erased")));
        as("sampler")
                .multiPart("key", UUID.randomUUID().toString())
                .multiPart("codes", code)
                .multiPart("kind", "FOUND")
                .multiPart("photo", "notes.jpg", "words".getBytes(), "image/jpeg")
                .post("/custody/events")
                .then()
                .statusCode(422)
                .body(containsString("neither JPEG nor PNG"));
        assertEquals(2, ledger.chain(code).size());
    }

    private static ValidatableResponse erase(String account, UUID photo, String reason) {
        return as(account)
                .queryParam("reason", reason)
                .delete("/api/v1/custody-evidence/" + photo)
                .then();
    }

    private UUID photo(String account) {
        UUID id = UUID.randomUUID();
        keep(account, id, PhotoFixture.jpeg(400, 300)).statusCode(201);
        return id;
    }

    private static ValidatableResponse keep(String account, UUID id, byte[] file) {
        return as(account)
                .contentType("image/jpeg")
                .body(file)
                .put("/api/v1/custody-evidence/" + id)
                .then();
    }

    private ValidatableResponse picture(String account, UUID photo) {
        return as(account)
                .get("/api/v1/specimens/" + code + "/custody/evidence/" + photo + "?size=small")
                .then();
    }

    private ValidatableResponse record(String account, UUID id, String of, UUID... photos) {
        return json(account)
                .body(Map.of(
                        "codes",
                        List.of(of),
                        "kind",
                        "MOVED",
                        "place",
                        "shelf 4",
                        "occurredAt",
                        collectedAt.plus(Duration.ofMinutes(30)).toString(),
                        "photos",
                        List.of(photos)))
                .put("/api/v1/custody-events/" + id)
                .then();
    }

    private static Connection owner() throws SQLException {
        var config = ConfigProvider.getConfig();
        return DriverManager.getConnection(
                config.getValue("quarkus.flyway.jdbc-url", String.class),
                config.getValue("quarkus.flyway.username", String.class),
                config.getValue("quarkus.flyway.password", String.class));
    }

    private JsonPath chain(String account) {
        return as(account).get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }
}
