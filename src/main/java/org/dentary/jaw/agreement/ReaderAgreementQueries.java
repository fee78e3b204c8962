package org.dentary.jaw.agreement;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;

/** Counts pairs of readings of the same jaw, and answers given in practice. */
@ApplicationScoped
class ReaderAgreementQueries {
    /** How often the reader said one class where the other said another; the season is empty where there is none. */
    record Pair(String person, String season, String compared, String mine, String other, Integer animals) {}

    /** Who reads, and how often. */
    record Reader(String person, Integer readings) {}

    /**
     * Unknown classes make no pair. The later of two readings must have been blind; a known age must not have been known to
     * the reader. Of a panel's jaw only the first answer counts: the second may be remembered.
     */
    private static final String PAIRS = """
            with lot as (select kit from jaw_reading group by kit having bool_or(drawn)),
            pair as (
              select m.examiner as person, coalesce(a.season, '') as season,
                     case when o.method = 'KNOWN_AGE_MARK' then 'KNOWN_AGE' when l.kit is null then 'REFERRED' else 'DRAWN' end
                       as compared, m.age_class as mine, o.age_class as other
                from jaw_reading m
                join jaw_reading o on o.kit = m.kit and o.id <> m.id
                join animal a on a.kit = m.kit
                left join lot l on l.kit = m.kit
               where (cast(:person as text) is null or m.examiner = :person)
                 and m.method like 'TOOTH%' and m.age_class <> 'UNKNOWN' and o.age_class <> 'UNKNOWN'
                 and (o.method = 'KNOWN_AGE_MARK' and (o.received_at > m.received_at or m.blind)
                      or o.method like 'TOOTH%' and o.examiner <> m.examiner
                         and case when o.received_at > m.received_at then o.blind else m.blind end)
                 and not a.entered_in_error
              union all
              select person, season, 'PANEL', given_class, right_class
                from (select distinct on (r.person, j.jaw) r.person, coalesce(r.season, '') as season, j.given_class,
                             j.right_class
                        from practice_jaw j join practice_round r on r.id = j.round
                       where r.finished_at is not null and (cast(:person as text) is null or r.person = :person)
                       order by r.person, j.jaw, j.given_at) first
               where given_class <> 'UNKNOWN' and right_class <> 'UNKNOWN')
            select person, season, compared, mine, other, cast(count(*) as int) from pair
             group by 1, 2, 3, 4, 5 order by 1, 2, 3, 4, 5
            """;

    private static final String READERS = """
            select person, cast(sum(readings) as int) from (
              select examiner as person, count(*) as readings from jaw_reading where method like 'TOOTH%' group by examiner
              union all
              select distinct person, 0 from practice_round where finished_at is not null) who
             where cast(:person as text) is null or person = :person
             group by person order by person
            """;
    private static final String SEASONS = "select code from season order by starts_on";

    private final EntityManager entities;

    ReaderAgreementQueries(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * Pairs in every season.
     *
     * @param person null: of every reader
     */
    @SuppressWarnings("unchecked")
    List<Pair> pairs(String person) {
        return entities.createNativeQuery(PAIRS, Pair.class)
                .setParameter("person", person)
                .getResultList();
    }

    /** Everyone who has read a jaw or finished a round, by code; or that person alone. */
    @SuppressWarnings("unchecked")
    List<Reader> readers(String person) {
        return entities.createNativeQuery(READERS, Reader.class)
                .setParameter("person", person)
                .getResultList();
    }

    /** Season codes, oldest first. */
    @SuppressWarnings("unchecked")
    List<String> seasons() {
        return entities.createNativeQuery(SEASONS).getResultList();
    }
}
