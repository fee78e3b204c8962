package org.dentary.animal.vault;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/** Reads and writes the rows of the caller index, set-based. */
@ApplicationScoped
class CallerIndexWrites {
    /** One way to find an animal. */
    record Entry(String kit, ContactKey kind, String digest) {}

    /** A contact still sealed, or a registration number. */
    record Sealed(String kit, byte[] wrappedKey, byte[] content) {}

    record Registration(String kit, String value) {}

    private static final String FORGET = """
            delete from vault.caller_index where kit = any(cast(:kits as text[])) and kind = any(cast(:kinds as text[]))
            """;
    private static final String WRITE = """
            insert into vault.caller_index (kit, kind, digest, edition, written_at)
            select distinct t.kit, t.kind, t.digest, :edition, cast(:now as timestamptz)
              from unnest(cast(:kits as text[]), cast(:kinds as text[]), cast(:digests as text[])) as t(kit, kind, digest)
                on conflict do nothing
            """;
    private static final String INDEXED = """
            update vault.contact set index_edition = :edition where kit = any(cast(:kits as text[]))
            """;
    private static final String FIND =
            "select kit from vault.caller_index where kind = :kind and digest = :digest order by kit limit 50";
    private static final String ERASE = "delete from vault.caller_index where kit = :kit";
    private static final String ERASE_UNTIL = """
            delete from vault.caller_index c
             using unnest(cast(:kits as text[]), cast(:until as timestamptz[])) as e(kit, at)
             where c.kit = e.kit and c.written_at <= e.at
            """;
    private static final String STALE_CONTACTS = """
            select kit, wrapped_key, content from vault.contact where index_edition <> :edition order by kit limit :limit
            """;
    private static final String STALE_REGISTRATIONS = """
            select i.kit, i.value from animal_identifier i
             where i.kit in (
               select r.kit from animal_identifier r
                where r.type = 'REGISTRATION' and r.kit > :after and r.kit <> all(cast(:erased as text[]))
                  and not exists (select 1 from vault.caller_index c
                                   where c.kit = r.kit and c.kind = 'REGISTRATION' and c.edition = :edition)
                order by r.kit limit :limit)
               and i.type = 'REGISTRATION'
             order by i.kit
            """;

    private final EntityManager entities;

    CallerIndexWrites(EntityManager entities) {
        this.entities = entities;
    }

    /** Puts entries in place of what the kits had of those kinds. */
    void replace(Collection<String> kits, List<ContactKey> kinds, List<Entry> entries, String edition, Instant now) {
        entities.createNativeQuery(FORGET)
                .setParameter("kits", kits.toArray(String[]::new))
                .setParameter("kinds", kinds.stream().map(Enum::name).toArray(String[]::new))
                .executeUpdate();
        if (!entries.isEmpty()) {
            entities.createNativeQuery(WRITE)
                    .setParameter("kits", entries.stream().map(Entry::kit).toArray(String[]::new))
                    .setParameter(
                            "kinds",
                            entries.stream().map(one -> one.kind().name()).toArray(String[]::new))
                    .setParameter("digests", entries.stream().map(Entry::digest).toArray(String[]::new))
                    .setParameter("edition", edition)
                    .setParameter("now", now)
                    .executeUpdate();
        }
    }

    /** Marks contacts as indexed. */
    void indexed(Collection<String> kits, String edition) {
        entities.createNativeQuery(INDEXED)
                .setParameter("kits", kits.toArray(String[]::new))
                .setParameter("edition", edition)
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    List<String> find(ContactKey kind, String digest) {
        return entities.createNativeQuery(FIND)
                .setParameter("kind", kind.name())
                .setParameter("digest", digest)
                .getResultList();
    }

    int erase(String kit) {
        return entities.createNativeQuery(ERASE).setParameter("kit", kit).executeUpdate();
    }

    /** Erases the entries that were written up to a moment each. */
    int eraseUntil(Map<String, Instant> erased) {
        return entities.createNativeQuery(ERASE_UNTIL)
                .setParameter("kits", erased.keySet().toArray(String[]::new))
                .setParameter(
                        "until", erased.values().stream().map(Instant::toString).toArray(String[]::new))
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    List<Sealed> staleContacts(String edition, int limit) {
        return entities.createNativeQuery(STALE_CONTACTS, Sealed.class)
                .setParameter("edition", edition)
                .setParameter("limit", limit)
                .getResultList();
    }

    /** Registration numbers of the next kits that are not indexed under the edition, by kit. */
    @SuppressWarnings("unchecked")
    List<Registration> staleRegistrations(String edition, String after, Collection<String> erased, int limit) {
        return entities.createNativeQuery(STALE_REGISTRATIONS, Registration.class)
                .setParameter("edition", edition)
                .setParameter("after", after)
                .setParameter("erased", erased.toArray(String[]::new))
                .setParameter("limit", limit)
                .getResultList();
    }
}
