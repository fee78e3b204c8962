package org.dentary.animal.vault;

import static org.dentary.intake.IntakeFixture.as;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What was erased stays erased when a restored database brings it back. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ErasureTest {
    @Inject
    SeasonFixture season;

    @Inject
    IntakeFixture deer;

    @Inject
    ContactService contacts;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void aRestoredContactIsErasedAgainAndALaterOneStays() {
        Deer one = deer.aDeer();
        ObjectNode facts = deer.facts();
        facts.putObject("contact").put("name", "Wenna Tarrow").put("phone", "555-0119");
        deer.take(one, facts);
        String path = "/api/v1/animals/" + one.kit() + "/contact";
        Object[] backup = (Object[]) entities.createNativeQuery(
                        "select wrapped_key, content, written_by, written_at from vault.contact where kit = :kit")
                .setParameter("kit", one.kit())
                .getSingleResult();
        as("coordinator").delete(path).then().statusCode(204);
        as("coordinator").get(path).then().statusCode(404);

        restore(one.kit(), backup, (Instant) backup[3]);
        as("coordinator").get(path).then().statusCode(200);
        contacts.eraseAgain(null);
        as("coordinator").get(path).then().statusCode(404);

        restore(one.kit(), backup, Instant.parse("2099-01-01T00:00:00Z"));
        contacts.eraseAgain(null);
        as("coordinator").get(path).then().statusCode(200);
    }

    private void restore(String kit, Object[] row, Instant writtenAt) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "insert into vault.contact (kit, wrapped_key, content, written_by,"
                                        + " written_at) values (:kit, :key, :content, :by, :at)")
                        .setParameter("kit", kit)
                        .setParameter("key", row[0])
                        .setParameter("content", row[1])
                        .setParameter("by", row[2])
                        .setParameter("at", writtenAt)
                        .executeUpdate());
    }
}
