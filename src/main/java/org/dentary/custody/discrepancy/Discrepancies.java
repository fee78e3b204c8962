package org.dentary.custody.discrepancy;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.dentary.custody.chain.CustodyKind;
import org.dentary.custody.chain.Head;
import org.dentary.custody.chain.Moment;
import org.dentary.custody.chain.Moments;
import org.dentary.ledger.EventDraft;

/** Opens discrepancies that a count or a check brings to light, a set of codes at a time. */
@ApplicationScoped
public class Discrepancies {
    private final DiscrepancyQueries queries;
    private final Moments moments;

    Discrepancies(DiscrepancyQueries queries, Moments moments) {
        this.queries = queries;
        this.moments = moments;
    }

    /**
     * Opens one per code, due within the plan's days.
     *
     * @param owner who settles them
     * @param subject id of what they arose in, or null
     * @return code to the discrepancy's id
     */
    public Map<String, UUID> open(
            Collection<String> codes, String kind, String owner, String evidence, String subject, Moment moment) {
        Map<String, UUID> opened = new TreeMap<>();
        codes.forEach(code -> opened.put(code, UUID.randomUUID()));
        if (opened.isEmpty()) {
            return opened;
        }
        LocalDate today = moment.receivedAt().atZone(moment.zone()).toLocalDate();
        int days = moments.limits(moment.receivedAt(), moment.zone()).discrepancyDays();
        List<String> ids = new ArrayList<>();
        opened.values().forEach(id -> ids.add(id.toString()));
        queries.insert(
                ids,
                opened.keySet(),
                new DiscrepancyQueries.DiscrepancyRow(
                        null,
                        null,
                        kind,
                        owner,
                        today.plusDays(days),
                        evidence,
                        null,
                        subject,
                        moment.actor(),
                        moment.receivedAt(),
                        null,
                        0,
                        null,
                        null));
        return opened;
    }

    /** Ties photographs to discrepancies, in one statement; the entry that tells of each holds their digests. */
    public void show(Collection<UUID> discrepancies, List<UUID> photos) {
        if (!discrepancies.isEmpty() && photos != null && !photos.isEmpty()) {
            queries.show(discrepancies, new TreeSet<>(photos));
        }
    }

    /** The event that tells of it on the code's chain; evidence in words, or null. */
    public static EventDraft draft(Moment moment, Head head, String kind, UUID discrepancy, String evidence) {
        return moment.draft(CustodyKind.DISCREPANCY_OPENED, head)
                .with("discrepancy", discrepancy)
                .with("discrepancyKind", kind)
                .with("evidence", Moments.redacted("evidence", evidence));
    }
}
