package org.dentary.platform.request;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Slips in an address or a header are told where they are, and none is passed over. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class AddressFilterTest {
    @Inject
    SeasonFixture season;

    @BeforeEach
    void begin() {
        season.ensure();
    }

    @Test
    void aNameThatIsNotAskedForIsRefusedWithThoseThatAre() {
        refused("/animals?sezon=T2026", "sezon", "UNKNOWN_PARAMETER", "season");
        refused("/seasons?year=2026", "year", "UNKNOWN_PARAMETER", "leave it out");
        refused("/prevalence?season=T2026&sezon=1", "sezon", "NOT_A_COLUMN", "season");
        as().get("/api/v1/seasons?limit=5").then().statusCode(200);
    }

    @Test
    void aNameGivenTwiceIsRefused() {
        refused("/animals?season=T2026&season=T2025", "season", "GIVEN_TWICE", "2 times");
        refused("/hand-overs?limit=1&limit=2", "limit", "GIVEN_TWICE", "give it once");
    }

    @Test
    void aValueOfAnotherKindIsRefusedAndNotTakenForAMissingPlace() {
        for (String value : List.of("abc", "", "1.5", "1e3", "99999999999", "%00")) {
            refused("/hand-overs?limit=" + value, "limit", "INVALID_VALUE", "whole number");
        }
        refused("/suspected-mix-ups?all=maybe", "all", "INVALID_VALUE", "true nor false");
        refused("/submissions/1-1-1-1-1", "id", "INVALID_VALUE", "UUID");
        refused("/submissions/none", "id", "INVALID_VALUE", "UUID");
        as().get("/api/v1/submissions/" + UUID.randomUUID()).then().statusCode(404);
    }

    @Test
    void aReportRefusesWhatIsNoDimensionOrNoDay() {
        refused("/prevalence?season=T2026&by=,", "by", "NOT_A_DIMENSION", "dimension");
        refused("/line-list?season=T2026&diedOnTo=%2B999999999-01-01", "diedOnTo", "NOT_A_DAY", "2026");
    }

    @Test
    void aHeaderThatIsNoMediaTypeIsToldAsThat() {
        String submission = "/api/v1/submissions/" + UUID.randomUUID();
        as().header("Content-Type", "garbage")
                .body("{\"laboratory\":\"T_LAB\"}".getBytes(StandardCharsets.UTF_8))
                .put(submission)
                .then()
                .statusCode(415)
                .body("errors[0].field", equalTo("Content-Type"));
        as().header("Accept", "garbage")
                .get("/api/v1/seasons")
                .then()
                .statusCode(406)
                .contentType("application/problem+json")
                .body("errors[0].field", equalTo("Accept"));
    }

    /** RFC 9110, section 15.5.7; of several methods of one path none is taken for want of a better one. */
    @Test
    void whatNoRouteSendsIsNotSentAsSomethingElse() {
        for (String path : List.of(
                "/api/v1/animals",
                "/api/v1/prevalence?season=" + SeasonFixture.SEASON,
                "/api/v1/test-counts",
                "/api/v1/submissions")) {
            as().header("Accept", "image/webp")
                    .get(path)
                    .then()
                    .statusCode(406)
                    .contentType("application/problem+json");
        }
        as().header("Accept", "image/webp, */*;q=0.1")
                .get("/api/v1/animals")
                .then()
                .statusCode(200)
                .contentType("application/json");
        as().header("Accept", "text/csv")
                .get("/api/v1/animals")
                .then()
                .statusCode(200)
                .contentType("text/csv");
    }

    /** RFC 9110, section 13.1.1: no entity tag is that of something which does not exist. */
    @Test
    void anIfMatchForWhatIsNotThereYetIsStale() {
        for (String tag : List.of("\"0\"", "*", "W/\"1\"", "garbage")) {
            as().header("If-Match", tag)
                    .contentType("application/json")
                    .body("{\"laboratory\":\"T_LAB\"}")
                    .put("/api/v1/submissions/" + UUID.randomUUID())
                    .then()
                    .statusCode(412)
                    .body("errors[0].field", equalTo("If-Match"));
        }
    }

    private static void refused(String path, String field, String rule, String words) {
        as().urlEncodingEnabled(false)
                .get("/api/v1" + path)
                .then()
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors[0].field", equalTo(field))
                .body("errors[0].rule", equalTo(rule))
                .body("errors[0].message", containsString(words));
    }

    private static RequestSpecification as() {
        return given().auth().preemptive().basic("coordinator", SeasonFixture.PASSWORD);
    }
}
