package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;

/** What a person has in hand. */
@ApplicationScoped
class HoldingsQueries {
    private static final String HELD = """
            select h.code, coalesce(l.part, ''), coalesce(h.box, ''), coalesce(h.place, ''), h.collected_at,
                   h.offered is not null
              from custody_head h left join label l on l.code = h.code
             where h.custodian_kind = 'PERSON' and h.custodian = :person
             order by h.collected_at, h.code
            """;

    private final EntityManager entities;

    HoldingsQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A code in hand; box and place are empty where there is none. */
    public record Held(String code, String part, String box, String place, Instant collectedAt, Boolean offered) {}

    /** Longest held first. */
    @SuppressWarnings("unchecked")
    List<Held> of(String person, int most) {
        return entities.createNativeQuery(HELD, Held.class)
                .setParameter("person", person)
                .setMaxResults(most)
                .getResultList();
    }
}
