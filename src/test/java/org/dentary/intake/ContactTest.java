package org.dentary.intake;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** What is private of an animal stays in the vault. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ContactTest {
    @Inject
    IntakeFixture deer;

    @Inject
    EntityManager entities;

    @Test
    void aContactIsKeptEncryptedReadByRoleAndEveryReadIsAudited() {
        Deer one = deer.aDeer();
        deer.take(one, withContact()).body(not(containsString("Hollowell")));
        String stored = one("select encode(content, 'escape') || encode(wrapped_key, 'escape')"
                + " || (select string_agg(digest, ' ') from vault.caller_index i where i.kit = c.kit)"
                + " from vault.contact c where kit = '" + one.kit() + "'");
        assertFalse(stored.contains("Hollowell") || stored.contains("5550100"));
        String path = "/api/v1/animals/" + one.kit() + "/contact";
        as("notifier")
                .get(path + "?purpose=released")
                .then()
                .statusCode(200)
                .body("contact.name", equalTo("Ida Hollowell"))
                .body("point.latitude", equalTo(45.5f));
        as("sampler").get(path).then().statusCode(200);
        as("sampler-two").get(path).then().statusCode(403).body("code", equalTo("CONTACT_NOT_OWN"));
        as("epidemiologist").get(path).then().statusCode(403);
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body(not(containsString("Hollowell")));
        assertEquals(
                "T_NOTIFIER released, T_SAMPLER",
                one("select string_agg(concat_ws(' ', actor, purpose), ', '"
                        + " order by id) from read_audit where what = 'contact' and key = '" + one.kit() + "'"));
        as("coordinator").delete(path).then().statusCode(204);
        as("notifier").get(path).then().statusCode(404);
    }

    @Test
    void theContactIsNotPartOfWhatMakesARequestTheSame() {
        Deer one = deer.aDeer();
        deer.take(one, withContact());
        ObjectNode without = withContact();
        without.remove("contact");
        deer.put("sampler", "/animals/" + one.kit(), without).statusCode(200);
    }

    @Test
    void whatIsLeftOutStaysAndAPlaceAloneIsNobody() {
        Deer one = deer.aDeer();
        String path = "/api/v1/animals/" + one.kit() + "/contact";
        ObjectNode placed = withContact();
        placed.remove("contact");
        deer.take(one, placed);
        assertEquals(false, somebody(one));
        sends("liaison").body("{}").put(path).then().statusCode(403);
        sends("sampler")
                .body("{}")
                .put(path)
                .then()
                .statusCode(422)
                .body("errors[0].message", containsString("or both"));
        sends("sampler")
                .body("{\"contact\": {\"name\": \"Ida Hollowell\", \"phone\": \"555 0100\"}}")
                .put(path)
                .then()
                .statusCode(204);
        assertEquals(true, somebody(one));
        sends("sampler-two")
                .body("{\"contact\": {\"name\": \"Somebody Else\"}}")
                .put(path)
                .then()
                .statusCode(403)
                .body("code", equalTo("STATION_NOT_SERVED"));
        sends("notifier")
                .body("{\"point\": {\"words\": \"north shore of the second pond\"}}")
                .put(path)
                .then()
                .statusCode(204);
        as("notifier")
                .get(path + "?purpose=released")
                .then()
                .body("contact.name", equalTo("Ida Hollowell"))
                .body("point.words", equalTo("north shore of the second pond"))
                .body("point.latitude", nullValue());
        sends("sampler")
                .body("{\"contact\": {\"name\": \"Somebody Else\"}}")
                .put(path)
                .then()
                .statusCode(403)
                .body("code", equalTo("CONTACT_NOT_OWN"));
        sends("notifier")
                .body("{\"point\": {\"latitude\": 45}}")
                .put(path)
                .then()
                .statusCode(422);
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body(not(containsString("pond")));
    }

    private static RequestSpecification sends(String account) {
        return as(account).contentType("application/json");
    }

    private Boolean somebody(Deer one) {
        return QuarkusTransaction.requiringNew().call(() -> (Boolean)
                entities.createNativeQuery("select names_somebody from vault.contact where kit = '" + one.kit() + "'")
                        .getSingleResult());
    }

    @Test
    void anEmptyContactAndTheNullIslandAreRefused() {
        Deer one = deer.aDeer();
        ObjectNode body = withContact();
        ((ObjectNode) body.get("contact")).removeAll();
        deer.put("sampler", "/animals/" + one.kit(), body)
                .statusCode(422)
                .body("errors[0].message", containsString("give a name"));
        body = withContact();
        ((ObjectNode) body.get("point")).put("latitude", 0).put("longitude", 0);
        deer.put("sampler", "/animals/" + one.kit(), body)
                .statusCode(422)
                .body("errors[0].message", containsString("lies in the sea"));
    }

    @Test
    void aRowPutInAnothersPlaceCannotBeOpened() {
        Deer one = deer.aDeer();
        Deer two = deer.aDeer();
        deer.take(one, withContact());
        deer.take(two, withContact());
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("update vault.contact t set wrapped_key = f.wrapped_key,"
                                + " content = f.content from vault.contact f where t.kit = '" + two.kit()
                                + "' and f.kit = '" + one.kit() + "'")
                        .executeUpdate());
        as("notifier").get("/api/v1/animals/" + two.kit() + "/contact").then().statusCode(500);
    }

    private ObjectNode withContact() {
        ObjectNode body = deer.facts();
        body.putObject("contact").put("name", "Ida Hollowell").put("phone", "(555) 0100");
        body.putObject("point").put("latitude", 45.5).put("longitude", -94.5).put("uncertaintyMetres", 200);
        return body;
    }

    private String one(String query) {
        return QuarkusTransaction.requiringNew()
                .call(() -> (String) entities.createNativeQuery(query).getSingleResult());
    }
}
