package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.dentary.submission.packing.PackedView;

/** Reads submissions and what decides about packing. */
@ApplicationScoped
class SubmissionQueries {
    private static final String SELECT = "with " + Sight.WITHHELD + """
            select b.id::text, b.number, b.laboratory, b.purpose, b.state, b.carrier, b.waybill, b.checklist,
                   b.dispatched_at, b.dispatched_by, b.received_at, b.opened_by, b.opened_at,
                   case when :knowing then b.version end,
                   c.packed, c.received, c.missing
              from submission b
             cross join lateral (
                   select count(*) as packed,
                          count(*) filter (where arrival.receipt in ('RECEIVED', 'DAMAGED')) as received,
                          count(*) filter (where arrival.receipt = 'SHORT') as missing
                     from submission_specimen x """ + Sight.ARRIVAL + """
                    where x.submission = b.id and """ + Sight.SEEN + """
                   ) c
             where (:knowing and :everywhere or c.packed > 0
                    or :everywhere and b.purpose <> 'CONFIRMATORY'
                       and not exists (select 1 from submission_specimen r where r.submission = b.id))
            """;
    private static final String PACKED = "with " + Sight.WITHHELD + """
            select x.code, x.box, s.tissue, s.side, s.preservation,
                   (s.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date, a.species,
                   coalesce((select n.age_class from line n where n.kit = a.kit and n.closed_at is null order by n.disease limit 1), 'UNKNOWN'),
                   coalesce(a.sex, 'UNKNOWN'), coalesce(a.unit, 'UNKNOWN'), x.packed_at, x.packed_by, x.override_reason, arrival.receipt,
                   arrival.received_at, arrival.receipt_source, i.code is not null as identity_exception
              from submission b join submission_specimen x on x.submission = b.id
              join specimen s on s.code = x.code join label l on l.code = s.code
              left join animal a on a.kit = l.kit_bound left join station t on t.code = a.station
              left join (select distinct g.code from specimen_standing g where g.standing = 'GRANTED') i on i.code = x.code
            """ + Sight.ARRIVAL + """
             where b.id = :id and """ + Sight.SEEN + """
             order by x.box nulls first, x.packed_at, x.code
            """;
    private static final String OVER = "select given from submission_over where submission = :id order by given";
    private static final String ROUTES = """
            select x.code, string_agg(distinct b.laboratory, ' ') from submission_specimen x
              join submission b on b.id = x.submission where x.code in (:codes) group by x.code
            """;
    private static final String SENT_SINCE = """
            select distinct x.code from submission_specimen x join submission b on b.id = x.submission
             where x.submission <> :id and x.code = any (cast(:codes as text[])) and x.receipt is distinct from 'RECALLED'
               and x.recorded_at > (select max(y.recorded_at) from submission_specimen y where y.submission = :id and y.code = x.code)
             order by x.code
            """;

    private final EntityManager entities;

    SubmissionQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A submission's own row with its counts; the version is null for who may not know of each change. */
    record Head(
            String id,
            Long number,
            String laboratory,
            String purpose,
            String state,
            String carrier,
            String waybill,
            String shipper,
            Instant dispatchedAt,
            String dispatchedBy,
            Instant receivedAt,
            String openedBy,
            Instant openedAt,
            Integer version,
            Long packed,
            Long received,
            Long missing) {}

    @SuppressWarnings("unchecked")
    Optional<Head> find(UUID id, Sight sight) {
        return ((List<Head>) sight.bind(entities.createNativeQuery(SELECT + " and b.id = :id", Head.class))
                        .setParameter("id", id)
                        .getResultList())
                .stream().findFirst();
    }

    /**
     * Newest first.
     *
     * @param states none for all
     * @param laboratory null for all
     * @param before only those with a smaller number, null for no bound
     */
    @SuppressWarnings("unchecked")
    List<Head> list(List<String> states, String laboratory, Long before, int most, Sight sight) {
        return heads(states, laboratory, before, sight).setMaxResults(most).getResultList();
    }

    /** All of them, of {@link Head}s, for a stream. */
    Query heads(Sight sight) {
        return heads(List.of(), null, null, sight);
    }

    private Query heads(List<String> states, String laboratory, Long before, Sight sight) {
        return sight.bind(entities.createNativeQuery(
                        SELECT + " and (cardinality(:states) = 0 or b.state = any(:states))"
                                + " and (cast(:laboratory as text) is null or b.laboratory = :laboratory)"
                                + " and (cast(:before as bigint) is null or b.number < :before) order by b.number desc",
                        Head.class))
                .setParameter("states", states.toArray(String[]::new))
                .setParameter("laboratory", laboratory)
                .setParameter("before", before);
    }

    @SuppressWarnings("unchecked")
    List<PackedView> packed(UUID id, Sight sight) {
        return sight.bind(entities.createNativeQuery(PACKED, PackedView.class))
                .setParameter("id", id)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<String> over(UUID id) {
        return entities.createNativeQuery(OVER).setParameter("id", id).getResultList();
    }

    @SuppressWarnings("unchecked")
    Map<String, List<String>> routes(Collection<String> codes) {
        Map<String, List<String>> routes = new TreeMap<>();
        ((List<Object[]>) entities.createNativeQuery(ROUTES)
                        .setParameter("codes", codes)
                        .getResultList())
                .forEach(row -> routes.put((String) row[0], List.of(((String) row[1]).split(" "))));
        return routes;
    }

    /** Those of the codes that were packed into another submission since and did not come back from it. */
    @SuppressWarnings("unchecked")
    List<String> packedSince(UUID id, Collection<String> codes) {
        return entities.createNativeQuery(SENT_SINCE)
                .setParameter("id", id)
                .setParameter("codes", codes.toArray(String[]::new))
                .getResultList();
    }
}
