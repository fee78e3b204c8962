package org.dentary.custody;

import static io.restassured.RestAssured.given;

import io.restassured.specification.RequestSpecification;
import org.dentary.SeasonFixture;

/** Requests as an account of the test season. */
public final class Http {
    private Http() {}

    public static RequestSpecification as(String account) {
        return given().auth().preemptive().basic(account, SeasonFixture.PASSWORD);
    }

    public static RequestSpecification json(String account) {
        return as(account).contentType("application/json");
    }
}
