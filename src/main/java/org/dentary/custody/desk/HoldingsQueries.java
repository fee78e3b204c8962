package org.dentary.custody.desk;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import org.dentary.custody.handover.ActingFor;

/** What a person has in hand, and what lies in the stores that they may use. */
@ApplicationScoped
class HoldingsQueries {
    private static final String HELD = """
            select h.code, l.part, coalesce(p.name, o.name, h.custodian), coalesce(h.box, ''),
                   coalesce(s.name, o2.name, h.place, ''), h.collected_at, issued.time_zone, h.offered is not null
              from custody_head h
              join label l on l.code = h.code
              join kit k on k.code = l.kit_printed
              join kit_block b on b.id = k.block
              join station issued on issued.code = b.station
              left join person p on h.custodian_kind = 'PERSON' and p.code = h.custodian
              left join store o on h.custodian_kind = 'STORE' and o.code = h.custodian
              left join station s on s.code = h.place
              left join store o2 on o2.code = h.place
             where h.last_kind <> 'DESTROYED'
               and (not :inStores and h.custodian_kind = 'PERSON' and h.custodian = :actor
                    or :inStores and h.custodian_kind = 'STORE' and h.custodian = any(:stores))
             order by h.collected_at, h.code limit :most
            """;

    private final EntityManager entities;

    HoldingsQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** In hand, the oldest tissue first. */
    List<Held> inHand(ActingFor acting, int most) {
        return held(acting, false, most);
    }

    /** In the stores it may use, the oldest tissue first. */
    List<Held> inStores(ActingFor acting, int most) {
        return acting.stores().isEmpty() ? List.of() : held(acting, true, most);
    }

    @SuppressWarnings("unchecked")
    private List<Held> held(ActingFor acting, boolean inStores, int most) {
        return entities.createNativeQuery(HELD, Held.class)
                .setParameter("actor", acting.actor())
                .setParameter("stores", acting.stores().toArray(String[]::new))
                .setParameter("inStores", inStores)
                .setParameter("most", most)
                .getResultList();
    }
}
