package org.dentary.submission.packing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Reads what decides about packing and leaving, for many specimens at once. */
@ApplicationScoped
class PackingQueries {
    private static final String FACTS = """
            select s.code, l.kit_bound, s.tissue, s.side, s.preservation, s.condition,
                   (s.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date,
                   (coalesce((select max(p.since) from specimen_preservation p where p.code = s.code), s.collected_at)
                     at time zone coalesce(t.time_zone, 'UTC'))::date,
                   coalesce((select n.age_class from line n where n.kit = a.kit and n.closed_at is null order by n.disease limit 1), 'UNKNOWN'),
                   coalesce(a.sex, 'UNKNOWN'), s.archived, coalesce(a.not_attributable, false),
                   (select min(o.number) from submission_specimen x join submission o on o.id = x.submission
                     where x.code = s.code and o.id <> :id and o.state <> 'RECEIVED'
                       and coalesce(x.receipt, '') <> 'RECALLED'),
                   exists (select 1 from submission_specimen x where x.code = s.code and x.submission = :id),
                   (cast(:at as timestamptz) at time zone coalesce(t.time_zone, 'UTC'))::date,
                   coalesce(a.entered_in_error, false), h.last_kind,
                   (select case when m.override_reason is null then '' else coalesce(array_to_string(m.passed, ' '), '*') end
                      from submission_specimen m where m.code = s.code and m.submission = :id)
              from specimen s join label l on l.code = s.code
              left join animal a on a.kit = l.kit_bound left join station t on t.code = a.station
              left join custody_head h on h.code = s.code
             where s.code = any (cast(:codes as text[]))
            """;

    private final EntityManager entities;

    PackingQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** By code, what decides whether specimens may be in the submission at that moment; what is no specimen is left out. */
    @SuppressWarnings("unchecked")
    Map<String, PackingFacts> facts(UUID submission, Collection<String> codes, Instant at) {
        Map<String, PackingFacts> facts = new LinkedHashMap<>();
        ((List<PackingFacts>) entities.createNativeQuery(FACTS, PackingFacts.class)
                        .setParameter("id", submission)
                        .setParameter("codes", codes.toArray(String[]::new))
                        .setParameter("at", at)
                        .getResultList())
                .forEach(one -> facts.put(one.code(), one));
        return facts;
    }
}
