package org.dentary.animal.vault;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads and writes the vault's rows, and the audit of their reads. */
@ApplicationScoped
class ContactWrites {
    /** A sealed row. */
    record Row(byte[] wrappedKey, byte[] content, String writtenBy, Instant writtenAt) {}

    private static final String WRITE = """
            insert into vault.contact (kit, wrapped_key, content, names_somebody, index_edition, written_by, written_at)
            values (:kit, :key, :content, :somebody, :edition, :actor, :now)
                on conflict (kit) do update set wrapped_key = excluded.wrapped_key, content = excluded.content,
                   names_somebody = excluded.names_somebody, index_edition = excluded.index_edition, written_by = excluded.written_by,
                   written_at = excluded.written_at
            """;
    private static final String READ =
            "select wrapped_key, content, written_by, written_at from vault.contact where kit = :kit";
    private static final String ERASE = "delete from vault.contact where kit = :kit";
    private static final String ERASE_UNTIL = """
            delete from vault.contact c
             using unnest(cast(:kits as text[]), cast(:until as timestamptz[])) as e(kit, at)
             where c.kit = e.kit and c.written_at <= e.at
            """;
    private static final String AUDIT = """
            insert into read_audit (actor, at, what, key, purpose)
            values (:actor, :now, :what, :kit, cast(:purpose as text))
            """;

    private final EntityManager entities;

    ContactWrites(EntityManager entities) {
        this.entities = entities;
    }

    void write(String kit, Envelope.Sealed sealed, boolean somebody, String edition, String actor, Instant now) {
        entities.createNativeQuery(WRITE)
                .setParameter("kit", kit)
                .setParameter("key", sealed.wrappedKey())
                .setParameter("content", sealed.content())
                .setParameter("somebody", somebody)
                .setParameter("edition", edition)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    Optional<Row> read(String kit) {
        List<Object[]> rows =
                entities.createNativeQuery(READ).setParameter("kit", kit).getResultList();
        return rows.stream()
                .findFirst()
                .map(row -> new Row((byte[]) row[0], (byte[]) row[1], (String) row[2], (Instant) row[3]));
    }

    /** Erases the contacts that were written up to a moment each. */
    int eraseUntil(Map<String, Instant> erased) {
        return entities.createNativeQuery(ERASE_UNTIL)
                .setParameter("kits", erased.keySet().toArray(String[]::new))
                .setParameter(
                        "until", erased.values().stream().map(Instant::toString).toArray(String[]::new))
                .executeUpdate();
    }

    int erase(String kit) {
        return entities.createNativeQuery(ERASE).setParameter("kit", kit).executeUpdate();
    }

    void audit(String what, String kit, String actor, String purpose, Instant now) {
        entities.createNativeQuery(AUDIT)
                .setParameter("what", what)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .setParameter("kit", kit)
                .setParameter("purpose", purpose)
                .executeUpdate();
    }
}
