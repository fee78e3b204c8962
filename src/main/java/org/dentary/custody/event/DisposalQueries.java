package org.dentary.custody.event;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.List;

/** Which tissue two people must destroy, by what is released of its animals; one statement for all codes. */
@ApplicationScoped
class DisposalQueries {
    private static final String NEEDING_TWO = """
            select s.code
              from specimen s join label b on b.code = s.code join animal a on a.kit = b.kit_bound
             where s.code in (:codes)
               and (a.not_attributable
                    or exists (select 1 from line l
                                where l.kit = coalesce(a.same_as, a.kit) and l.closed_at is null
                                  and l.outcome in ('PENDING', 'DETECTED')))
             order by s.code
            """;

    private final EntityManager entities;

    DisposalQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<String> needingTwo(Collection<String> codes) {
        return codes.isEmpty()
                ? List.of()
                : entities.createNativeQuery(NEEDING_TWO)
                        .setParameter("codes", codes)
                        .getResultList();
    }
}
