package org.dentary.custody.handover;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import org.dentary.custody.chain.CustodyQueries;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.TextErasureService;
import org.dentary.custody.handover.HandOverQueries.HandOverRow;

/** Shows hand-overs with the names of both sides. */
@ApplicationScoped
class HandOverViews {
    private final CustodyQueries queries;
    private final TextErasureService texts;
    private final Moments moments;

    HandOverViews(CustodyQueries queries, TextErasureService texts, Moments moments) {
        this.queries = queries;
        this.texts = texts;
        this.moments = moments;
    }

    HandOverView one(HandOverRow row, List<HandOverView.Item> items) {
        return view(row, items, names(List.of(row)), erasures(List.of(row)), overdueBefore());
    }

    /** Without their codes. */
    List<HandOverView> all(Collection<HandOverRow> rows) {
        Map<String, String> names = names(rows);
        Map<UUID, List<ErasedText>> erasures = erasures(rows);
        Instant overdueBefore = overdueBefore();
        return rows.stream()
                .map(row -> view(row, List.of(), names, erasures, overdueBefore))
                .toList();
    }

    private Map<String, String> names(Collection<HandOverRow> rows) {
        TreeSet<String> codes = new TreeSet<>();
        rows.forEach(row -> {
            codes.addAll(List.of(row.fromCustodian(), row.toCustodian()));
            if (row.place() != null) {
                codes.add(row.place());
            }
        });
        return queries.names(codes);
    }

    private Map<UUID, List<ErasedText>> erasures(Collection<HandOverRow> rows) {
        return texts.ofHandOvers(rows.stream().map(HandOverRow::uuid).toList());
    }

    private Instant overdueBefore() {
        Instant now = moments.now();
        return now.minus(moments.limits(now, ZoneOffset.UTC).unanswered());
    }

    private static HandOverView view(
            HandOverRow row,
            List<HandOverView.Item> items,
            Map<String, String> names,
            Map<UUID, List<ErasedText>> erasures,
            Instant overdueBefore) {
        return new HandOverView(
                row.uuid(),
                row.state(),
                row.fromCustodian(),
                row.fromKind(),
                names.getOrDefault(row.fromCustodian(), row.fromCustodian()),
                row.toCustodian(),
                row.toKind(),
                names.getOrDefault(row.toCustodian(), row.toCustodian()),
                row.place(),
                row.place() == null ? null : names.getOrDefault(row.place(), row.place()),
                row.occurredAt(),
                row.offeredBy(),
                row.offeredAt(),
                row.reason(),
                row.state().equals("OFFERED") && row.occurredAt().isBefore(overdueBefore),
                row.offered().intValue(),
                row.accepted().intValue(),
                row.missing().intValue(),
                row.refused().intValue(),
                items,
                erasures.getOrDefault(row.uuid(), List.of()),
                row.version());
    }
}
