package org.dentary.submission;

import jakarta.persistence.Query;
import java.util.List;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.Role;

/**
 * What an account sees of submissions. Who may not know derived outcomes sees nothing of where an animal's tissue went
 * from the moment its finding was withheld: a second laboratory would tell what the first one found. A sampler sees what
 * came from the stations that the account serves.
 *
 * @param knowing whether derived outcomes may be known
 * @param everywhere whether all stations are seen
 * @param stations station codes, where not all are seen
 */
public record Sight(boolean knowing, boolean everywhere, List<String> stations) {
    /**
     * Labels of animals with a withheld finding, read once a query: the planner takes them for many and would read them by row.
     * And what was known of the arrival of those that were taken back since: that they were would tell of it.
     */
    public static final String WITHHELD = """
            withheld as materialized (
              select l.code, e.since from embargo e join label l on l.kit_bound = e.kit where not :knowing),
            earlier as materialized (
              select distinct on (k.key, k.old ->> 'submission') k.key as code, cast(k.old ->> 'submission' as uuid) as submission,
                     k.old ->> 'receipt' as receipt, cast(k.old ->> 'received_at' as timestamptz) as received_at,
                     k.old ->> 'receipt_source' as receipt_source
                from withheld h join history k on k.table_name = 'submission_specimen' and k.key = h.code and k.at >= h.since
                 and k.old ->> 'receipt' is distinct from 'RECALLED'
               order by k.key, k.old ->> 'submission', k.id desc)
            """;

    /**
     * Joins to a row x of a submission what may be known of its arrival, in a query that begins with {@link #WITHHELD}: what
     * was counted, or that a result says so; the withheld one says nothing.
     */
    public static final String ARRIVAL = """
             left join earlier on earlier.code = x.code and earlier.submission = x.submission and x.receipt = 'RECALLED'
             left join withheld since on since.code = x.code
             cross join lateral (
               select case when earlier.code is null then x.receipt else earlier.receipt end as receipt,
                      case when earlier.code is null then x.received_at else earlier.received_at end as received_at,
                      case when earlier.code is null then x.receipt_source else earlier.receipt_source end as receipt_source,
                      x.implied_at is not null and (since.code is null or x.implied_at < since.since) as implied) told
             cross join lateral (
               select told.implied and coalesce(told.receipt, 'SHORT') = 'SHORT' as by_result) way
             cross join lateral (
               select case when way.by_result then 'RECEIVED' else told.receipt end as receipt,
                      case when way.by_result then x.implied_at else told.received_at end as received_at,
                      case when way.by_result then 'RESULT' else told.receipt_source end as receipt_source) arrival
            """;

    /** Whether a row x of a submission b may be seen, in a query that begins with {@link #WITHHELD}. */
    public static final String SEEN = """
            (not exists (select 1 from withheld h
                          where h.code = x.code and (b.purpose = 'CONFIRMATORY' or x.recorded_at >= h.since))
               and (:everywhere or exists (select 1 from label sl join animal sa on sa.kit = sl.kit_bound
                                            where sl.code = x.code and sa.station = any(:stations))))
            """;

    public static Sight of(Account account) {
        return new Sight(
                account.may(Act.DERIVED_OUTCOME),
                account.role() != Role.SAMPLER || account.stations().contains("*"),
                account.stations());
    }

    /** Sets the parameters that {@link #WITHHELD} and {@link #SEEN} name. */
    public Query bind(Query query) {
        return query.setParameter("knowing", knowing)
                .setParameter("everywhere", everywhere)
                .setParameter("stations", stations.toArray(String[]::new));
    }
}
