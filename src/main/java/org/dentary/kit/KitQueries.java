package org.dentary.kit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Reads blocks, kits and labels. */
@ApplicationScoped
class KitQueries {
    private static final String BLOCK_COLUMNS = """
            select b.id, b.season, s.name, b.station, t.name, b.person, array_to_string(b.parts, ' '), b.kits, b.copies,
                   b.issued_by, b.issued_at, b.version
              from kit_block b join season s on s.code = b.season join station t on t.code = b.station
            """;
    private static final String BLOCK = BLOCK_COLUMNS + " where b.id = :id";
    private static final String BLOCKS = BLOCK_COLUMNS + """
             where (:season = '' or b.season = :season) and (:everywhere or b.station = any(:stations))
               and (:start or (b.issued_at, b.id) < (select issued_at, id from kit_block where id = :before))
             order by b.issued_at desc, b.id desc
            """;
    private static final String BLOCK_OF_LABEL = BLOCK_COLUMNS + """
             where b.id = (select k.block from label l join kit k on k.code = l.kit_printed where l.code = :label)
            """;
    private static final String LABELS_OF_BLOCK = """
            select l.kit_printed, l.part, l.code
              from kit k join label l on l.kit_printed = k.code join kit_block b on b.id = k.block
             where k.block = :block
             order by k.position, array_position(b.parts, l.part)
            """;
    private static final String LABELS = """
            select l.code, l.part, l.kit_printed, l.kit_bound, cast(b.id as text), b.season, b.station,
                   l.voided_at is not null
              from label l join kit k on k.code = l.kit_printed join kit_block b on b.id = k.block
             where l.code = any(:codes)
            """;
    private static final String KITS = "select code from kit where code = any(:codes)";
    private static final String BLOCKS_OF_KITS = """
            select k.code, cast(b.id as text), b.station from kit k join kit_block b on b.id = k.block
             where k.code = any(:codes)
            """;
    private static final String REPRINT = """
            select id, label, stock, reason, printed_by, printed_at, print_number from label_reprint where id = :id
            """;
    private static final String REPRINTS = """
            select id, label, stock, reason, printed_by, printed_at, print_number
              from label_reprint where label = :label order by print_number
            """;

    private final EntityManager entities;

    KitQueries(EntityManager entities) {
        this.entities = entities;
    }

    Optional<BlockRow> block(UUID id) {
        return first(entities.createNativeQuery(BLOCK, BlockRow.class).setParameter("id", id), BlockRow.class);
    }

    /** Newest first; of a season, of some stations, before a block, or of all where it is not said. */
    List<BlockRow> blocks(String season, Optional<List<String>> stations, UUID before, int most) {
        return rows(
                entities.createNativeQuery(BLOCKS, BlockRow.class)
                        .setParameter("season", season == null ? "" : season)
                        .setParameter("everywhere", stations.isEmpty())
                        .setParameter("stations", stations.orElse(List.of()).toArray(String[]::new))
                        .setParameter("start", before == null)
                        .setParameter("before", before == null ? new UUID(0, 0) : before)
                        .setMaxResults(most),
                BlockRow.class);
    }

    Optional<BlockRow> blockOfLabel(String label) {
        return first(
                entities.createNativeQuery(BLOCK_OF_LABEL, BlockRow.class).setParameter("label", label),
                BlockRow.class);
    }

    List<LabelOfKit> labelsOfBlock(UUID block) {
        return rows(labelsOf(block), LabelOfKit.class);
    }

    /** The same to be streamed. */
    Query labelsOf(UUID block) {
        return entities.createNativeQuery(LABELS_OF_BLOCK, LabelOfKit.class).setParameter("block", block);
    }

    List<LabelView> labels(Collection<String> codes) {
        return rows(
                entities.createNativeQuery(LABELS, LabelView.class).setParameter("codes", codes.toArray(String[]::new)),
                LabelView.class);
    }

    List<String> kits(Collection<String> codes) {
        return rows(entities.createNativeQuery(KITS).setParameter("codes", codes.toArray(String[]::new)), String.class);
    }

    List<KitHome> homes(Collection<String> kits) {
        return rows(
                entities.createNativeQuery(BLOCKS_OF_KITS, KitHome.class)
                        .setParameter("codes", kits.toArray(String[]::new)),
                KitHome.class);
    }

    Optional<ReprintView> reprint(UUID id) {
        return first(entities.createNativeQuery(REPRINT, ReprintView.class).setParameter("id", id), ReprintView.class);
    }

    List<ReprintView> reprints(String label) {
        return rows(
                entities.createNativeQuery(REPRINTS, ReprintView.class).setParameter("label", label),
                ReprintView.class);
    }

    /** Where a kit was issued. */
    record KitHome(String kit, String block, String station) {}

    private static <T> Optional<T> first(Query query, Class<T> row) {
        return rows(query, row).stream().findFirst();
    }

    @SuppressWarnings("unchecked")
    private static <T> List<T> rows(Query query, Class<T> row) {
        return (List<T>) query.getResultList();
    }
}
