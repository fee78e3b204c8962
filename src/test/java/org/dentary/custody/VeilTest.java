package org.dentary.custody;

import static org.dentary.custody.Http.as;
import static org.dentary.custody.Http.json;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** Tissue that was brought to its first laboratory by hand, not by a submission, is veiled from there on as well. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class VeilTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    Clock clock;

    @Test
    void beginsWithTheFirstLaboratoryHoweverItGotThere() {
        Instant at = clock.instant().minus(Duration.ofHours(3));
        String code = fixture.collected(1, at).get(0);
        offer("sampler", code, SeasonFixture.LABORATORY, at.plusSeconds(60));
        json("liaison")
                .body(Map.of(
                        "codes",
                        List.of(code),
                        "kind",
                        "FORWARDED",
                        "place",
                        SeasonFixture.CONFIRMING_LABORATORY,
                        "occurredAt",
                        at.plusSeconds(600).toString(),
                        "reason",
                        "to be confirmed"))
                .put("/api/v1/custody-events/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        String back = offer("liaison", code, SeasonFixture.PARTY, at.plusSeconds(900));
        for (String blind : List.of("epidemiologist", "sampler")) {
            chain(blind, code)
                    .body("custodian", equalTo(SeasonFixture.LABORATORY))
                    .body(
                            "events.kind",
                            contains(
                                    "COLLECTED",
                                    "HANDOVER_OFFERED",
                                    "HANDOVER_ACCEPTED",
                                    "AT_LABORATORY",
                                    "AT_LABORATORY",
                                    "AT_LABORATORY"))
                    .body("events[2].signedBy", equalTo("A. Courier"));
            as(blind)
                    .get("/specimens/" + code + "/custody")
                    .then()
                    .body(not(containsString("orwarded")))
                    .body(not(containsString("to be confirmed")));
            as(blind).get("/api/v1/hand-overs/" + back).then().statusCode(404);
            as(blind).get("/api/v1/codes/" + code).then().body("place", equalTo(SeasonFixture.LABORATORY));
        }
        chain("liaison", code)
                .body("custodian", equalTo(SeasonFixture.PARTY))
                .body("events[3].kind", equalTo("FORWARDED"));
    }

    private static String offer(String account, String code, String to, Instant at) {
        String id = UUID.randomUUID().toString();
        json(account)
                .body(Map.of("codes", List.of(code), "to", to, "occurredAt", at.toString(), "signedBy", "A. Courier"))
                .put("/api/v1/hand-overs/" + id)
                .then()
                .statusCode(201);
        return id;
    }

    private static ValidatableResponse chain(String account, String code) {
        return as(account).get("/api/v1/specimens/" + code + "/custody").then().statusCode(200);
    }
}
