package org.dentary.custody.event;

import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.builder.MultiPartSpecBuilder;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.custody.CustodyFixture;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What happens between two hand-overs, recorded on a page. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class EventPagesTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    LedgerStore ledger;

    @Inject
    Clock clock;

    private String code;

    @BeforeEach
    void aSpecimen() {
        code = fixture.collected(1, clock.instant().minusSeconds(7200)).get(0);
    }

    @Test
    void aTemperatureIsRecordedOnceAndCorrectedByAnEntryOfItsOwn() {
        Map<String, String> read = form("TEMPERATURE_READ", "temperatureCelsius", "\u221218,5", "sensor", "probe 3");
        post("sampler", read).statusCode(303);
        post("sampler", read).statusCode(303);
        JsonPath chain = chain();
        assertEquals(2, chain.getList("events").size());
        assertEquals(-18.5, chain.getDouble("events[1].temperatureCelsius"));
        assertEquals("probe 3", chain.getString("events[1].sensor"));
        as("sampler")
                .get("/custody/events?done=" + read.get("key"))
                .then()
                .body(containsString("Recorded: temperature read, 1 entry."));
        Map<String, String> changed = new HashMap<>(read);
        changed.put("kind", "MOVED");
        changed.put("place", "shelf 2");
        post("sampler", changed).statusCode(409).body(containsString("sent already with other content"));
        changed = new HashMap<>(read);
        changed.put("temperatureCelsius", "4");
        post("sampler", changed).statusCode(409).body(containsString("sent already with other content"));
        String entry = chain.getString("events[1].id");
        as("sampler")
                .get("/custody/events?codes=" + code + "&corrects=" + entry)
                .then()
                .body(containsString("Correct an entry"))
                .body(containsString("value=\"" + entry + "\""));
        post("sampler", form("CORRECTED", "corrects", entry, "temperatureCelsius", "-17"))
                .statusCode(422);
        post("sampler", form("CORRECTED", "corrects", entry, "temperatureCelsius", "-17", "reason", "misread"))
                .statusCode(303);
        assertEquals(3, chain().getInt("events[1].correctedBy"));
    }

    @Test
    void aSealThatIsNotThereOpensADiscrepancyOnTheSpot() {
        post("sampler", form("TAMPER_SEAL_APPLIED", "tamperSeal", "TS-9")).statusCode(303);
        Map<String, String> check = form("TAMPER_SEAL_CHECKED");
        post("sampler", check).statusCode(303);
        as("sampler").get("/custody/events?done=" + check.get("key")).then().body(containsString("discrepancy opened"));
        assertEquals("TS-9", chain().getString("sealMismatches[0].expected"));
    }

    @Test
    void aFaultyFormIsShownAgainWithWhatWasTypedAndWritesNothing() {
        for (Map.Entry<Map<String, String>, String> fault : List.of(
                Map.entry(form("TEMPERATURE_READ", "temperatureCelsius", "warm"), "is no number of degrees Celsius"),
                Map.entry(form("TEMPERATURE_READ"), "TEMPERATURE_READ needs the temperature"),
                Map.entry(form("TEMPERATURE_READ", "temperatureCelsius", "400"), "between -200 and 100"),
                Map.entry(form("LOST"), "LOST needs a reason"),
                Map.entry(form(""), "Choose what happened"),
                Map.entry(form("HANDOVER_ACCEPTED"), "comes about by its own act"),
                Map.entry(form("MOVED", "place", "shelf", "occurredAt", "soon"), "is no day and time"))) {
            post("sampler", fault.getKey())
                    .statusCode(422)
                    .body(containsString(fault.getValue()))
                    .body(containsString(code));
        }
        assertEquals(1, ledger.chain(code).size());
        post("liaison", form("MOVED", "place", "shelf")).statusCode(409).body(containsString("did not hold"));
        for (String other : List.of("epidemiologist", "notifier", "auditor")) {
            as(other).get("/custody/events").then().statusCode(403);
            post(other, form("MOVED", "place", "shelf")).statusCode(403);
        }
        assertTrue(ledger.chain(code).size() == 1);
    }

    private JsonPath chain() {
        return as("auditor").get("/api/v1/specimens/" + code + "/custody").jsonPath();
    }

    private Map<String, String> form(String kind, String... more) {
        Map<String, String> form = new HashMap<>();
        form.put("key", UUID.randomUUID().toString());
        form.put("codes", code);
        form.put("kind", kind);
        form.put("zone", "America/Chicago");
        for (int i = 0; i < more.length; i += 2) {
            form.put(more[i], more[i + 1]);
        }
        return form;
    }

    private static ValidatableResponse post(String account, Map<String, String> form) {
        RequestSpecification request = as(account).redirects().follow(false);
        form.forEach((name, value) -> request.multiPart(new MultiPartSpecBuilder(value)
                .controlName(name)
                .charset(StandardCharsets.UTF_8)
                .build()));
        return request.post("/custody/events").then();
    }
}
