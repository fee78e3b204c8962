package org.dentary.custody;

import static io.restassured.RestAssured.given;

import io.restassured.specification.RequestSpecification;
import org.dentary.SeasonFixture;

/** Requests as an account of the test season. */
final class Http {
    private Http() {}

    static RequestSpecification as(String account) {
        return given().auth().preemptive().basic(account, SeasonFixture.PASSWORD);
    }

    static RequestSpecification json(String account) {
        return as(account).contentType("application/json");
    }
}
