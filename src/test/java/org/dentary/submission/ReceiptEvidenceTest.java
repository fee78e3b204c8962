package org.dentary.submission;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.photo.PhotoFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Photographs of what a laboratory counted in: in the entries of what came, was damaged, was missing or was too many. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ReceiptEvidenceTest {
    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void everyEntryOfACountHoldsItsPhoto() {
        String here = bench.aNode();
        String lost = bench.aNode();
        String stray = bench.aNode();
        String id = bench.sent(here, lost);
        UUID photo = photo();
        String body = body(List.of(here, stray), photo);
        receive(id, body).statusCode(201);
        assertEquals(List.of(photo.toString()), shown(here, "RECEIVED"));
        assertEquals(List.of(photo.toString()), shown(lost, "DISCREPANCY_OPENED"), "what was missing");
        assertEquals(List.of(photo.toString()), shown(stray, "DISCREPANCY_OPENED"), "what was too many");
        JsonPath wrong =
                as("auditor").get("/api/v1/discrepancies?subject=" + id).jsonPath();
        assertEquals(List.of(List.of(photo.toString()), List.of(photo.toString())), wrong.getList("items.photos.id"));
        assertTrue(chain(here).getBoolean("verified"));
        as("liaison")
                .get("/specimens/" + here + "/custody")
                .then()
                .body(containsString("custody/evidence/" + photo + "?size=small"));
        receive(id, body).statusCode(200);
        assertEquals(1, shown(here, "RECEIVED").size(), "sent twice, it is one count");
    }

    @Test
    void aPhotoThatNoEntryCanHoldIsRefused() {
        String here = bench.aNode();
        String id = bench.sent(here);
        bench.receive(id, here).statusCode(201);
        bench.receive(id, version(id), body(List.of(here), photo()))
                .statusCode(422)
                .body("errors[0].rule", equalTo("NO_ENTRY_FOR_PHOTOS"));
        bench.receive(id, version(id), body(List.of(here), UUID.randomUUID()))
                .statusCode(422)
                .body("errors[0].rule", equalTo("NO_ENTRY_FOR_PHOTOS"));
        String other = bench.sent(bench.aNode());
        receive(other, body(List.of(), UUID.randomUUID()))
                .statusCode(422)
                .body("errors[0].rule", equalTo("PHOTO_UNKNOWN"));
        assertEquals("DISPATCHED", bench.view(other).getString("state"), "nothing was written");
    }

    @Test
    void thePageTakesAPhotoWhatIsDamagedAndAnEarlierHour() {
        String whole = bench.aNode();
        String leaking = bench.aNode();
        String id = bench.sent(whole, leaking);
        String page = "/submissions/" + id;
        String again = form().multiPart("codes", whole)
                .multiPart("damaged", leaking)
                .multiPart("occurredAt", "yesterday")
                .multiPart("zone", "America/Chicago")
                .multiPart("photo", "parcel.jpg", PhotoFixture.jpeg(500, 400), "image/jpeg")
                .post(page + "/receipt")
                .then()
                .statusCode(422)
                .body(
                        containsString("is no day and time"),
                        containsString("Photo 1 is kept"),
                        containsString(">" + leaking + "</textarea>"))
                .extract()
                .asString();
        String kept = again.replaceAll("(?s).*name=\"photos\" value=\"([^\"]+)\".*", "$1");
        for (int twice = 0; twice < 2; twice++) {
            form().multiPart("codes", whole)
                    .multiPart("damaged", leaking)
                    .multiPart("fromList", "yes")
                    .multiPart("occurredAt", "2025-11-16T10:00")
                    .multiPart("zone", "America/Chicago")
                    .multiPart("reason", "their list came by post")
                    .multiPart("photos", kept)
                    .post(page + "/receipt")
                    .then()
                    .statusCode(303);
        }
        assertEquals(List.of("DAMAGED " + leaking), bench.discrepancies(id));
        JsonPath chain = chain(whole);
        assertEquals(
                "2025-11-16T16:00:00Z",
                chain.getString("events.find { it.kind == 'RECEIVED' }.occurredAt"),
                "ten o'clock on the station's clock");
        assertEquals(List.of(kept), shown(whole, "RECEIVED"));
        assertEquals(List.of(kept), shown(leaking, "RECEIVED"));
        assertEquals(List.of(kept), shown(leaking, "DISCREPANCY_OPENED"));
    }

    private static RequestSpecification form() {
        return as("liaison").redirects().follow(false);
    }

    private static ValidatableResponse receive(String id, String body) {
        return as("liaison")
                .contentType("application/json")
                .body(body)
                .put("/api/v1/submissions/" + id + "/receipt")
                .then();
    }

    private static String version(String id) {
        return as("liaison").get("/api/v1/submissions/" + id).header("ETag");
    }

    private static String body(List<String> codes, UUID photo) {
        String receipt = SubmissionFixture.receipt(codes, List.of());
        return receipt.substring(0, receipt.length() - 1) + ",\"photos\":[\"" + photo + "\"]}";
    }

    private static List<String> shown(String code, String kind) {
        return chain(code).getList("events.find { it.kind == '" + kind + "' }.photos.id", String.class);
    }

    private static JsonPath chain(String code) {
        return as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }

    private static UUID photo() {
        UUID id = UUID.randomUUID();
        as("liaison")
                .contentType("image/jpeg")
                .body(PhotoFixture.jpeg(400, 300))
                .put("/api/v1/custody-evidence/" + id)
                .then()
                .statusCode(201);
        return id;
    }
}
