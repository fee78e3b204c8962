package org.dentary.custody.box;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import org.dentary.custody.chain.Answers.Mark;

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
               and (cast(:after as timestamptz) is null or e.occurred_at < cast(:after as timestamptz)
                    or e.occurred_at = cast(:after as timestamptz) and cast(e.hand_over as text) > :afterAct)
             group by e.hand_over, e.kind, e.occurred_at
             order by e.occurred_at desc, cast(e.hand_over as text) limit :most
            """;

    private final EntityManager entities;

    MovementQueries(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * Newest first.
     *
     * @param after where the page before ended; null for the first
     */
    @SuppressWarnings("unchecked")
    List<Movement> of(String box, Mark after, int most) {
        return entities.createNativeQuery(OF_BOX, Movement.class)
                .setParameter("box", box)
                .setParameter("after", after == null ? null : after.value())
                .setParameter("afterAct", after == null ? "" : after.id())
                .setParameter("most", most)
                .getResultList();
    }
}
