package org.dentary.custody.evidence;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.codes.Part;
import org.dentary.custody.CustodyFixture;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.photo.PhotoFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Photographs of hand-overs and of what does not add up: their digests in every entry of the act. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class EvidenceOfActsTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    LedgerStore ledger;

    @Inject
    Clock clock;

    private Instant collectedAt;

    @BeforeEach
    void time() {
        collectedAt = clock.instant().minus(Duration.ofHours(2));
    }

    @Test
    void offerCountAndDifferenceEachHoldTheirPhoto() {
        List<String> codes = fixture.collected(2, collectedAt);
        UUID id = UUID.randomUUID();
        UUID sealed = photo("sampler");
        Map<String, Object> offer = with(sealed, "codes", codes, "to", "liaison", "occurredAt", at(10));
        json("sampler").body(offer).put("/api/v1/hand-overs/" + id).then().statusCode(201);
        json("sampler").body(offer).put("/api/v1/hand-overs/" + id).then().statusCode(200);
        assertEquals(List.of(sealed.toString()), shown(codes.get(0), 1));
        UUID open = photo("liaison");
        Map<String, Object> foreign = with(sealed, "codes", codes.subList(0, 1), "occurredAt", at(20));
        json("liaison")
                .body(foreign)
                .post("/api/v1/hand-overs/" + id + "/acceptance")
                .then()
                .statusCode(422)
                .body("code", equalTo("PHOTO_UNKNOWN"));
        json("liaison")
                .body(with(open, "codes", codes.subList(0, 1), "occurredAt", at(20)))
                .post("/api/v1/hand-overs/" + id + "/acceptance")
                .then()
                .statusCode(200)
                .body("state", equalTo("PART_ACCEPTED"));
        assertEquals(List.of(open.toString()), shown(codes.get(0), 2), "on what was taken over");
        assertEquals(List.of(open.toString()), shown(codes.get(1), 2), "and on what was missing");
        String digest = chain(codes.get(1)).getString("events[2].photos[0].sha256");
        assertTrue(ledger.chain(codes.get(1)).get(2).bytes().contains(digest), "its digest is in the hashed bytes");
        JsonPath wrong = discrepancy(codes.get(1));
        assertEquals("SHORT", wrong.getString("items[0].kind"));
        assertEquals(open.toString(), wrong.getString("items[0].photos[0].id"));
        as("sampler")
                .get(wrong.getString("items[0].photos[0].href"))
                .then()
                .statusCode(200)
                .contentType("image/jpeg");
        as("liaison")
                .get("/custody/discrepancies")
                .then()
                .statusCode(200)
                .body(containsString("custody/evidence/" + open + "?size=small"));
    }

    @Test
    void aRefusalAndABrokenSealHoldTheirPhoto() {
        List<String> codes = fixture.collected(1, collectedAt);
        UUID id = UUID.randomUUID();
        json("sampler")
                .body(Map.of("codes", codes, "to", "liaison", "occurredAt", at(10)))
                .put("/api/v1/hand-overs/" + id)
                .then()
                .statusCode(201);
        UUID warm = photo("liaison");
        json("liaison")
                .body(with(warm, "reason", "the cooler was warm"))
                .post("/api/v1/hand-overs/" + id + "/refusal")
                .then()
                .statusCode(200);
        assertEquals(List.of(warm.toString()), shown(codes.get(0), 2));
        UUID broken = photo("sampler");
        json("sampler")
                .body(with(
                        broken,
                        "codes",
                        codes,
                        "kind",
                        "TAMPER_SEAL_CHECKED",
                        "tamperSeal",
                        "X-2",
                        "occurredAt",
                        at(30)))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        assertEquals("DISCREPANCY_OPENED", chain(codes.get(0)).getString("events[4].kind"));
        assertEquals(List.of(broken.toString()), shown(codes.get(0), 4));
        assertEquals(broken.toString(), discrepancy(codes.get(0)).getString("items[0].photos[0].id"));
    }

    @Test
    void aDiscrepancyIsOpenedAndSettledWithPhotosAndNotBetween() {
        String code = fixture.collected(1, collectedAt).get(0);
        UUID id = UUID.randomUUID();
        UUID dented = photo("sampler");
        put(id, "sampler", with(dented, facts(code))).statusCode(201).body("photos", hasSize(1));
        UUID between = photo("sampler");
        Map<String, Object> changed = new HashMap<>(facts(code));
        changed.put("evidence", "the lid is off as well");
        changed.put("reason", "looked again");
        put(id, "sampler", with(between, changed))
                .statusCode(422)
                .body("errors[0].rule", equalTo("NO_ENTRY_FOR_PHOTOS"));
        // On the page: the form is faulty first, and the photo is kept for the second try.
        String page = as("sampler")
                .multiPart("version", "0")
                .multiPart("photo", "lid.jpg", PhotoFixture.jpeg(500, 400), "image/jpeg")
                .post("/custody/discrepancies/" + id)
                .then()
                .statusCode(422)
                .body(containsString("Say how it was settled"))
                .body(containsString("Photo 1 is kept"))
                .extract()
                .asString();
        String kept = page.replaceAll("(?s).*name=\"photos\" value=\"([^\"]+)\".*", "$1");
        as("sampler")
                .redirects()
                .follow(false)
                .multiPart("version", "0")
                .multiPart("outcome", "ACCEPTED_WITH_DISCLAIMER")
                .multiPart("photos", kept)
                .post("/custody/discrepancies/" + id)
                .then()
                .statusCode(303);
        assertEquals(List.of(dented.toString(), kept), discrepancy(code).getList("items[0].photos.id", String.class));
        assertEquals("DISCREPANCY_RESOLVED", chain(code).getString("events[2].kind"));
        assertEquals(List.of(kept), shown(code, 2));
        assertTrue(chain(code).getBoolean("verified"));
    }

    @Test
    void whatWasNeverCollectedHasNoEntryToHoldAPhoto() {
        String label = fixture.labels(1, Part.NODE_LEFT).get(0);
        put(UUID.randomUUID(), "sampler", with(photo("sampler"), facts(label)))
                .statusCode(422)
                .body("errors[0].message", containsString("Nothing was collected under"));
        assertEquals(List.of(), discrepancy(label).getList("items"));
    }

    @Test
    void thePagesTakeAPhotoOfAnOfferAndOfItsRefusal() {
        String code = fixture.collected(1, collectedAt).get(0);
        String key = UUID.randomUUID().toString();
        as("sampler")
                .multiPart("key", key)
                .multiPart("codes", code)
                .multiPart("photo", "cooler.jpg", PhotoFixture.jpeg(500, 400), "image/jpeg")
                .post("/custody/hand-overs")
                .then()
                .statusCode(422)
                .body(containsString("Say who takes it over"))
                .body(containsString("Photo 1 is kept"));
        as("sampler")
                .redirects()
                .follow(false)
                .multiPart("key", key)
                .multiPart("codes", code)
                .multiPart("to", "liaison")
                .multiPart("photo", "cooler.jpg", PhotoFixture.jpeg(500, 400), "image/jpeg")
                .post("/custody/hand-overs")
                .then()
                .statusCode(303);
        assertEquals(1, shown(code, 1).size());
        as("liaison")
                .redirects()
                .follow(false)
                .multiPart("reason", "it leaks")
                .multiPart("photo", "leak.jpg", PhotoFixture.jpeg(400, 500), "image/jpeg")
                .post("/custody/hand-overs/" + key + "/refusal")
                .then()
                .statusCode(303);
        assertEquals(1, shown(code, 2).size());
        // Forms without a file still come as they came before.
        as("sampler")
                .redirects()
                .follow(false)
                .formParam("key", UUID.randomUUID().toString())
                .formParam("codes", code)
                .formParam("to", "liaison")
                .post("/custody/hand-overs")
                .then()
                .statusCode(303);
    }

    private static Map<String, Object> facts(String code) {
        return Map.of("code", code, "kind", "DAMAGED", "owner", "sampler", "dueOn", "2099-01-31");
    }

    private static Map<String, Object> with(UUID photo, Map<String, Object> facts) {
        Map<String, Object> body = new HashMap<>(facts);
        body.put("photos", List.of(photo));
        return body;
    }

    private static Map<String, Object> with(UUID photo, Object... facts) {
        Map<String, Object> body = new HashMap<>();
        for (int i = 0; i < facts.length; i += 2) {
            body.put((String) facts[i], facts[i + 1]);
        }
        return with(photo, body);
    }

    private static io.restassured.response.ValidatableResponse put(UUID id, String account, Map<String, Object> body) {
        var request = json(account).body(body);
        return (body.containsKey("reason") ? request.header("If-Match", "\"0\"") : request)
                .put("/api/v1/discrepancies/" + id)
                .then();
    }

    private String at(int minutes) {
        return collectedAt.plus(Duration.ofMinutes(minutes)).toString();
    }

    private static List<String> shown(String code, int event) {
        return chain(code).getList("events[" + event + "].photos.id", String.class);
    }

    private static JsonPath chain(String code) {
        return as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }

    private static JsonPath discrepancy(String code) {
        return as("auditor").get("/api/v1/discrepancies?code=" + code).jsonPath();
    }

    private static UUID photo(String account) {
        UUID id = UUID.randomUUID();
        as(account)
                .contentType("image/jpeg")
                .body(PhotoFixture.jpeg(400, 300))
                .put("/api/v1/custody-evidence/" + id)
                .then()
                .statusCode(201);
        return id;
    }
}
