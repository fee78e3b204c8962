package org.dentary.jaw.queue;

import static org.dentary.WholeLists.inTheFile;
import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

/** A queue longer than what is shown of it. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class JawQueueTest {
    private static final int TO_READ = JawQueueService.MOST + 1;

    @Inject
    SeasonFixture season;

    @Inject
    LineFixture lines;

    @Inject
    EntityManager entities;

    @Test
    void aJawToDecideStandsBeforeHundredsThatWaitLongerToBeRead() {
        season.ensure();
        String station = "T_Q_" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(java.util.Locale.ROOT);
        String own = lines.season();
        List<String> unread = lines.add(own, TO_READ, ALine.of("UNKNOWN", "MALE", "PENDING"));
        String differing =
                lines.add(own, 1, ALine.of("UNKNOWN", "MALE", "PENDING")).get(0);
        lines.read(differing, "T_READER_1", "TOOTH_REPLACEMENT", "ADULT");
        lines.read(differing, "T_READER_2", "TOOTH_REPLACEMENT", "YEARLING");
        QuarkusTransaction.requiringNew().run(() -> {
            entities.createNativeQuery("insert into station (code, name, position, unit, time_zone)"
                            + " values (:station, 'Station of a long queue', 99, 'T_UNIT_1', 'America/Chicago')")
                    .setParameter("station", station)
                    .executeUpdate();
            entities.createNativeQuery("update animal set station = :station, jaw_status = 'COLLECTED_TO_READ',"
                            + " recorded_at = now() - interval '2 days' where season = :own")
                    .setParameter("station", station)
                    .setParameter("own", own)
                    .executeUpdate();
        });
        try {
            standsAlthoughManyWait(station, differing, unread);
        } finally {
            // The queue of all stations is what other tests look into.
            QuarkusTransaction.requiringNew()
                    .run(() -> entities.createNativeQuery(
                                    "update animal set jaw_status = 'NOT_EXAMINED' where season = :own and kit <> :differing")
                            .setParameter("own", own)
                            .setParameter("differing", differing)
                            .executeUpdate());
        }
    }

    private static void standsAlthoughManyWait(String station, String differing, List<String> unread) {
        as("coordinator")
                .accept("text/html")
                .get("/jaws?station=" + station)
                .then()
                .statusCode(200)
                .body(containsString("/animals/" + differing + "/age"), containsString("To read: " + TO_READ));
        as("coordinator")
                .get("/api/v1/jaws/queue?station=" + station)
                .then()
                .body("items.kit", hasItem(differing))
                .body("items.findAll { it.task == 'READ' }", hasSize(JawQueueService.MOST));
        List<String> file = inTheFile("coordinator", "/api/v1/jaws/queue.csv?station=" + station);
        assertEquals(TO_READ + 1, file.size(), "the file holds all of them");
        assertTrue(file.containsAll(unread));
    }
}
