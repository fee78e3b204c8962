package planted.animal;

import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import java.time.Clock;
import java.time.Instant;
import planted.result.PlantedFinding;

/** Breaks every rule of the house on purpose, so that each is seen to fail. */
public class PlantedRules {
    @Inject
    Clock clock;

    PlantedFinding uses;

    EntityManager database;

    @GET
    @Transactional
    String endpoint() {
        System.out.println(Instant.now());
        return String.valueOf(clock) + database.createNativeQuery("select 1");
    }
}
