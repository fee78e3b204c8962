package org.dentary.custody.box;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;

/** Reads what went into a box and came out of it, from the chains of what moved. */
@ApplicationScoped
class MovementQueries {
    // The index ledger_event_packed serves this condition as it is written here.
    static final String OF_BOX = """
            select cast(e.hand_over as text), e.kind = 'PACKED', e.occurred_at,
                   min(cast(e.bytes as jsonb) ->> 'zone'), max(coalesce(p.name, e.actor)), count(*),
                   array_to_string((array_agg(e.chain order by e.chain))[1:10], ' ')
              from ledger_event e left join person p on p.code = e.actor
             where e.kind in ('PACKED', 'UNPACKED')
               and (cast(e.bytes as jsonb) -> 'fields') ->> 'box' = :box
             group by e.hand_over, e.kind, e.occurred_at
             order by e.occurred_at desc, e.hand_over limit :most
            """;

    private final EntityManager entities;

    MovementQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** Newest first. */
    @SuppressWarnings("unchecked")
    List<Movement> of(String box, int most) {
        return entities.createNativeQuery(OF_BOX, Movement.class)
                .setParameter("box", box)
                .setParameter("most", most)
                .getResultList();
    }
}
