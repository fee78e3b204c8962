package org.dentary.kit.print;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.kit.LabelOfKit;

/** Reads which labels a block prints and keeps each printing. */
@ApplicationScoped
class PrintQueries {
    private static final String LABELS = """
            select l.kit_printed, l.part, l.code
              from kit k join label l on l.kit_printed = k.code join kit_block b on b.id = k.block
             where k.block = :block and l.voided_at is null and l.part = any(:parts)
             order by k.position, array_position(b.parts, l.part)
            """;
    private static final String COUNTS = """
            select l.part, count(*)
              from kit k join label l on l.kit_printed = k.code
             where k.block = :block and l.voided_at is null
             group by l.part
            """;
    private static final String PRINTED = """
            insert into label_print (block, stock, printed_by, printed_at, reason, copies, start_at, labels, sheets)
            values (:block, :stock, :by, :at, nullif(:reason, ''), :copies, :start, :labels, :sheets)
            """;
    private static final String PRINTINGS = """
            select id, stock, copies, start_at, labels, sheets, printed_by, printed_at, reason
              from label_print where block = :block and id < :before order by id desc
            """;

    private final EntityManager entities;

    PrintQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** How many labels of a part are not void. */
    record PartCount(String part, Long labels) {}

    @SuppressWarnings("unchecked")
    List<PartCount> counts(UUID block) {
        return entities.createNativeQuery(COUNTS, PartCount.class)
                .setParameter("block", block)
                .getResultList();
    }

    /** The labels of some parts in printing order, voided ones left out; to be streamed. */
    Query labels(UUID block, List<String> parts) {
        return entities.createNativeQuery(LABELS, LabelOfKit.class)
                .setParameter("block", block)
                .setParameter("parts", parts.toArray(String[]::new));
    }

    /** The printings before one, newest first; to be streamed or read. */
    Query printings(UUID block, long before) {
        return entities.createNativeQuery(PRINTINGS, BlockPrinting.class)
                .setParameter("block", block)
                .setParameter("before", before);
    }

    void printed(PrintingPlan plan, String copies, String reason, String by, Instant at) {
        entities.createNativeQuery(PRINTED)
                .setParameter("block", plan.block())
                .setParameter("stock", plan.stock())
                .setParameter("copies", copies)
                .setParameter("start", plan.start())
                .setParameter("labels", plan.labels())
                .setParameter("sheets", plan.sheets())
                .setParameter("reason", reason == null ? "" : reason.strip())
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }
}
