package org.dentary.jaw.photo;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.photo.PhotoFixture;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class JawPhotosTest {
    @Inject
    IntakeFixture deer;

    @Inject
    EntityManager entities;

    @Test
    void aPhotoIsKeptWithoutWhatItsFileKnewAndCanBeSentAgain() {
        String kit = toReadFromPhoto();
        UUID id = UUID.randomUUID();
        byte[] sent = PhotoFixture.withExif(PhotoFixture.jpeg(640, 480), 6);
        put("sampler", kit, id, sent, "image/jpeg")
                .statusCode(201)
                .header("ETag", "\"0\"")
                .body("width", equalTo(480))
                .body("height", equalTo(640))
                .body("addedBy", equalTo("T_SAMPLER"));
        put("sampler", kit, id, sent, "image/jpeg").statusCode(200);
        put("sampler", kit, id, PhotoFixture.jpeg(640, 480), "image/jpeg")
                .statusCode(409)
                .body("code", equalTo("ALREADY_RECORDED"));
        byte[] kept = as("auditor")
                .get(path(kit, id))
                .then()
                .statusCode(200)
                .contentType("image/jpeg")
                .header("Cache-Control", "private, no-store")
                .extract()
                .asByteArray();
        assertFalse(PhotoFixture.contains(kept, "Exif"));
        assertEquals(0L, stored("encode(large, 'escape') like '%Exif%'", id));
        as("auditor")
                .get("/api/v1/animals/" + kit)
                .then()
                .body("jawPhotos[0].id", equalTo(id.toString()))
                .body("jawPhotos[0].href", equalTo(path(kit, id)));
        as("auditor").get(path(kit, id) + "?size=tiny").then().statusCode(422);
    }

    @Test
    void whatIsNoPhotoIsRefusedAndNothingIsStored() {
        String kit = toReadFromPhoto();
        UUID id = UUID.randomUUID();
        put("sampler", kit, id, "not a photo".getBytes(), "image/jpeg")
                .statusCode(422)
                .body("errors[0].field", equalTo("photo"))
                .body("errors[0].rule", equalTo("NOT_A_PHOTO"));
        put("sampler", kit, id, "%PDF".getBytes(), "application/pdf").statusCode(415);
        put("sampler", kit, id, PhotoFixture.pngThatClaims(40_000, 40_000), "image/png")
                .statusCode(422)
                .body("errors[0].rule", equalTo("PHOTO_TOO_LARGE"));
        as("sampler").get("/api/v1/animals/" + kit + "/jaw-photos").then().body("items", hasSize(0));
        assertEquals(0L, stored("true", id));
        put("sampler", deer.aDeer().kit(), id, PhotoFixture.jpeg(300, 300), "image/jpeg")
                .statusCode(404)
                .body("code", equalTo("ANIMAL_UNKNOWN"));
    }

    @Test
    void onePhotoIsOneAnimals() {
        String one = toReadFromPhoto();
        String other = toReadFromPhoto();
        byte[] photo = PhotoFixture.png(400, 400);
        put("sampler", one, UUID.randomUUID(), photo, "image/png").statusCode(201);
        put("sampler", other, UUID.randomUUID(), photo, "image/png")
                .statusCode(422)
                .body("errors[0].rule", equalTo("J27"))
                .body("errors[0].message", containsString(one));
        put("sampler", one, UUID.randomUUID(), photo, "image/png").statusCode(409);
    }

    @Test
    void aSecondReaderSeesThePhotoAndNotTheFirstReading() {
        Deer one = deer.aDeer();
        deer.take(
                one,
                deer.facts()
                        .put("jawStatus", "PHOTO_TO_READ")
                        .put("station", SeasonFixture.WESTERN_STATION)
                        .put("managementUnit", SeasonFixture.SOUTHERN_UNIT));
        UUID reading = UUID.randomUUID();
        deer.put("coordinator", "/animals/" + one.kit() + "/jaw-readings/" + reading, deer.contradicting(reading))
                .statusCode(201);
        UUID id = UUID.randomUUID();
        as("coordinator")
                .contentType("image/jpeg")
                .body(PhotoFixture.jpeg(300, 300))
                .put(path(one.kit(), id) + "?reading=" + reading)
                .then()
                .statusCode(201)
                .body("reading", equalTo(reading.toString()));
        as("sampler")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("readingsHidden", equalTo(true))
                .body("jawReadings", hasSize(0))
                .body("jawPhotos", hasSize(1));
        as("sampler")
                .accept("text/html")
                .get("/animals/" + one.kit() + "/jaw")
                .then()
                .statusCode(200)
                .body(containsString(path(one.kit(), id) + "?size=small"));
        String other = toReadFromPhoto();
        as("coordinator")
                .contentType("image/jpeg")
                .body(PhotoFixture.jpeg(300, 300))
                .put(path(other, UUID.randomUUID()) + "?reading=" + reading)
                .then()
                .statusCode(422)
                .body("errors[0].rule", equalTo("OTHER_ANIMAL"));
    }

    @Test
    void theQueueShowsThePhotoToRead() {
        String kit = toReadFromPhoto();
        photoInQueue(kit).body("items.find { it.kit == '" + kit + "' }.photo", nullValue());
        UUID id = UUID.randomUUID();
        put("sampler", kit, id, PhotoFixture.jpeg(300, 300), "image/jpeg").statusCode(201);
        photoInQueue(kit).body("items.find { it.kit == '" + kit + "' }.photo", equalTo(id.toString()));
        as("sampler")
                .accept("text/html")
                .get("/jaws?all=true&station=" + SeasonFixture.WESTERN_STATION)
                .then()
                .body(containsString(path(kit, id) + "?size=small"));
    }

    @Test
    void rolesWithoutReadingSeeNoPhoto() {
        String kit = toReadFromPhoto();
        UUID id = UUID.randomUUID();
        put("liaison", kit, id, PhotoFixture.jpeg(300, 300), "image/jpeg").statusCode(403);
        put("sampler", kit, id, PhotoFixture.jpeg(300, 300), "image/jpeg").statusCode(201);
        for (String account : new String[] {"liaison", "notifier"}) {
            as(account).get(path(kit, id)).then().statusCode(403);
            as(account).get("/api/v1/animals/" + kit).then().body("jawPhotos", hasSize(0));
        }
        as("epidemiologist").get(path(kit, id)).then().statusCode(200);
    }

    @Test
    void anErasedPhotoIsGoneAndItsRowSaysWhy() {
        String kit = toReadFromPhoto();
        UUID id = UUID.randomUUID();
        byte[] photo = PhotoFixture.jpeg(300, 300);
        put("sampler", kit, id, photo, "image/jpeg").statusCode(201);
        as("sampler").delete(path(kit, id)).then().statusCode(422);
        as("sampler-two").delete(path(kit, id) + "?reason=mine").then().statusCode(403);
        as("sampler").delete(path(kit, id) + "?reason=a face").then().statusCode(204);
        as("sampler").delete(path(kit, id) + "?reason=a face").then().statusCode(204);
        as("sampler").get(path(kit, id)).then().statusCode(404);
        assertEquals(0L, stored("true", id));
        Object[] row = (Object[]) QuarkusTransaction.requiringNew()
                .call(() -> entities.createNativeQuery(
                                "select erased_by, erased_reason, (select count(*) from history where key = '" + id
                                        + "' and cast(old as text) like '%large%') from jaw_photo where id = '" + id
                                        + "'")
                        .getSingleResult());
        assertEquals("T_SAMPLER", row[0]);
        assertEquals("a face", row[1]);
        assertEquals(0L, ((Number) row[2]).longValue());
        put("sampler", kit, UUID.randomUUID(), photo, "image/jpeg").statusCode(201);
    }

    @Test
    void aFormWithoutAPhotoIsShownAgain() {
        String kit = toReadFromPhoto();
        as("sampler")
                .accept("text/html")
                .multiPart("id", UUID.randomUUID().toString())
                .multiPart("photo", "x.jpg", "no".getBytes(), "image/jpeg")
                .post("/animals/" + kit + "/photos")
                .then()
                .statusCode(422)
                .body(containsString("neither JPEG nor PNG"))
                .body(not(containsString("<figure")));
    }

    /** The queue of the station where no other test leaves hundreds of jaws to read; the kit is in it. */
    private static ValidatableResponse photoInQueue(String kit) {
        return as("sampler")
                .get("/api/v1/jaws/queue?task=READ&station=" + SeasonFixture.WESTERN_STATION)
                .then()
                .body("items.kit", hasItem(kit));
    }

    private String toReadFromPhoto() {
        Deer one = deer.aDeer();
        deer.take(
                one,
                deer.facts()
                        .put("jawStatus", "PHOTO_TO_READ")
                        .put("station", SeasonFixture.WESTERN_STATION)
                        .put("managementUnit", SeasonFixture.SOUTHERN_UNIT));
        return one.kit();
    }

    private static ValidatableResponse put(String account, String kit, UUID id, byte[] file, String type) {
        return as(account).contentType(type).body(file).put(path(kit, id)).then();
    }

    private static String path(String kit, UUID id) {
        return "/api/v1/animals/" + kit + "/jaw-photos/" + id;
    }

    private long stored(String condition, UUID id) {
        return QuarkusTransaction.requiringNew()
                .call(() -> ((Number)
                                entities.createNativeQuery("select count(*) from jaw_photo_content where photo = '" + id
                                                + "' and " + condition)
                                        .getSingleResult())
                        .longValue());
    }
}
