package org.dentary.submission;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What became known between packing and leaving stops the parcel, by code. That days go on counting while a parcel waits, and
 * that nothing in doubt is sent, is common practice, no source; the limits are invented.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class DispatchTest {
    private static final String TOO_LATE = "2025-11-29T08:00:00-06:00";

    @Inject
    SeasonFixture season;

    @Inject
    IntakeFixture deer;

    @Inject
    SubmissionFixture bench;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void whatGrewTooOldWhileItWaitedGoesForAReasonOnlyWhichTheManifestTells() {
        String waited = bench.aNode();
        String fresh = bench.aNodeTaken("2025-11-16T09:20:00-06:00");
        String id = bench.begun("T_LAB");
        bench.pack(id, waited).statusCode(201);
        bench.pack(id, fresh, "{\"packedAt\":\"2025-11-17T08:00:00-06:00\"}").statusCode(201);
        refused(bench.dispatch(id, TOO_LATE), waited, "TOO_OLD");
        assertEquals("PACKING", bench.view(id).getString("state"));
        leave(id, TOO_LATE, "the laboratory waits for it").statusCode(200);
        assertEquals(
                "the laboratory waits for it",
                bench.view(id).getString("specimens.find { it.code == '" + waited + "' }.overrideReason"));
        assertEquals(null, bench.view(id).getString("specimens.find { it.code == '" + fresh + "' }.overrideReason"));
        as("liaison")
                .get("/api/v1/submissions/" + id + "/manifest.csv")
                .then()
                .body(containsString("the laboratory waits for it"));
    }

    @Test
    void aReasonGivenAtPackingPassesItsOwnRuleAgainAndNoOther() {
        String code = bench.aNode();
        String id = bench.begun("T_LAB");
        bench.pack(id, code, "{\"packedAt\":\"2025-11-29T07:00:00-06:00\",\"overrideReason\":\"agreed by telephone\"}")
                .statusCode(201);
        keep(code, "ETHANOL");
        refused(bench.dispatch(id, TOO_LATE), code, "PRESERVATION_NOT_ACCEPTED");
        leave(id, TOO_LATE, "ethanol too").statusCode(200);
        assertEquals(List.of("agreed by telephone; ethanol too"), bench.view(id).getList("specimens.overrideReason"));
        String old = bench.aNode();
        String other = bench.begun("T_LAB");
        bench.pack(
                        other,
                        old,
                        "{\"packedAt\":\"2025-11-29T07:00:00-06:00\",\"overrideReason\":\"agreed by telephone\"}")
                .statusCode(201);
        bench.dispatch(other, TOO_LATE).statusCode(200);
    }

    @Test
    void tissueFoundToBeTooYoungStaysUnlessAReasonIsGiven() {
        String laboratory = aLaboratoryOfAdults();
        Deer one = aDeerWithANode();
        String code = one.label(Part.NODE_LEFT);
        String id = bench.begun(laboratory);
        bench.pack(id, code).statusCode(201);
        UUID reading = UUID.randomUUID();
        deer.put("sampler", "/animals/" + one.kit() + "/jaw-readings/" + reading, deer.yearling(reading))
                .statusCode(201);
        assertEquals("YEARLING", bench.view(id).getString("specimens[0].ageClass"), "the jaw was read after packing");
        refused(bench.dispatch(id), code, "TOO_YOUNG");
        leave(id, SubmissionFixture.LEFT_AT, "they take it all the same").statusCode(200);
    }

    @Test
    void noReasonSendsALabelInDoubtNorTissueOfAnAnimalThatIsNone() {
        Deer swapped = aDeerWithANode();
        Deer mistaken = aDeerWithANode();
        Deer third = deer.aDeer();
        deer.take(third, deer.facts());
        String id = bench.begun("T_LAB");
        bench.pack(id, swapped.label(Part.NODE_LEFT)).statusCode(201);
        bench.pack(id, mistaken.label(Part.NODE_LEFT)).statusCode(201);
        deer.put(
                        "coordinator",
                        "/specimens/" + swapped.label(Part.NODE_LEFT) + "/re-attribution/" + UUID.randomUUID(),
                        "{\"kit\":\"" + third.kit()
                                + "\",\"reason\":\"two bags were swapped\",\"evidence\":\"the notebook\"}")
                .statusCode(201);
        as("sampler")
                .header(
                        "If-Match",
                        as("sampler").get("/api/v1/animals/" + mistaken.kit()).header("ETag"))
                .contentType("application/json")
                .body(deer.facts().put("enteredInError", true).put("reason", "practice deer"))
                .put("/api/v1/animals/" + mistaken.kit())
                .then()
                .statusCode(200);
        leave(id, SubmissionFixture.LEFT_AT, "because")
                .statusCode(422)
                .body(
                        "errors.find { it.field == '" + swapped.label(Part.NODE_LEFT) + "' }.rule",
                        equalTo("NOT_ATTRIBUTABLE"),
                        "errors.find { it.field == '" + mistaken.label(Part.NODE_LEFT) + "' }.rule",
                        equalTo("ENTERED_IN_ERROR"));
        String other = bench.begun("T_LAB");
        bench.pack(other, mistaken.label(Part.NODE_LEFT)).statusCode(422);
    }

    @Test
    void whatIsLostIsNotSentNorPackedUntilItIsFound() {
        String code = bench.aNode();
        String id = bench.packed(code);
        event(code, "LOST");
        refused(leave(id, "2025-11-16T09:00:00-06:00", "because"), code, "LOST");
        as("liaison")
                .delete("/api/v1/submissions/" + id + "/specimens/" + code)
                .then()
                .statusCode(200);
        bench.pack(id, code).statusCode(422).body("errors.rule", contains("LOST"));
    }

    @Test
    void thePageAndTheListTellWhatChangedBeforeAnythingLeaves() {
        String changed = bench.aNode();
        String handed = bench.aNode("sampler", "FRESH_CHILLED");
        String id = bench.begun("T_LAB");
        bench.pack(
                        id,
                        changed,
                        "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT + "\",\"overrideReason\":\"no rule spoke\"}")
                .statusCode(201);
        bench.pack(
                        id,
                        handed,
                        "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT + "\",\"overrideReason\":\"he stands here\"}")
                .statusCode(201);
        keep(changed, "ETHANOL");
        as("liaison")
                .get("/api/v1/submissions/" + id + "/objections")
                .then()
                .statusCode(200)
                .body(
                        "items.find { it.code == '" + changed
                                + "' && it.rule == 'PRESERVATION_NOT_ACCEPTED' }.passable",
                        equalTo(true),
                        "items.find { it.code == '" + handed + "' && it.rule == 'NOT_WITH_YOU' }.passable",
                        equalTo(false));
        String csv = as("liaison")
                .get("/api/v1/submissions/" + id + "/objections.csv")
                .asString();
        assertTrue(csv.contains(changed + ",PRESERVATION_NOT_ACCEPTED,"), csv);
        page(id).body(
                        containsString("Not to be sent as it is: 2"),
                        containsString("id=\"" + changed + "\""),
                        containsString("Why these tubes go all the same"));
        as("liaison")
                .redirects()
                .follow(false)
                .formParams("carrier", "T_COURIER", "leavingReason", "")
                .post("/submissions/" + id + "/dispatch")
                .then()
                .statusCode(422)
                .body(containsString("href=\"#" + changed + "\""), containsString("value=\"T_COURIER\""));
        String clear = bench.begun("T_LAB");
        page(clear).body(not(containsString("Not to be sent as it is")));
        String left = bench.sent(bench.aNode());
        as("liaison").get("/api/v1/submissions/" + left + "/objections").then().body("items", empty());
    }

    private ValidatableResponse page(String id) {
        return as("liaison").get("/submissions/" + id).then().statusCode(200);
    }

    private Deer aDeerWithANode() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        deer.put(
                        "liaison",
                        "/animals/" + one.kit() + "/specimens/" + one.label(Part.NODE_LEFT),
                        deer.node(one).put("preservation", "FRESH_CHILLED"))
                .statusCode(201);
        return one;
    }

    private void keep(String code, String preservation) {
        as("liaison")
                .redirects()
                .follow(false)
                .formParams("keptCode", code, "preservation", preservation, "keptReason", "no ice left")
                .post("/submissions/" + bench.begun("T_LAB") + "/keeping")
                .then()
                .statusCode(303);
    }

    private void event(String code, String kind) {
        deer.put(
                        "liaison",
                        "/custody-events/" + UUID.randomUUID(),
                        "{\"codes\":[\"" + code + "\"],\"kind\":\"" + kind
                                + "\",\"occurredAt\":\"2025-11-15T20:00:00-06:00\",\"reason\":\"not in the freezer\"}")
                .statusCode(201);
    }

    private ValidatableResponse leave(String id, String occurredAt, String why) {
        return bench.post(
                id + "/dispatch",
                "{\"occurredAt\":\"" + occurredAt + "\",\"carrier\":\"T_COURIER\",\"overrideReason\":\"" + why
                        + "\",\"reason\":\"written down on paper\"}");
    }

    private static void refused(ValidatableResponse answer, String code, String rule) {
        answer.statusCode(422)
                .body(
                        "errors.field", contains(code),
                        "errors.rule", contains(rule),
                        "errors[0].message", containsString(code));
    }

    private String aLaboratoryOfAdults() {
        String code = "T_ADULTS_" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(Locale.ROOT);
        QuarkusTransaction.requiringNew().run(() -> {
            entities.createNativeQuery("insert into laboratory (code, name, position) values ('" + code
                            + "', 'Laboratory of adults', 90)")
                    .executeUpdate();
            entities.createNativeQuery("insert into laboratory_acceptance (laboratory, method, tissue, preservation,"
                            + " minimum_age, in_force_from) values ('" + code
                            + "', 'T_SCREEN', 'MEDIAL_RETROPHARYNGEAL_NODE', 'FRESH_CHILLED', 'ADULT', '2020-01-01')")
                    .executeUpdate();
        });
        return code;
    }
}
