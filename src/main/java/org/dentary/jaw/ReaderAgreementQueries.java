package org.dentary.jaw;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;

/** Counts pairs of readings of the same jaw. */
@ApplicationScoped
class ReaderAgreementQueries {
    /** How often the reader said one class where the other said another. */
    record Pair(String compared, String mine, String other, Integer animals) {}

    /** Pairs with another person count where the later of the two was blind; unknown classes make no pair. */
    private static final String PAIRS = """
            with referred as (
              select kit from jaw_reading group by kit
              having bool_or(needs_second_reader or contradictions <> '[]'))
            select case when o.method = 'KNOWN_AGE_MARK' then 'KNOWN_AGE' when f.kit is null then 'DRAWN' else 'REFERRED' end
                     as compared,
                   m.age_class, o.age_class, cast(count(*) as int)
              from jaw_reading m
              join jaw_reading o on o.kit = m.kit and o.id <> m.id
              join animal a on a.kit = m.kit
              left join referred f on f.kit = m.kit
             where m.examiner = :person and m.method like 'TOOTH%' and m.age_class <> 'UNKNOWN' and o.age_class <> 'UNKNOWN'
               and (o.method = 'KNOWN_AGE_MARK'
                    or o.method like 'TOOTH%' and o.examiner <> m.examiner
                       and case when o.received_at > m.received_at then o.blind else m.blind end)
               and not a.entered_in_error and (cast(:season as text) is null or a.season = :season)
             group by 1, 2, 3 order by 1, 2, 3
            """;

    private final EntityManager entities;

    ReaderAgreementQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<Pair> pairs(String person, String season) {
        return entities.createNativeQuery(PAIRS, Pair.class)
                .setParameter("person", person)
                .setParameter("season", season)
                .getResultList();
    }
}
