package org.dentary.custody.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.chain.Holder;

/** Reads and writes hand-overs, their codes in sets. */
@ApplicationScoped
class HandOverQueries {
    private static final String COLUMNS = """
            select cast(o.id as text) as id, o.from_kind, o.from_custodian, o.to_kind, o.to_custodian, o.place,
                   o.occurred_at, o.offered_by, o.offered_at, o.reason, o.state, o.version,
                   i.offered, i.accepted, i.missing, i.refused
              from hand_over o
              cross join lateral (
                select count(*) as offered,
                       count(*) filter (where state = 'ACCEPTED') as accepted,
                       count(*) filter (where state = 'MISSING') as missing,
                       count(*) filter (where state = 'REFUSED') as refused
                  from hand_over_item where hand_over = o.id) i
            """;
    private static final String ONE = COLUMNS + " where o.id = cast(:id as uuid)";
    private static final String OF_IDS = COLUMNS + " where o.id = any(cast(:ids as uuid[])) order by o.id";
    // For who may not know what laboratories find: their own, and what was handed over before a laboratory had it.
    private static final String SEEN = """
            (cast(:blind as text) is null or cast(:blind as text) in (o.offered_by, o.to_custodian) or not exists (
                select 1 from hand_over_item i join laboratory_arrival a on a.chain = i.code
                 where i.hand_over = o.id and a.received_at < o.offered_at))
            """;
    private static final String IS_SEEN =
            "select exists (select 1 from hand_over o where o.id = cast(:id as uuid) and " + SEEN + ")";
    private static final String LIST = COLUMNS + " where " + SEEN + """
               and (cast(:state as text) is null or o.state = :state)
               and (cast(:before as timestamptz) is null
                    or (o.offered_at, cast(o.id as text)) < (cast(:before as timestamptz), cast(:beforeId as text)))
             order by o.offered_at desc, cast(o.id as text) desc limit :most
            """;
    private static final String WAITS_FOR = """
             where o.state = 'OFFERED' and o.offered_by <> :actor
               and (o.to_kind = 'PERSON' and o.to_custodian = :actor
                    or o.to_kind = 'STORE' and o.to_custodian = any(:stores)
                    or o.to_kind = 'PARTY' and (:anyParty or o.to_custodian = :organisation))
            """;
    private static final String WAITS_OF = """
             where o.state = 'OFFERED'
               and (o.offered_by = :actor or o.from_kind = 'PERSON' and o.from_custodian = :actor)
            """;
    private static final String IN_ORDER = """
               and (cast(:after as timestamptz) is null
                    or (o.occurred_at, cast(o.id as text)) > (cast(:after as timestamptz), cast(:afterId as text)))
             order by o.occurred_at, cast(o.id as text) limit :most
            """;
    private static final String OPEN_TO = COLUMNS + WAITS_FOR + IN_ORDER;
    private static final String COUNT_OPEN_TO = "select count(*) from hand_over o" + WAITS_FOR;
    private static final String OPEN_FROM = COLUMNS + WAITS_OF + IN_ORDER;
    private static final String COUNT_OPEN_FROM = "select count(*) from hand_over o" + WAITS_OF;
    private static final String LOCK = "select version from hand_over where id = cast(:id as uuid) for update";
    private static final String INSERT = """
            insert into hand_over (id, from_kind, from_custodian, to_kind, to_custodian, place, occurred_at, offered_by,
                offered_at, reason, state)
            values (cast(:id as uuid), :fromKind, :from, :toKind, :to, :place, :occurredAt, :by, :at, :reason, :state)
            """;
    private static final String INSERT_ITEMS = """
            insert into hand_over_item (hand_over, code, state)
            select cast(:id as uuid), c, :state from unnest(cast(:codes as text[])) c
            """;
    private static final String SET_ITEMS = """
            update hand_over_item set state = :state where hand_over = cast(:id as uuid) and code = any(:codes)
            """;
    private static final String SET_STATE = """
            update hand_over set state = :state, version = version + 1 where id = cast(:id as uuid)
            """;
    private static final String ITEMS =
            "select code, state from hand_over_item where hand_over = cast(:id as uuid) order by code";

    private final EntityManager entities;

    HandOverQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A hand-over with how many of its codes stand how. */
    record HandOverRow(
            String id,
            String fromKind,
            String fromCustodian,
            String toKind,
            String toCustodian,
            String place,
            Instant occurredAt,
            String offeredBy,
            Instant offeredAt,
            String reason,
            String state,
            Integer version,
            Long offered,
            Long accepted,
            Long missing,
            Long refused) {
        Holder from() {
            return new Holder(fromKind, fromCustodian);
        }

        Holder to() {
            return new Holder(toKind, toCustodian);
        }

        UUID uuid() {
            return UUID.fromString(id);
        }
    }

    Optional<HandOverRow> find(UUID id) {
        return rows(
                        entities.createNativeQuery(ONE, HandOverRow.class).setParameter("id", id.toString()),
                        HandOverRow.class)
                .stream()
                .findFirst();
    }

    /** Those hand-overs, in one query. */
    List<HandOverRow> all(Collection<UUID> ids) {
        return rows(
                entities.createNativeQuery(OF_IDS, HandOverRow.class)
                        .setParameter("ids", ids.stream().map(UUID::toString).toArray(String[]::new)),
                HandOverRow.class);
    }

    /** Locks the hand-over until the transaction ends; empty if there is none. */
    Optional<HandOverRow> lock(UUID id) {
        entities.createNativeQuery(LOCK).setParameter("id", id.toString()).getResultList();
        return find(id);
    }

    /** Whether there is such a hand-over and the account may see it; blind as in the list. */
    boolean isSeen(UUID id, String blind) {
        return (Boolean) entities.createNativeQuery(IS_SEEN, Boolean.class)
                .setParameter("id", id.toString())
                .setParameter("blind", blind)
                .getSingleResult();
    }

    /**
     * Newest first, after a known one.
     *
     * @param blind who asks, if they may not know what laboratories find; else null
     */
    List<HandOverRow> list(String blind, String state, Mark before, int most) {
        return rows(
                entities.createNativeQuery(LIST, HandOverRow.class)
                        .setParameter("blind", blind)
                        .setParameter("state", state)
                        .setParameter("before", before == null ? null : before.value())
                        .setParameter("beforeId", before == null ? null : before.id())
                        .setParameter("most", most),
                HandOverRow.class);
    }

    /** Open offers to somebody and to those it acts for, the longest waiting first. */
    List<HandOverRow> openTo(ActingFor acting, Mark after, int most) {
        return rows(
                page(waiting(entities.createNativeQuery(OPEN_TO, HandOverRow.class), acting), after, most),
                HandOverRow.class);
    }

    long countOpenTo(ActingFor acting) {
        return (Long) waiting(entities.createNativeQuery(COUNT_OPEN_TO, Long.class), acting)
                .getSingleResult();
    }

    private static Query waiting(Query query, ActingFor acting) {
        return query.setParameter("actor", acting.actor())
                .setParameter("stores", acting.stores().toArray(String[]::new))
                .setParameter("anyParty", acting.anyParty())
                .setParameter("organisation", acting.organisation());
    }

    /** Open offers by somebody, the longest waiting first. */
    List<HandOverRow> openFrom(String actor, Mark after, int most) {
        return rows(
                page(
                        entities.createNativeQuery(OPEN_FROM, HandOverRow.class).setParameter("actor", actor),
                        after,
                        most),
                HandOverRow.class);
    }

    long countOpenFrom(String actor) {
        return (Long) entities.createNativeQuery(COUNT_OPEN_FROM, Long.class)
                .setParameter("actor", actor)
                .getSingleResult();
    }

    private static Query page(Query query, Mark after, int most) {
        return query.setParameter("after", after == null ? null : after.value())
                .setParameter("afterId", after == null ? null : after.id())
                .setParameter("most", most);
    }

    List<HandOverView.Item> items(UUID id) {
        return rows(
                entities.createNativeQuery(ITEMS, HandOverView.Item.class).setParameter("id", id.toString()),
                HandOverView.Item.class);
    }

    void insert(HandOverRow row) {
        entities.createNativeQuery(INSERT)
                .setParameter("id", row.id())
                .setParameter("fromKind", row.fromKind())
                .setParameter("from", row.fromCustodian())
                .setParameter("toKind", row.toKind())
                .setParameter("to", row.toCustodian())
                .setParameter("place", row.place())
                .setParameter("occurredAt", row.occurredAt())
                .setParameter("by", row.offeredBy())
                .setParameter("at", row.offeredAt())
                .setParameter("reason", row.reason())
                .setParameter("state", row.state())
                .executeUpdate();
    }

    void insertItems(UUID id, Collection<String> codes, String state) {
        entities.createNativeQuery(INSERT_ITEMS)
                .setParameter("id", id.toString())
                .setParameter("state", state)
                .setParameter("codes", codes.toArray(String[]::new))
                .executeUpdate();
    }

    void setItems(UUID id, Collection<String> codes, String state) {
        if (!codes.isEmpty()) {
            entities.createNativeQuery(SET_ITEMS)
                    .setParameter("id", id.toString())
                    .setParameter("state", state)
                    .setParameter("codes", codes.toArray(String[]::new))
                    .executeUpdate();
        }
    }

    void setState(UUID id, String state) {
        entities.createNativeQuery(SET_STATE)
                .setParameter("id", id.toString())
                .setParameter("state", state)
                .executeUpdate();
    }

    @SuppressWarnings("unchecked")
    private static <T> List<T> rows(Query query, Class<T> row) {
        return (List<T>) query.getResultList();
    }
}
