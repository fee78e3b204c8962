package org.dentary.custody.evidence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

/** Erases texts kept beside events and tells which were. */
@ApplicationScoped
class TextErasureQueries {
    /** An erasure's row. */
    record Row(String event, String name, String by, String byName, Instant at, String reason) {
        ErasedText view() {
            return new ErasedText(name, ErasedText.FIELDS.getOrDefault(name, name), by, byName, at, reason);
        }
    }

    // What one act says of many codes is said in each of their entries; it goes from all of them.
    private static final String ERASE = """
            with this as (
                select e.hand_over, s.content from ledger_event e join ledger_secret s on s.event = e.id
                 where e.id = :event and s.name = :name),
            gone as (
                delete from ledger_secret s using ledger_event e, this
                 where e.id = s.event and s.name = :name and s.content = this.content
                   and (e.id = :event or e.hand_over = this.hand_over)
                returning s.event)
            insert into ledger_secret_erasure (event, name, erased_by, erased_at, reason)
            select event, :name, :actor, :now, :reason from gone on conflict do nothing
            """;
    private static final String OF_EVENTS = """
            select cast(x.event as text), x.name, x.erased_by, coalesce(p.name, x.erased_by), x.erased_at, x.reason
              from ledger_secret_erasure x left join person p on p.code = x.erased_by
             where x.event = any(cast(:events as uuid[])) order by x.event, x.name
            """;

    private final EntityManager entities;

    TextErasureQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** @return from how many entries it was erased */
    int erase(UUID event, String name, String actor, Instant now, String reason) {
        return entities.createNativeQuery(ERASE)
                .setParameter("event", event)
                .setParameter("name", name)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .setParameter("reason", reason)
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    List<Row> ofEvents(Collection<UUID> events) {
        return entities.createNativeQuery(OF_EVENTS, Row.class)
                .setParameter("events", events.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}")))
                .getResultList();
    }
}
