package org.dentary.custody.desk;

import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.dentary.custody.CustodyFixture;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A form sent again acts once where it says the same, and is refused where it says anything else. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class SentFormsTest {
    private static final String OTHERWISE = "sent already with other content";

    @Inject
    CustodyFixture fixture;

    @Inject
    LedgerStore ledger;

    @Inject
    Clock clock;

    private String code;
    private String key;

    @BeforeEach
    void aSpecimen() {
        code = fixture.collected(1, clock.instant().minus(Duration.ofHours(3))).get(0);
        key = UUID.randomUUID().toString();
    }

    @Test
    void aHandOverIsHeldAgainstAllThatItSaid() {
        String earlier = LocalDateTime.ofInstant(clock.instant().minus(Duration.ofHours(1)), ZoneOffset.UTC)
                .withNano(0)
                .toString();
        Map<String, String> form = new HashMap<>(Map.of(
                "key", key, "codes", code, "to", "liaison", "place", "van", "reason", "on the way", "zone", "UTC"));
        send("sampler", "hand-overs", form).statusCode(303);
        send("sampler", "hand-overs", form).statusCode(303);
        for (Map.Entry<String, String> other : Map.of(
                        "reason",
                        "another",
                        "place",
                        "bench",
                        "to",
                        "coordinator",
                        "occurredAt",
                        earlier,
                        "paperForm",
                        "P-1")
                .entrySet()) {
            Map<String, String> changed = new HashMap<>(form);
            changed.put(other.getKey(), other.getValue());
            send("sampler", "hand-overs", changed)
                    .statusCode(409)
                    .body(containsString(OTHERWISE))
                    .body(containsString(other.getValue()));
        }
        send("coordinator", "hand-overs", form).statusCode(409);
        assertEquals(2, ledger.chain(code).size());
    }

    @Test
    void oneThatNamesItsTimeIsHeldAgainstThatToo() {
        LocalDateTime then = LocalDateTime.ofInstant(clock.instant().minus(Duration.ofHours(1)), ZoneOffset.UTC)
                .withNano(0);
        Map<String, String> form = new HashMap<>(Map.of(
                "key",
                key,
                "codes",
                code,
                "to",
                "liaison",
                "paperForm",
                "P-7",
                "occurredAt",
                then.toString(),
                "zone",
                "UTC"));
        send("sampler", "hand-overs", form).statusCode(303);
        send("sampler", "hand-overs", form).statusCode(303);
        form.put("occurredAt", then.plusMinutes(5).toString());
        send("sampler", "hand-overs", form).statusCode(409).body(containsString(OTHERWISE));
        assertEquals(3, ledger.chain(code).size());
    }

    @Test
    void sentByTwoClicksAtOnceItActsOnce() throws Exception {
        Map<String, String> form = Map.of("key", key, "codes", code, "to", "liaison");
        assertEquals(
                List.of(303, 303, 303, 303),
                atOnce(() -> send("sampler", "hand-overs", form).extract().statusCode()));
        assertEquals(2, ledger.chain(code).size());
        String event = UUID.randomUUID().toString();
        Map<String, String> read =
                Map.of("key", event, "codes", code, "kind", "TEMPERATURE_READ", "temperatureCelsius", "4");
        assertEquals(
                List.of(303, 303, 303, 303),
                atOnce(() -> multipart("sampler", "events", read).extract().statusCode()));
        assertEquals(3, ledger.chain(code).size());
    }

    @Test
    void anAnswerToAnOfferIsHeldAgainstWhatItSaid() {
        String second =
                fixture.collected(1, clock.instant().minus(Duration.ofHours(3))).get(0);
        send("sampler", "hand-overs", Map.of("key", key, "codes", code + " " + second, "to", "liaison"))
                .statusCode(303);
        String accept = "hand-overs/" + key + "/acceptance";
        send("liaison", accept, Map.of("codes", code)).statusCode(303);
        send("liaison", accept, Map.of("codes", code)).statusCode(303);
        send("liaison", accept, Map.of("codes", code + " " + second)).statusCode(409);
        send("liaison", "hand-overs/" + key + "/refusal", Map.of("reason", "not mine"))
                .statusCode(409);
        String offer = UUID.randomUUID().toString();
        send("liaison", "hand-overs", Map.of("key", offer, "codes", code, "to", "sampler"))
                .statusCode(303);
        send("sampler", "hand-overs/" + offer + "/refusal", Map.of("reason", "wet"))
                .statusCode(303);
        send("sampler", "hand-overs/" + offer + "/refusal", Map.of("reason", "wet"))
                .statusCode(303);
        send("sampler", "hand-overs/" + offer + "/refusal", Map.of("reason", "torn"))
                .statusCode(409);
    }

    @Test
    void aSettledDiscrepancyIsNotSettledOtherwiseInSilence() {
        String id = UUID.randomUUID().toString();
        as("liaison")
                .contentType("application/json")
                .body(Map.of("code", code, "kind", "OTHER", "owner", "T_LIAISON", "dueOn", "2026-12-24"))
                .put("/api/v1/discrepancies/" + id)
                .then()
                .statusCode(201);
        Map<String, String> form =
                new HashMap<>(Map.of("version", "0", "outcome", "FOUND", "evidence", "on the shelf"));
        send("liaison", "discrepancies/" + id, form).statusCode(303);
        send("liaison", "discrepancies/" + id, form).statusCode(303);
        form.put("evidence", "under the shelf");
        send("liaison", "discrepancies/" + id, form).statusCode(412);
        as("liaison")
                .get("/api/v1/discrepancies/" + id)
                .then()
                .body("evidence", org.hamcrest.Matchers.equalTo("on the shelf"));
    }

    @Test
    void whatIsNotAllowedIsNamedWithWhatIs() {
        Map<String, String> form = new HashMap<>(Map.of("key", key, "codes", code, "kind", "MOVED", "place", "van"));
        refused(form, "condition", "SPOILED", "choose one of GOOD, SOFT, AUTOLYSED");
        refused(form, "kind", "EATEN", "choose one of LABEL_APPLIED");
        refused(form, "zone", "Nowhere/Town", "is no time zone");
        send("liaison", "discrepancies/" + UUID.randomUUID(), Map.of("version", "0", "outcome", "x"))
                .statusCode(404);
        String box = fixture.aBoxLabel();
        as("sampler")
                .formParams(Map.of("place", "van"))
                .post("/boxes/" + box)
                .then()
                .statusCode(200);
        for (String what : List.of("", "up")) {
            as("sampler")
                    .accept("text/html")
                    .formParams(Map.of("content", code, "do", what))
                    .post("/boxes/" + box + "/contents")
                    .then()
                    .statusCode(422)
                    .body(containsString("do is in or out"));
        }
        as("sampler")
                .formParams(Map.of("place", "bench", "version", "two"))
                .post("/boxes/" + box)
                .then()
                .statusCode(422)
                .body(containsString("load the page again"));
    }

    private void refused(Map<String, String> form, String field, String value, String words) {
        Map<String, String> changed = new HashMap<>(form);
        changed.put(field, value);
        multipart("sampler", "events", changed)
                .statusCode(422)
                .body(containsString(words))
                .body(containsString(code));
        assertEquals(1, ledger.chain(code).size(), "nothing is written");
    }

    private static List<Integer> atOnce(Callable<Integer> send) throws Exception {
        ExecutorService senders = Executors.newFixedThreadPool(4);
        try {
            List<Future<Integer>> answers = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                answers.add(senders.submit(send));
            }
            List<Integer> statuses = new ArrayList<>();
            for (Future<Integer> answer : answers) {
                statuses.add(answer.get());
            }
            return statuses;
        } finally {
            senders.shutdown();
        }
    }

    private static ValidatableResponse send(String account, String path, Map<String, String> form) {
        return as(account)
                .redirects()
                .follow(false)
                .formParams(form)
                .post("/custody/" + path)
                .then();
    }

    private static ValidatableResponse multipart(String account, String path, Map<String, String> form) {
        var request = as(account).redirects().follow(false);
        form.forEach(request::multiPart);
        return request.post("/custody/" + path).then();
    }
}
