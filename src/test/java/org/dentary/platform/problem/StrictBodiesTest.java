package org.dentary.platform.problem;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Values that a lenient reader would take for something else. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class StrictBodiesTest {
    @Inject
    SeasonFixture season;

    @BeforeEach
    void begin() {
        season.ensure();
    }

    @Test
    void nothingUnderANameIsRefused() {
        send("PUT", "/code-maps/T_LAB/901", "{\"inForceFrom\":\"2026-09-01\",\"codes\":{\"OBX-3\":{\"S^L\":null}}}")
                .statusCode(422)
                .body("errors[0].field", startsWith("codes.OBX-3"));
        send("PUT", "/column-maps/T_LAB/901", "{\"columns\":{\"Tube\":null}}")
                .statusCode(422)
                .body("errors[0].field", startsWith("columns"));
    }

    @Test
    void anEmptyTextIsNoNumberNoAnswerAndNoCode() {
        String units =
                ",\"units\":[{\"label\":\"N\",\"detected\":1,\"tested\":4},{\"label\":\"S\",\"detected\":3,\"tested\":60}]}";
        for (String empty : List.of("\"\"", "\" \"", "\"\\t\"")) {
            send("POST", "/statistics/smoothing", "{\"confidence\":" + empty + units)
                    .statusCode(422)
                    .body("errors[0].field", equalTo("confidence"));
            send(
                            "POST",
                            "/statistics/freedom",
                            "{\"prior\":0.5,\"introduction\":0.02,\"periods\":[{\"sensitivity\":0.8,\"detected\":"
                                    + empty + "}]}")
                    .statusCode(422)
                    .body("errors[0].field", equalTo("periods[0].detected"));
        }
    }

    @Test
    void aCodeOfAListThatIsNoneIsNamedByItsPlace() {
        send(
                        "PUT",
                        "/findings/" + UUID.randomUUID(),
                        "{\"specimens\":[\"A2\"],\"method\":\"" + SeasonFixture.SCREENING_METHOD
                                + "\",\"stage\":\"SCREENING\",\"finding\":\"NOT_DETECTED\",\"status\":\"FINAL\",\"accession\":\"X\","
                                + "\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-18\",\"reportedOn\":\"2025-11-19\"}")
                .statusCode(422)
                .body("errors[0].field", equalTo("specimens[0]"))
                .body("errors[0].rule", equalTo("NOT_A_CODE"));
    }

    @Test
    void aPasswordThatIsWrongAsksForAnother() {
        given().contentType("application/json")
                .body("{\"username\":\"coordinator\",\"password\":\"wrong\"}")
                .post("/api/v1/sessions")
                .then()
                .statusCode(401)
                .contentType("application/problem+json")
                .body("code", equalTo("CREDENTIALS_REFUSED"));
    }

    private static ValidatableResponse send(String method, String path, String body) {
        return given().auth()
                .preemptive()
                .basic("coordinator", SeasonFixture.PASSWORD)
                .contentType("application/json")
                .body(body)
                .request(method, "/api/v1" + path)
                .then();
    }
}
