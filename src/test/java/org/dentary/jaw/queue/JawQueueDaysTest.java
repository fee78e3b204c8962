package org.dentary.jaw.queue;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** Since which day a jaw waits. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class JawQueueDaysTest {
    @Inject
    IntakeFixture deer;

    @Inject
    EntityManager entities;

    /** At half past ten in the evening it is tomorrow in Greenwich, and nothing waits since tomorrow. */
    @Test
    void aJawWaitsSinceADayOfTheStations() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts().put("jawStatus", "PHOTO_TO_READ"));
        cameAt(one, "timestamptz '1999-12-02T04:30:00Z'");
        try {
            as("sampler")
                    .accept("text/html")
                    .get("/jaws")
                    .then()
                    .statusCode(200)
                    .body(containsString("/animals/" + one.kit()))
                    .body(containsString("Dec 1, 1999"))
                    .body(not(containsString("Dec 2, 1999")));
        } finally {
            cameAt(one, "now()");
        }
    }

    private void cameAt(Deer one, String at) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("update animal set recorded_at = " + at + " where kit = :kit")
                        .setParameter("kit", one.kit())
                        .executeUpdate());
    }
}
