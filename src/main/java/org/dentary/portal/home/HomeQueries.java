package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What waits for whom, counted; one query a role, each answering names and counts. */
@ApplicationScoped
class HomeQueries {
    private static final String SAMPLER = """
            select 'jaws', count(*)
              from animal a
             where a.jaw_status in ('COLLECTED_TO_READ', 'PHOTO_TO_READ') and not a.entered_in_error
               and (:everywhere or a.station = any(:stations))
               and not exists (select 1 from jaw_reading r where r.kit = a.kit)
            union all
            select 'held', count(*) from custody_head h
             where h.custodian_kind = 'PERSON' and h.custodian = :actor
               and not exists (select 1 from box x where x.code = h.code)
            union all
            select 'offering', count(*) from hand_over o where o.state = 'OFFERED' and o.from_custodian = :actor
            union all
            select 'discrepancies', count(*) from discrepancy d where d.closed_at is null and d.owner = :actor
            union all
            select 'taken', count(*) from animal a
             where a.season = :season and (:everywhere or a.station = any(:stations)) and not a.entered_in_error
            """;
    private static final String LIAISON = """
            select 'exceptions', count(*) from identity_exception e
             where not exists (select 1 from identity_exception_decision d where d.exception = e.id)
            union all
            select 'packing', count(*) from submission where state = 'PACKING'
            union all
            select 'expected', count(*) from submission_specimen p join submission s on s.id = p.submission
             where s.state in ('DISPATCHED', 'RECEIVED') and coalesce(p.receipt, '') not in ('SHORT', 'RECALLED')
               and not exists (select 1 from finding_specimen f where f.code = p.code)
            union all
            select 'imports', count(*) from result_import where state = 'PREVIEWED'
            union all
            select 'discrepancies', count(*) from discrepancy d where d.closed_at is null
            """;
    private static final String EPIDEMIOLOGIST = """
            select 'exceptions', count(*) from identity_exception e
             where e.asked_by <> :actor
               and not exists (select 1 from identity_exception_decision d where d.exception = e.id)
            union all
            select 'taken', count(*) from line l where l.closed_at is null and l.season = :season and l.disease = :disease
            union all
            select 'counted', count(*) from line l
             where l.closed_at is null and l.season = :season and l.disease = :disease and l.exclusion = ''
               and l.outcome in ('DETECTED', 'NOT_DETECTED')
            union all
            select 'detected', count(*) from line l
             where l.closed_at is null and l.season = :season and l.disease = :disease and l.exclusion = ''
               and l.outcome = 'DETECTED'
            union all
            select 'pending', count(*) from line l
             where l.closed_at is null and l.season = :season and l.disease = :disease and l.exclusion = ''
               and l.outcome = 'PENDING'
            union all
            select 'disputed', count(*) from line l
             where l.closed_at is null and l.season = :season and l.disease = :disease and l.age_disputed
            union all
            select 'cuts', count(*) from data_cut c where c.season = :season
            """;
    private static final String COORDINATOR = """
            select 'exceptions', count(*) from identity_exception e
             where e.asked_by <> :actor
               and not exists (select 1 from identity_exception_decision d where d.exception = e.id)
            union all
            select 'releases', count(*) from line l
             where l.closed_at is null and l.derived_outcome = 'DETECTED' and l.outcome <> 'DETECTED' and l.exclusion = ''
            union all
            select 'suspects', count(*) from line l
             where l.closed_at is null and l.derived_outcome = 'SUSPECT' and l.exclusion = ''
            union all
            select 'attributions', count(*) from re_attribution r
             where not exists (select 1 from re_attribution_decision d where d.re_attribution = r.id)
            union all
            select 'discrepancies', count(*) from discrepancy d where d.closed_at is null
            union all
            select 'open', count(*) from season where state = 'OPEN'
            union all
            select 'stations', count(*) from station
            union all
            select 'laboratories', count(*) from laboratory
            union all
            select 'persons', count(*) from person where active
            union all
            select 'cautions', count(*) from caution where reviewed_by is null or review_by < cast(:now as date)
            union all
            select 'unaccepted', count(*) from hand_over where state = 'OFFERED'
            """;
    private static final String READER = """
            select 'released', count(*) from line l
             where l.closed_at is null and l.season = :season and l.outcome = 'DETECTED' and l.exclusion = ''
            union all
            select 'discrepancies', count(*) from discrepancy d where d.closed_at is null
            union all
            select 'taken', count(*) from animal a where a.season = :season and not a.entered_in_error
            """;

    private final EntityManager entities;

    HomeQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A name and its count. */
    record Count(String what, Long count) {}

    Map<String, Long> sampler(String actor, boolean everywhere, Collection<String> stations, String season) {
        return counts(
                SAMPLER,
                Map.of(
                        "actor", actor,
                        "everywhere", everywhere,
                        "stations", stations.toArray(String[]::new),
                        "season", season));
    }

    Map<String, Long> liaison() {
        return counts(LIAISON, Map.of());
    }

    Map<String, Long> epidemiologist(String actor, String season, String disease) {
        return counts(EPIDEMIOLOGIST, Map.of("actor", actor, "season", season, "disease", disease));
    }

    Map<String, Long> coordinator(String actor, Instant now) {
        return counts(COORDINATOR, Map.of("actor", actor, "now", now));
    }

    /** For those who read: notifier and auditor. */
    Map<String, Long> reader(String season) {
        return counts(READER, Map.of("season", season));
    }

    @SuppressWarnings("unchecked")
    private Map<String, Long> counts(String sql, Map<String, Object> parameters) {
        var query = entities.createNativeQuery(sql, Count.class);
        parameters.forEach(query::setParameter);
        return ((List<Count>) query.getResultList()).stream().collect(Collectors.toMap(Count::what, Count::count));
    }
}
