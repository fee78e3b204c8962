package org.dentary.jaw.agreement;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;

/** Counts readings of jaws whose age is known. */
@ApplicationScoped
class KnownAgeQueries {
    /** Readings and jaws of a pair of classes; with {@code readClass} null those of the known class as a whole. */
    record Row(String knownClass, String readClass, Integer readings, Integer jaws) {}

    /** Of one person and jaw the first reading counts, since a later one may be remembered; marks that differ know nothing. */
    private static final String READINGS = """
            with mark as (
              select kit, min(age_class) as known_class, min(received_at) as told_at, array_agg(examiner) as tellers
                from jaw_reading
               where method = 'KNOWN_AGE_MARK' and age_class <> 'UNKNOWN' and received_at <= :until
               group by kit having count(distinct age_class) = 1),
            reading as (
              (select distinct on (m.kit, m.examiner) m.kit, k.known_class, m.age_class as read_class
                 from jaw_reading m join mark k on k.kit = m.kit
                where m.method like 'TOOTH%' and m.received_at <= :until
                  and (m.blind or m.received_at < k.told_at) and m.examiner <> all (k.tellers)
                order by m.kit, m.examiner, m.received_at, m.id)
              union all
              (select distinct on (r.person, j.jaw) p.kit, j.right_class, j.given_class
                 from practice_jaw j
                 join practice_round r on r.id = j.round
                 join reference_jaw p on cast(p.id as text) = j.jaw
                where j.kind = 'KNOWN_AGE' and j.given_class is not null and r.finished_at <= :until
                order by r.person, j.jaw, j.given_at))
            select d.known_class, d.read_class, cast(count(*) as int), cast(count(distinct d.kit) as int)
              from reading d join animal a on a.kit = d.kit
             where a.species = :species and not a.entered_in_error
             group by grouping sets ((d.known_class, d.read_class), (d.known_class))
             order by 1, 2
            """;

    private final EntityManager entities;

    KnownAgeQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<Row> readings(String species, Instant until) {
        return entities.createNativeQuery(READINGS, Row.class)
                .setParameter("species", species)
                .setParameter("until", until)
                .getResultList();
    }
}
