package org.dentary.platform;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SignInTest {
    @Inject
    AccountService accounts;

    @BeforeEach
    void account() {
        accounts.put("sign-in-test", null, Role.SAMPLER, List.of("*"), "open sesame");
    }

    @Test
    void aWrongPasswordIsAProblemThatNamesNothingInternal() {
        given().auth()
                .preemptive()
                .basic("sign-in-test", "wrong")
                .delete("/api/v1/sessions")
                .then()
                .statusCode(401)
                .contentType("application/problem+json")
                .body("code", equalTo("CREDENTIALS_REFUSED"));
    }

    @Test
    void noAccountIsAProblemAndNoRedirect() {
        given().redirects()
                .follow(false)
                .delete("/api/v1/sessions")
                .then()
                .statusCode(401)
                .contentType("application/problem+json")
                .header("WWW-Authenticate", containsString("Basic"));
    }

    @Test
    void aTokenServesUntilItIsEnded() {
        String token = given().contentType("application/json")
                .body("{\"username\":\"sign-in-test\",\"password\":\"open sesame\"}")
                .post("/api/v1/sessions")
                .then()
                .statusCode(201)
                .extract()
                .path("token");
        given().header("Authorization", "Bearer " + token)
                .delete("/api/v1/sessions")
                .then()
                .statusCode(204);
        given().header("Authorization", "Bearer " + token)
                .delete("/api/v1/sessions")
                .then()
                .statusCode(401);
    }

    @Test
    void malformedEmptyAndUnknownBodiesAreProblems() {
        given().contentType("application/json")
                .body("{\"username\":")
                .post("/api/v1/sessions")
                .then()
                .statusCode(400)
                .contentType("application/problem+json");
        given().contentType("application/json")
                .post("/api/v1/sessions")
                .then()
                .statusCode(400)
                .contentType("application/problem+json");
        given().contentType("application/json")
                .body("{\"username\":\"a\",\"password\":\"b\",\"colour\":\"red\"}")
                .post("/api/v1/sessions")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("colour"));
        given().contentType("application/json")
                .body("{\"username\":\"a\"}")
                .post("/api/v1/sessions")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("password"))
                .body("errors[0].rule", equalTo("REQUIRED"));
        given().get("/api/v1/nothing-here").then().statusCode(404).contentType("application/problem+json");
    }

    @Test
    void theSignInPageOpens() {
        given().accept("text/html").get("/sign-in").then().statusCode(200).body(containsString("Sign in"));
    }
}
