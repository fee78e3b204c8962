package org.dentary.intake;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.Map;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** The door through which a device sends the deer that it kept without a signal. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class KeptDeerTest {
    @Inject
    IntakeFixture deer;

    @Test
    void aKeptDeerIsTakenInOnceHoweverOftenItIsSentAndItsTissueWasEnteredWhenItWasKept() {
        Deer one = deer.aDeer();
        send("sampler", one.kit(), form(one))
                .statusCode(201)
                .body("kit", equalTo(one.kit()))
                .body("age", equalTo("Yearling"))
                .body("specimens", equalTo(1))
                .body("problems", empty());
        send("sampler", one.kit(), form(one)).statusCode(200).body("age", equalTo("Yearling"));
        as("auditor")
                .get("/api/v1/specimens/" + one.label(Part.NODE_LEFT) + "/custody")
                .then()
                .statusCode(200)
                .body("events", hasSize(1))
                .body("events[0].occurredAt", equalTo("2025-11-14T15:20:00Z"))
                .body("events[0].enteredAt", equalTo("2025-11-14T15:31:00Z"));
    }

    @Test
    void whatIsWrongIsToldByFieldOfTheFormAndNothingIsTakenIn() {
        Deer one = deer.aDeer();
        Map<String, String> form = form(one);
        form.remove("sex");
        form.put("managementUnit", "NOWHERE");
        send("sampler", one.kit(), form).statusCode(422).body("problems.field", hasItem("sex"));
        form = form(one);
        form.put("specimens", deer.aDeer().label(Part.NODE_LEFT));
        send("sampler", one.kit(), form).statusCode(409).body("problems[0].message", containsString("belongs to kit"));
        send("sampler", "A2C4B6H8JK", form(one))
                .statusCode(422)
                .body("problems[0].message", containsString("character 5 is B"));
        as("auditor").get("/api/v1/animals/" + one.kit()).then().statusCode(404);
    }

    @Test
    void aDeerThatSomebodyElseKeptWaitsForThem() {
        Deer one = deer.aDeer();
        send("coordinator", one.kit(), form(one))
                .statusCode(409)
                .body("problems[0].rule", equalTo("KEPT_BY_OTHER"))
                .body("problems[0].message", containsString("kept by sampler and coordinator is signed in"));
        send("epidemiologist", one.kit(), form(one)).statusCode(403);
        as("auditor").get("/api/v1/animals/" + one.kit()).then().statusCode(404);
    }

    @Test
    void anotherAccountOfTheSameDeerIsKeptForItsSamplerToMend() {
        Deer one = deer.aDeer();
        send("sampler", one.kit(), form(one)).statusCode(201);
        Map<String, String> other = form(one);
        other.put("sex", "FEMALE");
        send("sampler", one.kit(), other).statusCode(409).body("problems[0].rule", equalTo("ALREADY_RECORDED"));
    }

    private static ValidatableResponse send(String account, String kit, Map<String, String> form) {
        return as(account)
                .contentType("application/x-www-form-urlencoded; charset=UTF-8")
                .formParams(form)
                .post("/intake/without-signal/" + kit)
                .then();
    }

    private static Map<String, String> form(Deer one) {
        Map<String, String> form = IntakeFixture.form(one);
        form.put("account", "sampler");
        form.put("enteredAt", "2025-11-14T15:31:00.000Z");
        return form;
    }
}
