package org.dentary.intake.putright;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.UUID;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** What two people put right: swapped labels, one animal under two kits, readers who differ. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PutRightTest {
    @Inject
    IntakeFixture deer;

    @Inject
    ObjectMapper json;

    @Test
    void aSwappedLabelFollowsTheTissueOnceASecondPersonConfirms() {
        Deer from = deer.aDeer();
        Deer to = deer.aDeer();
        deer.take(from, deer.yearlingWithLeftNode(from));
        deer.take(to, deer.facts());
        String code = from.label(Part.NODE_LEFT);
        UUID id = UUID.randomUUID();
        String path = "/specimens/" + code + "/re-attribution/" + id;
        ObjectNode ask = ask(to);
        deer.put("coordinator", path, ask).statusCode(201).body("state", equalTo("ASKED"));
        deer.put("coordinator", path, ask).statusCode(200);
        deer.put("coordinator", path, ask(to).put("reason", "other")).statusCode(409);
        deer.put("epidemiologist", "/specimens/" + code + "/re-attribution/" + UUID.randomUUID(), ask)
                .statusCode(409)
                .body("code", equalTo("ASKED_ALREADY"));
        for (Deer each : new Deer[] {from, to}) {
            story(each)
                    .body("notAttributable", equalTo(true))
                    .body("outcomes[0].exclusion", equalTo("NOT_ATTRIBUTABLE"))
                    .body("reAttributions", hasSize(1));
        }
        post("sampler", path + "/confirmation").statusCode(403);
        post("coordinator", path + "/confirmation").statusCode(403).body("code", equalTo("SECOND_PERSON_NEEDED"));
        post("epidemiologist", path + "/confirmation").statusCode(200).body("state", equalTo("CONFIRMED"));
        post("epidemiologist", path + "/confirmation").statusCode(200);
        post("coordinator-two", path + "/confirmation").statusCode(409).body("code", equalTo("DECIDED_ALREADY"));
        story(from)
                .body("specimens", hasSize(0))
                .body("outcome", equalTo("NOT_TESTED"))
                .body("outcomes[0].exclusion", equalTo(""))
                .body("reAttributions[0].toKit", equalTo(to.kit()));
        story(to)
                .body("specimens[0].code", equalTo(code))
                .body("specimens[0].kitPrinted", equalTo(from.kit()))
                .body("outcome", equalTo("PENDING"))
                .body("notAttributable", equalTo(false));
        deer.put("sampler", "/animals/" + from.kit() + "/specimens/" + code, deer.node(from))
                .statusCode(200);
    }

    @Test
    void aReAttributionIsRefusedOrWithdrawnAndBothCountAgain() {
        Deer from = deer.aDeer();
        Deer to = deer.aDeer();
        deer.take(from, deer.yearlingWithLeftNode(from));
        deer.take(to, deer.facts());
        String path = "/specimens/" + from.label(Part.NODE_LEFT) + "/re-attribution/" + UUID.randomUUID();
        deer.put("sampler", path, ask(to)).statusCode(201);
        as("sampler")
                .contentType("application/json")
                .body("{\"reason\":\"misread the form\"}")
                .post("/api/v1" + path + "/refusal")
                .then()
                .statusCode(200)
                .body("state", equalTo("REFUSED"));
        story(from).body("outcomes[0].exclusion", equalTo("")).body("specimens", hasSize(1));
        post("epidemiologist", path + "/confirmation").statusCode(409);
        deer.put(
                        "sampler",
                        "/specimens/" + from.label(Part.NODE_LEFT) + "/re-attribution/" + UUID.randomUUID(),
                        ask(from))
                .statusCode(409)
                .body("code", equalTo("ALREADY_BOUND"));
    }

    @Test
    void twoKitsOfOneAnimalCountOnceUntilTheLinkIsUndone() {
        Deer counted = deer.aDeer();
        Deer duplicate = deer.aDeer();
        deer.take(counted, deer.facts());
        deer.take(duplicate, deer.facts());
        String path = "/animals/" + duplicate.kit() + "/same-as/" + counted.kit();
        ObjectNode why = why().put("evidence", "same tag");
        deer.put("sampler", path, why).statusCode(403);
        deer.put("epidemiologist", path, why()).statusCode(422).body("errors[0].field", equalTo("evidence"));
        deer.put("epidemiologist", path, why)
                .statusCode(201)
                .body("sameAs", equalTo(counted.kit()))
                .body("outcomes[0].exclusion", equalTo("DUPLICATE"));
        deer.put("epidemiologist", path, why).statusCode(200);
        story(counted).body("duplicates", hasItem(duplicate.kit())).body("outcomes[0].exclusion", equalTo(""));
        deer.put("epidemiologist", "/animals/" + counted.kit() + "/same-as/" + duplicate.kit(), why)
                .statusCode(409)
                .body("code", equalTo("COUNTED_IS_DUPLICATE"));
        deer.put("epidemiologist", "/animals/" + counted.kit() + "/same-as/" + counted.kit(), why)
                .statusCode(409)
                .body("code", equalTo("SAME_KIT"));
        as("coordinator")
                .contentType("application/json")
                .body(why().toString())
                .post("/api/v1/animals/" + duplicate.kit() + "/same-as/undoing")
                .then()
                .statusCode(200)
                .body("sameAs", nullValue())
                .body("outcomes[0].exclusion", equalTo(""))
                .body("links", hasSize(2));
    }

    @Test
    void readersWhoDifferAreDecidedByAThirdPerson() {
        Deer one = deer.aDeer();
        ObjectNode body = deer.yearlingWithLeftNode(one);
        deer.take(one, body);
        UUID second = UUID.randomUUID();
        deer.put("coordinator", "/animals/" + one.kit() + "/jaw-readings/" + second, deer.adult(second))
                .statusCode(201)
                .body("ageClass", equalTo("YEARLING"))
                .body("ageDisputed", equalTo(true))
                .body("jawReadings[1].blind", equalTo(true));
        as("auditor").get("/api/v1/jaws/queue?task=DECIDE").then().body("items.kit", hasItem(one.kit()));
        String path = "/animals/" + one.kit() + "/designated-age";
        ObjectNode decision =
                json.createObjectNode().put("reading", second.toString()).put("reason", "worn crest");
        deer.put("coordinator", path, decision).statusCode(403).body("code", equalTo("READER_CANNOT_DECIDE"));
        deer.put("sampler", path, decision).statusCode(403);
        deer.put("epidemiologist", path, json.createObjectNode().put("reason", "x"))
                .statusCode(422);
        deer.put(
                        "epidemiologist",
                        path,
                        decision.deepCopy().put("reading", UUID.randomUUID().toString()))
                .statusCode(422)
                .body("errors[0].field", equalTo("reading"));
        deer.put("epidemiologist", path, decision)
                .statusCode(201)
                .header("ETag", equalTo("\"1\""))
                .body("ageClass", equalTo("ADULT"))
                .body("keyClass", equalTo("ADULT"))
                .body("ageDisputed", equalTo(false));
        deer.put("epidemiologist", path, decision).statusCode(200);
        ObjectNode other = json.createObjectNode().put("ageClass", "UNKNOWN").put("reason", "jaw lost");
        deer.put("coordinator-two", path, other).statusCode(409);
        as("coordinator-two")
                .header("If-Match", "\"1\"")
                .contentType("application/json")
                .body(other.toString())
                .put("/api/v1" + path)
                .then()
                .statusCode(200)
                .body("ageClass", equalTo("UNKNOWN"))
                .body("designatedAges", hasSize(2));
        as("auditor").get("/api/v1/jaws/queue?task=DECIDE").then().body("items.kit", not(hasItem(one.kit())));
    }

    @Test
    void aSecondReaderSeesTheFirstReadingOnlyAfterGivingTheirs() {
        Deer one = deer.aDeer();
        ObjectNode body = deer.facts().put("jawStatus", "READ");
        body.set("jawReading", deer.contradicting(UUID.randomUUID()));
        deer.take(one, body).body("jawReadings", hasSize(1));
        as("coordinator")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("readingsHidden", equalTo(true))
                .body("jawReadings", hasSize(0))
                .body("ageClass", nullValue());
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body("jawReadings", hasSize(1));
        UUID second = UUID.randomUUID();
        deer.put("coordinator", "/animals/" + one.kit() + "/jaw-readings/" + second, deer.adult(second))
                .statusCode(201)
                .body("jawReadings", hasSize(2))
                .body("ageClass", equalTo("ADULT"))
                .body("readingsHidden", equalTo(false));
    }

    private ObjectNode why() {
        return json.createObjectNode().put("reason", "head and nodes came on two days");
    }

    private ObjectNode ask(Deer to) {
        return json.createObjectNode()
                .put("kit", to.kit())
                .put("reason", "jars exchanged on the bench")
                .put("evidence", "photo of the tray");
    }

    private static ValidatableResponse story(Deer one) {
        return as("auditor").get("/api/v1/animals/" + one.kit()).then().statusCode(200);
    }

    private static ValidatableResponse post(String account, String path) {
        return as(account).post("/api/v1" + path).then();
    }
}
