package org.dentary.people;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ProtocolPagesTest {
    @Inject
    SeasonFixture season;

    @Inject
    AccountService accounts;

    private final String name = "protocol-" + UUID.randomUUID().toString().substring(0, 13);

    @BeforeEach
    void setUp() {
        season.ensure();
        accounts.put(name, null, Role.SAMPLER, List.of("*"), "test");
    }

    @Test
    void theProtocolIsShownAndAcknowledgedOnThePage() {
        page().get("/protocol")
                .then()
                .statusCode(200)
                .body(containsString("Protocol, edition 1"))
                .body(containsString("Wear gloves"))
                .body(containsString("It was shown to me"));
        page().formParam("version", "0")
                .post("/protocol")
                .then()
                .statusCode(422)
                .body(containsString("changed"));
        page().formParam("version", "1").post("/protocol").then().statusCode(303);
        page().get("/protocol")
                .then()
                .body(containsString("Shown and acknowledged"))
                .body(not(containsString("It was shown to me")));
    }

    @Test
    void programsAcknowledgeTheEditionTheyShowed() {
        api().get("/api/v1/protocol").then().statusCode(200).body("acknowledged", equalTo(false));
        api().contentType("application/json")
                .body("{\"version\":\"7\"}")
                .post("/api/v1/protocol/acknowledgement")
                .then()
                .statusCode(409)
                .body("code", equalTo("PROTOCOL_CHANGED"));
        api().contentType("application/json")
                .body("{}")
                .post("/api/v1/protocol/acknowledgement")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("version"));
        api().contentType("application/json")
                .body("{\"version\":\"1\"}")
                .post("/api/v1/protocol/acknowledgement")
                .then()
                .statusCode(200)
                .body("acknowledged", equalTo(true));
        given().get("/api/v1/protocol").then().statusCode(401);
    }

    private RequestSpecification api() {
        return given().auth().preemptive().basic(name, "test");
    }

    private RequestSpecification page() {
        return given().redirects()
                .follow(false)
                .accept("text/html")
                .cookie("dentary-session", accounts.signIn(name, "test").orElseThrow());
    }
}
