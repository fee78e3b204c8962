package org.dentary.custody.desk;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.List;
import org.dentary.custody.chain.Answers.Mark;
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
            """;
    private static final String OF_THEM = """
             where h.last_kind <> 'DESTROYED'
               and (not :inStores and h.custodian_kind = 'PERSON' and h.custodian = :actor
                    or :inStores and h.custodian_kind = 'STORE' and h.custodian = any(:stores))
            """;
    private static final String LIST = HELD + OF_THEM + """
               and (cast(:after as timestamptz) is null
                    or (h.collected_at, h.code) > (cast(:after as timestamptz), cast(:afterCode as text)))
             order by h.collected_at, h.code limit :most
            """;
    private static final String COUNT = "select count(*) from custody_head h" + OF_THEM;

    private final EntityManager entities;

    HoldingsQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** In hand, the oldest tissue first. */
    List<Held> inHand(ActingFor acting, Mark after, int most) {
        return held(acting, false, after, most);
    }

    long countInHand(ActingFor acting) {
        return count(acting, false);
    }

    /** In the stores it may use, the oldest tissue first. */
    List<Held> inStores(ActingFor acting, Mark after, int most) {
        return acting.stores().isEmpty() ? List.of() : held(acting, true, after, most);
    }

    long countInStores(ActingFor acting) {
        return acting.stores().isEmpty() ? 0 : count(acting, true);
    }

    @SuppressWarnings("unchecked")
    private List<Held> held(ActingFor acting, boolean inStores, Mark after, int most) {
        return of(entities.createNativeQuery(LIST, Held.class), acting, inStores)
                .setParameter("after", after == null ? null : after.value())
                .setParameter("afterCode", after == null ? null : after.id())
                .setParameter("most", most)
                .getResultList();
    }

    private long count(ActingFor acting, boolean inStores) {
        return ((Number) of(entities.createNativeQuery(COUNT), acting, inStores).getSingleResult()).longValue();
    }

    private static Query of(Query query, ActingFor acting, boolean inStores) {
        return query.setParameter("actor", acting.actor())
                .setParameter("stores", acting.stores().toArray(String[]::new))
                .setParameter("inStores", inStores);
    }
}
