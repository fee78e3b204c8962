package org.dentary.custody.evidence;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Base64;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Erases texts kept beside events and tells which were. */
@ApplicationScoped
class TextErasureQueries {
    /**
     * An erasure's row.
     *
     * @param of what was asked for: an event, a hand-over or a discrepancy
     */
    record Row(String of, String name, String by, String byName, Instant at, String reason) {
        ErasedText view() {
            return new ErasedText(name, ErasedText.FIELDS.getOrDefault(name, name), by, byName, at, reason);
        }
    }

    /**
     * What an entry says in a field.
     *
     * @param act id that the entries of the same act share, or null
     * @param content as it is kept, base64; null where nothing is
     * @param discrepancy the one that the entry opened or settled, or null
     * @param erased whether it was erased once
     */
    record Said(String act, String chain, String discrepancy, String content, Boolean erased) {
        String words() {
            return content == null ? null : new String(Base64.getDecoder().decode(content), StandardCharsets.UTF_8);
        }
    }

    private static final String DISCREPANCY = """
            case when e.kind like 'DISCREPANCY%' then (cast(e.bytes as jsonb) -> 'fields') ->> 'discrepancy' end
            """;
    private static final String SAID = "select cast(e.hand_over as text), e.chain, " + DISCREPANCY + """
                , s.content, x.event is not null
              from ledger_event e
              left join ledger_secret s on s.event = e.id and s.name = :name
              left join ledger_secret_erasure x on x.event = e.id and x.name = :name
             where e.id = :event
            """;
    // What one act says of many codes is said in each of their entries; what was seen of a discrepancy, in the entry
    // that opened it and the one that settled it; a place in words is carried on from a box or an offer. It goes from
    // all of them.
    private static final String ERASE = """
            with said (event) as (
                select cast(:event as uuid)
                union
                select s.event from ledger_event e join ledger_secret s on s.event = e.id
                 where e.hand_over = cast(:act as uuid) and s.name = :name and s.content = :content
                union
                select s.event from ledger_secret s
                 where s.name = 'placeText' and :name = 'placeText' and s.content = :content
                union
                select e.id from ledger_event e
                 where :name = 'evidence' and e.chain = :chain and cast(:discrepancy as text) = """ + DISCREPANCY + """
            ),
            gone as (
                delete from ledger_secret s using said where s.event = said.event and s.name = :name returning s.event)
            insert into ledger_secret_erasure (event, name, erased_by, erased_at, reason)
            select event, :name, :actor, :now, :reason
              from (select event from gone union select cast(:event as uuid)) erased
            on conflict do nothing
            """;
    private static final String ERASURE = """
            , x.name, x.erased_by, coalesce(p.name, x.erased_by), x.erased_at, x.reason
              from ledger_secret_erasure x
              join ledger_event e on e.id = x.event
              left join person p on p.code = x.erased_by
            """;
    private static final String OF_EVENTS = "select cast(x.event as text)" + ERASURE + """
             where x.event = any(cast(:of as uuid[])) order by x.event, x.name
            """;
    // An answer to an offer has a reason of its own, told with its entry.
    private static final String OF_HAND_OVERS =
            "select distinct on (e.hand_over, x.name) cast(e.hand_over as text)" + ERASURE + """
             where e.hand_over = any(cast(:of as uuid[]))
               and (x.name = 'placeText' or x.name = 'reason' and e.kind <> 'HANDOVER_REFUSED' and e.actor =
                    (select o.offered_by from hand_over o where o.id = e.hand_over))
             order by e.hand_over, x.name, x.erased_at
            """;
    private static final String OF_DISCREPANCIES = """
            with erased (discrepancy, name, erased_by, by_name, erased_at, reason) as (
                select
            """ + DISCREPANCY + ERASURE + """
                 where x.name = 'evidence')
            select distinct on (discrepancy) discrepancy, name, erased_by, by_name, erased_at, reason
              from erased where discrepancy = any(cast(:of as text[]))
             order by discrepancy, erased_at desc
            """;

    private final EntityManager entities;

    TextErasureQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** What an entry says in a field; empty if there is no such entry. */
    @SuppressWarnings("unchecked")
    Optional<Said> said(UUID event, String name) {
        return ((List<Said>) entities.createNativeQuery(SAID, Said.class)
                        .setParameter("event", event)
                        .setParameter("name", name)
                        .getResultList())
                .stream().findFirst();
    }

    /** Destroys what an entry says in a field, with its salt, and tells who did in each entry that said it. */
    void erase(UUID event, String name, Said said, String actor, Instant now, String reason) {
        entities.createNativeQuery(ERASE)
                .setParameter("event", event)
                .setParameter("name", name)
                .setParameter("act", said.act())
                .setParameter("chain", said.chain())
                .setParameter("discrepancy", said.discrepancy())
                .setParameter("content", said.content())
                .setParameter("actor", actor)
                .setParameter("now", now)
                .setParameter("reason", reason)
                .executeUpdate();
    }

    List<Row> ofEvents(Collection<UUID> events) {
        return rows(OF_EVENTS, events);
    }

    /** Of what was said when they were offered, each field once. */
    List<Row> ofHandOvers(Collection<UUID> handOvers) {
        return rows(OF_HAND_OVERS, handOvers);
    }

    /** Of what was said to be seen, the newest erasure of each. */
    List<Row> ofDiscrepancies(Collection<String> discrepancies) {
        return rows(OF_DISCREPANCIES, discrepancies);
    }

    @SuppressWarnings("unchecked")
    private List<Row> rows(String query, Collection<?> of) {
        return entities.createNativeQuery(query, Row.class)
                .setParameter("of", of.stream().map(Object::toString).toArray(String[]::new))
                .getResultList();
    }
}
