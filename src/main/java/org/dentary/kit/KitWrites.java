package org.dentary.kit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;

/** Writes blocks, kits and labels, each with one statement however many rows there are. */
@ApplicationScoped
class KitWrites {
    private static final String BLOCK = """
            insert into kit_block (id, season, station, person, parts, kits, copies, issued_by, issued_at)
            values (:id, :season, :station, nullif(:person, ''), :parts, :kits, :copies, :by, :at)
            """;
    private static final String KITS = """
            with made as (
                insert into kit (code, block, position)
                select code, :block, :from + position from unnest(:codes) with ordinality as drawn(code, position)
                on conflict (code) do nothing
                returning code, position)
            select code from made order by position
            """;
    private static final String LABELS = """
            insert into label (code, part, kit_printed, kit_bound)
            select code, part, kit, kit from unnest(:codes, :parts, :kits) as made(code, part, kit)
            """;
    /** In code order, the same for every writer, so that two writers never wait for each other. */
    private static final String LOCK =
            "select code from label where code = any(:codes) order by code collate \"C\" for update";

    private static final String VOID = """
            update label set voided_at = :at, voided_by = :by, void_reason = :reason, version = version + 1
             where code = :code
            """;
    private static final String REBIND =
            "update label set kit_bound = :kit, version = version + 1 where code = any(:codes) and kit_bound <> :kit";
    private static final String FATES = """
            insert into kit_fate (kit, fate, reason, by_actor, at)
            select kit, :fate, :reason, :by, :at from unnest(:kits) as given(kit)
            on conflict (kit) do update
               set fate = excluded.fate, reason = excluded.reason, by_actor = excluded.by_actor, at = excluded.at
             where kit_fate.fate <> excluded.fate or kit_fate.reason <> excluded.reason
            """;
    private static final String REPRINT = """
            insert into label_reprint (id, label, stock, reason, printed_by, printed_at, print_number)
            select :id, :label, :stock, :reason, :by, :at, 2 + count(*) from label_reprint where label = :label
            """;

    private final EntityManager entities;

    KitWrites(EntityManager entities) {
        this.entities = entities;
    }

    void block(UUID id, IssueBlock block, String by, Instant at) {
        entities.createNativeQuery(BLOCK)
                .setParameter("id", id)
                .setParameter("season", block.season())
                .setParameter("station", block.station())
                .setParameter("person", block.person() == null ? "" : block.person())
                .setParameter("parts", block.parts().stream().map(Part::name).toArray(String[]::new))
                .setParameter("kits", block.kits())
                .setParameter("copies", block.copiesOrOne())
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    /**
     * Adds so many kits to a block, drawing anew for each that the service has already.
     *
     * @return in the order of their positions, of which a kit that was there already leaves one empty
     */
    List<String> kits(UUID block, int count, Minting minting) {
        List<String> kits = new ArrayList<>();
        int drawn = 0;
        while (kits.size() < count) {
            List<KitStem> more = minting.mint(count - kits.size());
            kits.addAll(insert(block, more, drawn));
            drawn += more.size();
        }
        return kits;
    }

    @SuppressWarnings("unchecked")
    private List<String> insert(UUID block, List<KitStem> drawn, int from) {
        return entities.createNativeQuery(KITS)
                .setParameter("block", block)
                .setParameter("from", from)
                .setParameter("codes", drawn.stream().map(KitStem::value).toArray(String[]::new))
                .getResultList();
    }

    void labels(Collection<LabelCode> labels) {
        entities.createNativeQuery(LABELS)
                .setParameter("codes", labels.stream().map(LabelCode::value).toArray(String[]::new))
                .setParameter("parts", labels.stream().map(l -> l.part().name()).toArray(String[]::new))
                .setParameter("kits", labels.stream().map(l -> l.kit().value()).toArray(String[]::new))
                .executeUpdate();
    }

    /** Keeps everybody from using the labels until the transaction ends. */
    void lock(Collection<String> codes) {
        entities.createNativeQuery(LOCK)
                .setParameter("codes", codes.toArray(String[]::new))
                .getResultList();
    }

    void voidLabel(String code, String reason, String by, Instant at) {
        entities.createNativeQuery(VOID)
                .setParameter("code", code)
                .setParameter("reason", reason)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    void rebind(Collection<String> codes, String kit) {
        lock(codes);
        entities.createNativeQuery(REBIND)
                .setParameter("codes", codes.toArray(String[]::new))
                .setParameter("kit", kit)
                .executeUpdate();
    }

    void fates(Collection<String> kits, String fate, String reason, String by, Instant at) {
        entities.createNativeQuery(FATES)
                .setParameter("kits", kits.toArray(String[]::new))
                .setParameter("fate", fate)
                .setParameter("reason", reason)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    void reprint(UUID id, String label, String stock, String reason, String by, Instant at) {
        entities.createNativeQuery(REPRINT)
                .setParameter("id", id)
                .setParameter("label", label)
                .setParameter("stock", stock)
                .setParameter("reason", reason)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }
}
