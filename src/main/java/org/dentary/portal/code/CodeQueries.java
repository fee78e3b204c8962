package org.dentary.portal.code;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.List;

/** What labels were used for and where they are, read across the rooms. */
@ApplicationScoped
public class CodeQueries {
    private static final String CODES = """
            select l.code, l.kit_printed, l.part, cast(b.id as text), b.season, b.station,
                   case when a.kit is not null or exists
                        (select 1 from specimen s join label o on o.code = s.code where o.kit_bound = l.kit_bound)
                        then l.kit_bound end,
                   coalesce(case when not :knowing then
                       (select a.laboratory from laboratory_arrival a
                         where a.chain = l.code order by a.sequence limit 1) end,
                       h.place, around.place, x.place),
                   x.code is not null, exists (select 1 from specimen s where s.code = l.code), l.voided_at is not null,
                   l.void_reason, (select f.fate from kit_fate f where f.kit = l.kit_printed and f.fate <> 'LEFT'),
                   1 + (select count(*) from label_reprint r where r.label = l.code), l.version
              from label l
              join kit k on k.code = l.kit_printed
              join kit_block b on b.id = k.block
              left join animal a on a.kit = l.kit_bound
              left join custody_head h on h.code = l.code
              left join custody_head around on around.code = h.box
              left join box x on x.code = l.code
             where l.code = any(:codes)
            """;

    private final EntityManager entities;

    CodeQueries(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * What is known of each code.
     *
     * @param knowing whether tissue may be followed beyond its first laboratory: where it goes then tells what was found
     */
    @SuppressWarnings("unchecked")
    public List<CodeView> codes(Collection<String> codes, boolean knowing) {
        return entities.createNativeQuery(CODES, CodeView.class)
                .setParameter("codes", codes.toArray(String[]::new))
                .setParameter("knowing", knowing)
                .getResultList();
    }
}
