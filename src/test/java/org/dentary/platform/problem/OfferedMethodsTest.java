package org.dentary.platform.problem;

import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.Method;
import jakarta.inject.Inject;
import org.dentary.custody.CustodyFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A method that a place does not take is refused as such, with those that it takes (RFC 9110, 15.5.6), wherever it stands. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class OfferedMethodsTest {
    private static final String ID = "0b6a3f0e-0000-4000-8000-000000000001";

    @Inject
    CustodyFixture fixture;

    @BeforeEach
    void accounts() {
        fixture.labels(1, org.dentary.codes.Part.NODE_LEFT);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "PATCH  | /api/v1/hand-overs/" + ID + "                            | GET, HEAD, PUT",
                "DELETE | /api/v1/hand-overs                                       | GET, HEAD",
                "GET    | /api/v1/hand-overs/" + ID + "/acceptance                 | POST",
                "PUT    | /api/v1/specimens/A1A1A1A1A1/custody                     | GET, HEAD",
                "POST   | /api/v1/specimens/A1A1A1A1A1/custody.pdf                 | GET, HEAD",
                "DELETE | /api/v1/specimens/A1A1A1A1A1/custody.csv                 | GET, HEAD",
                "PATCH  | /api/v1/specimens/A1A1A1A1A1/custody/evidence/" + ID + " | GET, HEAD",
                "PATCH  | /api/v1/custody/checkpoints/1                            | GET, HEAD, PUT",
                "GET    | /api/v1/boxes/A1A1A1A1A1/contents/B1B1B1B1B1             | DELETE, PUT",
                "PUT    | /ledger                                                  | GET, HEAD",
                "GET    | /ledger/checkpoints                                      | POST"
            })
    void isNamedWithThoseThatAre(Method method, String path, String allowed) {
        as("coordinator")
                .contentType("application/json")
                .request(method, path)
                .then()
                .statusCode(405)
                .header("Allow", equalTo(allowed))
                .body(containsString(method + " is not offered here; allowed: " + allowed));
    }

    @ParameterizedTest
    @CsvSource({"GET, /api/v1/nothing", "PUT, /api/v1/specimens/A1A1A1A1A1/custody/nothing/at/all", "POST, /nowhere"})
    void whatIsNotThereStaysNotFound(Method method, String path) {
        as("coordinator")
                .contentType("application/json")
                .request(method, path)
                .then()
                .statusCode(404)
                .header("Allow", equalTo(null));
    }

    @ParameterizedTest
    @CsvSource({
        "/a/{b}/c, /a/x/c, true",
        "/a/{b}/c, /a/x/y/c, false",
        "/a/{n:\\d+}, /a/12, true",
        "/a/{n:\\d+}, /a/b, false",
        "/a//b/, /a/b, true",
        "/a.{b}, /a.c, true",
        "/a.{b}, /axc, false"
    })
    void readsTheTemplatesOfPaths(String template, String path, boolean matches) {
        assertEquals(matches, OfferedMethods.pattern(template).matcher(path).matches());
    }
}
