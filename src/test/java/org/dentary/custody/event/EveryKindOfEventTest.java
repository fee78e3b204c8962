package org.dentary.custody.event;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.containsString;
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
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.custody.Arrival;
import org.dentary.custody.Collected;
import org.dentary.custody.CustodyFixture;
import org.dentary.custody.CustodyService;
import org.dentary.custody.ParcelService;
import org.dentary.custody.Shipment;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** One specimen's long life: every kind of event there is comes about, by hand or by its own act, and stays whole. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class EveryKindOfEventTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    CustodyService custody;

    @Inject
    ParcelService parcels;

    @Inject
    Clock clock;

    private Instant now;

    @Test
    void everyKindComesAboutAndTheChainStaysWhole() {
        now = clock.instant().minus(Duration.ofHours(2));
        String code = fixture.collected(1, now).get(0);
        record("sampler", code, "LABEL_APPLIED");
        record("sampler", code, "TAMPER_SEAL_APPLIED", "tamperSeal", "S-1");
        record("sampler", code, "TAMPER_SEAL_CHECKED", "tamperSeal", "S-2");
        settle(code);
        record("sampler", code, "TEMPERATURE_READ", "temperatureCelsius", 3.5, "sensor", "probe 1");
        String read = chain(code).getString("events[-1].id");
        record("sampler", code, "CORRECTED", "corrects", read, "temperatureCelsius", 4.5, "reason", "misread");
        record("sampler", code, "MOVED", "place", "the back of the truck");
        record("sampler", code, "HOLD_PLACED", "reason", "asked for by counsel");
        record("sampler", code, "HOLD_LIFTED");
        record("sampler", code, "LOST", "reason", "not in its box");
        record("sampler", code, "FOUND", "reason", "under the seat");
        String piece = fixture.labels(1, Part.SPARE_1).get(0);
        fixture.as("sampler");
        custody.collected(List.of(new Collected(piece, later(), now, null, "GOOD", code)));
        inAndOutOfABox(code);
        offer(code, "refusal", Map.of("reason", "the cooler is warm", "occurredAt", later().toString()));
        record("sampler", code, "STORED", "place", SeasonFixture.STORE);
        takenOut(code);
        offer(code, "acceptance", Map.of("codes", List.of(code), "occurredAt", later().toString()));
        fixture.as("liaison");
        parcels.ship(new Shipment(
                List.of(code), "T_COURIER", "W-1", later(), null, null, UUID.randomUUID(), null, List.of()));
        record("liaison", code, "DELIVERED");
        fixture.as("liaison");
        parcels.receive(
                new Arrival(List.of(code), SeasonFixture.LABORATORY, later(), null, null, UUID.randomUUID(), null));
        for (String kind : List.of("ACCESSIONED", "TESTED", "RETAINED")) {
            record("liaison", code, kind);
        }
        record("liaison", code, "FORWARDED", "place", SeasonFixture.CONFIRMING_LABORATORY);
        record("liaison", code, "RETURNED", "reason", "nothing left to test");
        record("liaison", code, "DESTROYED", "reason", "retention has ended", "witness", "T_SAMPLER");

        JsonPath chain = chain(code);
        Set<String> kinds = new TreeSet<>(chain.getList("events.kind", String.class));
        // Vouching for a mislabeled specimen has tests of its own, with its two signatures.
        Set<String> all = Arrays.stream(CustodyKind.values())
                .map(Enum::name)
                .filter(kind -> !kind.startsWith("IDENTITY_EXCEPTION"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(all, kinds);
        assertTrue(chain.getBoolean("verified"));
        assertEquals("S-1", chain.getString("events.find { it.kind == 'TAMPER_SEAL_CHECKED' }.tamperSealBefore"));
        // The page for what happens by hand offers every such kind.
        String page = as("sampler")
                .get("/custody/events")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        for (CustodyKind kind : CustodyKind.byHand()) {
            assertTrue(
                    kind == CustodyKind.CORRECTED || page.contains("<option value=\"" + kind.name() + "\""),
                    kind.name());
        }
        as("auditor")
                .get("/specimens/" + code + "/custody")
                .then()
                .statusCode(200)
                .body(containsString("Destroyed"));
        as("auditor")
                .get("/api/v1/specimens/" + code + "/custody.pdf")
                .then()
                .statusCode(200)
                .contentType("application/pdf");
    }

    private void settle(String code) {
        String id = as("auditor")
                .get("/api/v1/discrepancies?code=" + code)
                .jsonPath()
                .getString("items[0].id");
        json("sampler")
                .header("If-Match", "\"0\"")
                .body(Map.of(
                        "code",
                        code,
                        "kind",
                        "SEAL_MISMATCH",
                        "owner",
                        "sampler",
                        "dueOn",
                        "2099-01-31",
                        "outcome",
                        "MISCOUNT"))
                .put("/api/v1/discrepancies/" + id)
                .then()
                .statusCode(200);
    }

    private void inAndOutOfABox(String code) {
        String box = fixture.aBoxLabel();
        json("sampler")
                .body(Map.of("place", SeasonFixture.STATION, "occurredAt", later().toString()))
                .put("/api/v1/boxes/" + box)
                .then()
                .statusCode(201);
        String content = "/api/v1/boxes/" + box + "/contents/" + code;
        json("sampler")
                .body(Map.of("occurredAt", later().toString()))
                .put(content)
                .then()
                .statusCode(201);
        json("sampler")
                .body(Map.of("occurredAt", later().toString()))
                .delete(content)
                .then()
                .statusCode(204);
    }

    private void offer(String code, String answer, Map<String, Object> answered) {
        String path = "/api/v1/hand-overs/" + UUID.randomUUID();
        json("sampler")
                .body(Map.of("codes", List.of(code), "to", "liaison", "occurredAt", now.toString()))
                .put(path)
                .then()
                .statusCode(201);
        json("liaison").body(answered).post(path + "/" + answer).then().statusCode(200);
    }

    private void takenOut(String code) {
        json("sampler")
                .body(Map.of("codes", List.of(code), "to", "T_SAMPLER", "occurredAt", later().toString()))
                .put("/api/v1/hand-overs/" + UUID.randomUUID())
                .then()
                .statusCode(201);
    }

    private void record(String account, String code, String kind, Object... facts) {
        Map<String, Object> body = new HashMap<>();
        body.put("codes", List.of(code));
        body.put("kind", kind);
        body.put("occurredAt", later().toString());
        for (int i = 0; i < facts.length; i += 2) {
            body.put((String) facts[i], facts[i + 1]);
        }
        json(account)
                .body(body)
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
    }

    /** A minute after what was before. */
    private Instant later() {
        now = now.plusSeconds(60);
        return now;
    }

    private static JsonPath chain(String code) {
        return as("liaison").get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }
}
