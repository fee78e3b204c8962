package org.dentary.portal.find;

import static io.restassured.RestAssured.given;
import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.kit.IssuedBlock;
import org.dentary.kit.KitFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class FindTest {
    @Inject
    IntakeFixture intake;

    @Inject
    KitFixture kits;

    @Inject
    EntityManager entities;

    @Test
    void anyLabelOrTheKitLeadsToTheAnimal() {
        IntakeFixture.Deer deer = intake.aDeer();
        leads("sampler", deer.label(Part.JAW), "/kits/labels/" + deer.label(Part.JAW));
        intake.take(deer, intake.facts());
        leads("sampler", "]C0" + deer.label(Part.STUB), "/animals/" + deer.kit());
        leads("auditor", deer.kit().toLowerCase(), "/animals/" + deer.kit());
        leads("auditor", deer.kit().substring(0, 4) + "-" + deer.kit().substring(4), "/animals/" + deer.kit());
    }

    @Test
    void anIdentifierAndASubmissionNumberAreFoundAndSeveralMatchesAreListed() {
        IntakeFixture.Deer first = intake.aDeer();
        IntakeFixture.Deer second = intake.aDeer();
        intake.take(first, intake.facts());
        intake.take(second, intake.facts());
        String tag = "tag " + UUID.randomUUID();
        UUID submission = UUID.randomUUID();
        Number number = QuarkusTransaction.requiringNew().call(() -> {
            identify(first.kit(), tag);
            identify(second.kit(), tag + "-2");
            entities.createNativeQuery("insert into submission (id, laboratory, opened_by, opened_at)"
                            + " values (:id, :laboratory, 'T_LIAISON', now())")
                    .setParameter("id", submission)
                    .setParameter("laboratory", SeasonFixture.LABORATORY)
                    .executeUpdate();
            return (Number) entities.createNativeQuery("select number from submission where id = :id")
                    .setParameter("id", submission)
                    .getSingleResult();
        });
        leads("sampler", tag.toUpperCase(), "/animals/" + first.kit());
        leads("liaison", number.toString(), "/submissions/" + submission);
        find("notifier", number.toString()).statusCode(404);
        QuarkusTransaction.requiringNew().run(() -> identify(second.kit(), tag));
        find("sampler", tag).statusCode(200).body("items", hasSize(2));
        page("sampler", tag).statusCode(200).body(containsString(first.kit())).body(containsString(second.kit()));
    }

    @Test
    void anAccessionNumberIsFoundOnlyByThoseWhoMaySeeThatSomethingWasReported() {
        IntakeFixture.Deer deer = intake.aDeer();
        intake.take(deer, intake.yearlingWithLeftNode(deer));
        String accession = "ACC-" + UUID.randomUUID();
        QuarkusTransaction.requiringNew().run(() -> {
            UUID finding = UUID.randomUUID();
            entities.createNativeQuery(
                            "insert into finding (id, method, disease, stage, finding, status, laboratory, accession,"
                                    + " reported_on, recorded_by, recorded_at) values (:id, 'T_SCREEN', 'CWD', 'SCREENING',"
                                    + " 'DETECTED', 'FINAL', 'T_LAB', :accession, '2025-11-20', 'T_LIAISON', now())")
                    .setParameter("id", finding)
                    .setParameter("accession", accession)
                    .executeUpdate();
            entities.createNativeQuery("insert into finding_specimen (finding, code) values (:id, :code)")
                    .setParameter("id", finding)
                    .setParameter("code", deer.label(Part.NODE_LEFT))
                    .executeUpdate();
        });
        leads("liaison", accession.toLowerCase(), "/animals/" + deer.kit());
        find("sampler", accession).statusCode(404);
        find("epidemiologist", accession).statusCode(404);
    }

    @Test
    void aBlockIsFoundByItsId() {
        IssuedBlock block = kits.aBlock(1, Part.JAW);
        leads("coordinator", block.id().toString().toUpperCase(), "/kits/" + block.id());
    }

    @Test
    void whatIsNothingIsToldInWords() {
        intake.aDeer();
        find("sampler", "A2C4B6H8JK").statusCode(422).body("detail", containsString("character 5 is B"));
        page("sampler", "A2C4B6H8JK")
                .statusCode(422)
                .body(containsString("character 5 is B"))
                .body(containsString("data-wrong-scan"));
        find("sampler", "no such tag").statusCode(404).body("code", equalTo("NOTHING_FOUND"));
        find("sampler", "").statusCode(422).body("code", equalTo("NOTHING_TYPED"));
        page("sampler", "<script>").statusCode(404).body(containsString("&lt;script&gt;"));
        given().accept("text/html")
                .redirects()
                .follow(false)
                .get("/find?q=x")
                .then()
                .statusCode(303)
                .header("Location", containsString("/sign-in"));
    }

    private void identify(String kit, String value) {
        entities.createNativeQuery(
                        "insert into animal_identifier (kit, type, issuer, value) values (:kit, 'EAR_TAG', '', :value)")
                .setParameter("kit", kit)
                .setParameter("value", value)
                .executeUpdate();
    }

    private static void leads(String account, String typed, String to) {
        find(account, typed).statusCode(200).body("items", hasSize(1)).body("items[0].href", equalTo(to));
        page(account, typed).statusCode(303).header("Location", org.hamcrest.Matchers.endsWith(to));
    }

    private static ValidatableResponse find(String account, String typed) {
        return as(account).queryParam("q", typed).get("/api/v1/find").then();
    }

    private static ValidatableResponse page(String account, String typed) {
        return as(account)
                .accept("text/html")
                .redirects()
                .follow(false)
                .queryParam("q", typed)
                .get("/find")
                .then();
    }
}
