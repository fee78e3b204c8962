package org.dentary.animal.vault;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A caller's animals are found through keyed digests alone; the index follows corrections, erasures, restores and starts. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CallerIndexTest {
    @Inject
    SeasonFixture season;

    @Inject
    IntakeFixture deer;

    @Inject
    CallerIndexService callers;

    @Inject
    ContactService contacts;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void theIndexHoldsNoNumberAndNoNameAndNoDigestMadeWithoutTheKey() {
        Deer one = brought();
        assertEquals(3L, count("kit = '" + one.kit() + "' and length(digest) = 64"));
        assertEquals(
                0L,
                count("kit = '" + one.kit() + "' and digest in (encode(sha256('" + ContactKey.NAME.fold("Orla Quince")
                        + "'), 'hex'), encode(sha256('" + folded(one) + "'), 'hex'))"));
        assertEquals(
                List.of(one.kit()),
                callers.find(ContactKey.REGISTRATION, number(one).toLowerCase()));
    }

    @Test
    void aStartIndexesWhatIsOfAnotherEditionOrWasNeverIndexed() {
        Deer one = brought();
        run("delete from vault.caller_index where kit = '" + one.kit() + "'");
        run("update vault.contact set index_edition = '' where kit = '" + one.kit() + "'");
        assertEquals(List.of(), callers.find(ContactKey.REGISTRATION, number(one)));
        callers.indexAnew(null);
        assertEquals(3L, count("kit = '" + one.kit() + "'"));
        assertEquals(List.of(one.kit()), callers.find(ContactKey.REGISTRATION, number(one)));
        assertEquals(
                List.of(one.kit()),
                callers.find(ContactKey.PHONE, "555-" + one.kit().hashCode()));
        callers.indexAnew(null);
        assertEquals(3L, count("kit = '" + one.kit() + "'"));
    }

    @Test
    void aCorrectedRegistrationIsFoundUnderItsNewNumberOnly() {
        Deer one = brought();
        ObjectNode facts = facts(one);
        ((ObjectNode) facts.get("identifiers").get(0)).put("value", "Z" + number(one));
        correct(one, facts);
        assertEquals(List.of(), callers.find(ContactKey.REGISTRATION, number(one)));
        assertEquals(List.of(one.kit()), callers.find(ContactKey.REGISTRATION, "Z" + number(one)));
    }

    @Test
    void anErasureTakesTheAnimalOutAndNeitherStartNorCorrectionNorRestorePutsItBack() {
        Deer one = brought();
        Object[] digest = (Object[]) entities.createNativeQuery(
                        "select kit, digest, written_at from vault.caller_index where kind = 'REGISTRATION' and kit = :kit")
                .setParameter("kit", one.kit())
                .getSingleResult();
        as("coordinator")
                .delete("/api/v1/animals/" + one.kit() + "/contact")
                .then()
                .statusCode(204);
        assertEquals(0L, count("kit = '" + one.kit() + "'"));
        callers.indexAnew(null);
        ObjectNode facts = facts(one);
        facts.put("sex", "FEMALE");
        facts.remove("contact");
        correct(one, facts);
        assertEquals(0L, count("kit = '" + one.kit() + "'"));
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("insert into vault.caller_index (kit, kind, digest, edition,"
                                + " written_at) values (:kit, 'REGISTRATION', :digest, 'any', :at)")
                        .setParameter("kit", digest[0])
                        .setParameter("digest", digest[1])
                        .setParameter("at", (Instant) digest[2])
                        .executeUpdate());
        assertEquals(List.of(one.kit()), callers.find(ContactKey.REGISTRATION, number(one)));
        contacts.eraseAgain(null);
        assertEquals(List.of(), callers.find(ContactKey.REGISTRATION, number(one)));
    }

    @Test
    void anAnimalWithoutContactIsFoundByItsRegistrationAndErasedFromTheIndex() {
        Deer one = deer.aDeer();
        ObjectNode facts = facts(one);
        facts.remove("contact");
        deer.take(one, facts);
        assertEquals(List.of(one.kit()), callers.find(ContactKey.REGISTRATION, number(one)));
        String path = "/api/v1/animals/" + one.kit() + "/contact";
        as("coordinator").delete(path).then().statusCode(204);
        as("coordinator").delete(path).then().statusCode(404);
    }

    private Deer brought() {
        Deer one = deer.aDeer();
        deer.take(one, facts(one));
        return one;
    }

    private ObjectNode facts(Deer one) {
        ObjectNode facts = deer.facts();
        facts.putObject("contact")
                .put("name", "Orla Quince")
                .put("phone", "555-" + one.kit().hashCode());
        facts.putArray("identifiers").addObject().put("type", "REGISTRATION").put("value", number(one));
        return facts;
    }

    private void correct(Deer one, ObjectNode facts) {
        as("coordinator")
                .contentType("application/json")
                .header(
                        "If-Match",
                        as("coordinator").get("/api/v1/animals/" + one.kit()).header("ETag"))
                .body(facts.put("reason", "read wrongly").toString())
                .put("/api/v1/animals/" + one.kit())
                .then()
                .statusCode(200);
    }

    private static String number(Deer one) {
        return "WT-" + one.kit();
    }

    private static String folded(Deer one) {
        return ContactKey.REGISTRATION.fold(number(one));
    }

    private long count(String where) {
        return ((Number) entities.createNativeQuery("select count(*) from vault.caller_index where " + where)
                        .getSingleResult())
                .longValue();
    }

    private void run(String sql) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(sql).executeUpdate());
    }
}
