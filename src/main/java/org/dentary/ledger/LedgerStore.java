package org.dentary.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import javax.sql.DataSource;

/**
 * The events in the database. Writing joins the caller's transaction, so that a change and its events stand or fall
 * together; one statement takes any number of events.
 */
@ApplicationScoped
public class LedgerStore {

    private static final String APPEND = """
            insert into ledger_event (id, chain, sequence, kind, occurred_at, entered_at, received_at, actor, hand_over,
                                      bytes, predecessor, hash)
            select * from unnest(?::uuid[], ?::text[], ?::int[], ?::text[], ?::timestamptz[], ?::timestamptz[],
                                 ?::timestamptz[], ?::text[], ?::uuid[], ?::text[], ?::text[], ?::text[])
            """;
    private static final String KEEP_SECRETS = """
            insert into ledger_secret (event, name, salt, content)
            select * from unnest(?::uuid[], ?::text[], ?::text[], ?::text[])
            """;
    private static final String EVENT = "select id, chain, sequence, kind, bytes, predecessor, hash from ledger_event ";
    private static final String OF_CHAINS = EVENT + "where chain = any(?) order by chain, sequence";
    private static final String BY_ID = EVENT + "where id = ?";
    private static final String HEADS = """
            select distinct on (chain) chain, sequence, hash from ledger_event
             where chain = any(?) order by chain, sequence desc
            """;
    private static final String SECRETS = """
            select event, name, salt, content from ledger_secret where event = any(?) order by event, name
            """;
    private static final String ERASE = "delete from ledger_secret where event = ? and name = ?";

    private final DataSource database;

    LedgerStore(DataSource database) {
        this.database = database;
    }

    /**
     * Appends events in the caller's transaction.
     *
     * @param heads where the drafts' chains end, read by the caller under row locks taken in code order; a chain that is
     *     not among them is new
     * @param drafts any number, several on one chain follow one another in this order; empty appends nothing
     * @return the events in the order of the drafts; take the new heads with {@link ChainHead#after}
     * @throws IllegalStateException outside a transaction, or if a position is already taken: the heads were not locked
     */
    public List<LedgerEvent> appendAll(Collection<ChainHead> heads, List<EventDraft> drafts) {
        Map<String, ChainHead> ends = new HashMap<>();
        heads.forEach(head -> ends.put(head.chain(), head));
        List<LedgerEvent> events = new ArrayList<>(drafts.size());
        for (EventDraft draft : drafts) {
            ChainHead head = ends.getOrDefault(draft.chain(), ChainHead.empty(draft.chain()));
            LedgerEvent event = LedgerEvent.following(head, draft);
            ends.put(event.chain(), ChainHead.after(event));
            events.add(event);
        }
        if (!events.isEmpty()) {
            onConnection("append to the ledger", connection -> {
                if (connection.getAutoCommit()) {
                    throw new IllegalStateException("events are appended in the transaction of the change they record");
                }
                insert(connection, drafts, events);
                keepSecrets(connection, drafts);
                return null;
            });
        }
        return List.copyOf(events);
    }

    /** A chain's events in recorded order; empty for an unknown code. */
    public List<LedgerEvent> chain(String code) {
        return chains(List.of(code)).getOrDefault(code, List.of());
    }

    /** The chains of several codes in one query, by code; a code without events has no entry. */
    public Map<String, List<LedgerEvent>> chains(Collection<String> codes) {
        return onConnection("read chains", connection -> {
            Map<String, List<LedgerEvent>> chains = new LinkedHashMap<>();
            try (PreparedStatement statement = connection.prepareStatement(OF_CHAINS)) {
                statement.setArray(1, array(connection, "text", codes, code -> code));
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        LedgerEvent event = event(row);
                        chains.computeIfAbsent(event.chain(), code -> new ArrayList<>())
                                .add(event);
                    }
                }
            }
            return chains;
        });
    }

    /** The event of that id. */
    public Optional<LedgerEvent> find(UUID id) {
        return onConnection("read an event", connection -> {
            try (PreparedStatement statement = connection.prepareStatement(BY_ID)) {
                statement.setObject(1, id);
                try (ResultSet row = statement.executeQuery()) {
                    return row.next() ? Optional.of(event(row)) : Optional.empty();
                }
            }
        });
    }

    /**
     * Where chains end now, read without a lock: for checking and showing, not for appending.
     *
     * @return by code; a code without events has no entry
     */
    public Map<String, ChainHead> heads(Collection<String> codes) {
        return onConnection("read heads", connection -> {
            Map<String, ChainHead> heads = new LinkedHashMap<>();
            try (PreparedStatement statement = connection.prepareStatement(HEADS)) {
                statement.setArray(1, array(connection, "text", codes, code -> code));
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        heads.put(row.getString(1), new ChainHead(row.getString(1), row.getInt(2), row.getString(3)));
                    }
                }
            }
            return heads;
        });
    }

    /**
     * What was redacted in events and is not erased.
     *
     * @return event to field name (nested ones joined by dots) to content as it is kept, to be checked with {@link
     *     Chain#verifyOutside}; events without are left out
     */
    public Map<UUID, Map<String, Redacted>> secrets(Collection<UUID> events) {
        return onConnection("read what was redacted", connection -> {
            Map<UUID, Map<String, Redacted>> secrets = new HashMap<>();
            try (PreparedStatement statement = connection.prepareStatement(SECRETS)) {
                statement.setArray(1, array(connection, "uuid", events, id -> id));
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        secrets.computeIfAbsent(row.getObject(1, UUID.class), id -> new LinkedHashMap<>())
                                .put(row.getString(2), kept(row.getString(3), row.getString(4)));
                    }
                }
            }
            return secrets;
        });
    }

    /** What is kept; under a fresh salt, so that its digest is not the recorded one, where that is no base64 any more. */
    private static Redacted kept(String base64Salt, String base64Content) {
        try {
            byte[] salt = Base64.getDecoder().decode(base64Salt);
            byte[] content = Base64.getDecoder().decode(base64Content);
            return new Redacted(salt, content, Sha256.hex(Sha256.of(salt, content)));
        } catch (IllegalArgumentException damaged) {
            return Redacted.of(base64Content);
        }
    }

    /**
     * Destroys salt and content of one redacted field; the chain stays whole, its digest can no longer be tied to
     * anything.
     *
     * @return whether there was something to erase
     */
    public boolean erase(UUID event, String name) {
        return onConnection("erase what was redacted", connection -> {
            try (PreparedStatement statement = connection.prepareStatement(ERASE)) {
                statement.setObject(1, event);
                statement.setString(2, name);
                return statement.executeUpdate() == 1;
            }
        });
    }

    static LedgerEvent event(ResultSet row) throws SQLException {
        return new LedgerEvent(
                row.getObject("id", UUID.class),
                row.getString("chain"),
                row.getInt("sequence"),
                row.getString("kind"),
                row.getString("bytes"),
                row.getString("predecessor"),
                row.getString("hash"));
    }

    private static void insert(Connection connection, List<EventDraft> drafts, List<LedgerEvent> events)
            throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(APPEND)) {
            statement.setArray(1, array(connection, "uuid", events, LedgerEvent::id));
            statement.setArray(2, array(connection, "text", events, LedgerEvent::chain));
            statement.setArray(3, array(connection, "int4", events, LedgerEvent::sequence));
            statement.setArray(4, array(connection, "text", events, LedgerEvent::kind));
            statement.setArray(5, array(connection, "text", drafts, draft -> CanonicalJson.time(draft.occurredAt())));
            statement.setArray(6, array(connection, "text", drafts, draft -> CanonicalJson.time(draft.enteredAt())));
            statement.setArray(7, array(connection, "text", drafts, draft -> CanonicalJson.time(draft.receivedAt())));
            statement.setArray(8, array(connection, "text", drafts, EventDraft::actor));
            statement.setArray(9, array(connection, "uuid", drafts, EventDraft::handOver));
            statement.setArray(10, array(connection, "text", events, LedgerEvent::bytes));
            statement.setArray(11, array(connection, "text", events, LedgerEvent::predecessor));
            statement.setArray(12, array(connection, "text", events, LedgerEvent::hash));
            statement.executeUpdate();
        }
    }

    private record Secret(UUID event, String name, Redacted redacted) {}

    private static void keepSecrets(Connection connection, List<EventDraft> drafts) throws SQLException {
        List<Secret> secrets = new ArrayList<>();
        drafts.forEach(draft ->
                draft.redacted().forEach((name, redacted) -> secrets.add(new Secret(draft.id(), name, redacted))));
        if (secrets.isEmpty()) {
            return;
        }
        Base64.Encoder base64 = Base64.getEncoder();
        try (PreparedStatement statement = connection.prepareStatement(KEEP_SECRETS)) {
            statement.setArray(1, array(connection, "uuid", secrets, Secret::event));
            statement.setArray(2, array(connection, "text", secrets, Secret::name));
            statement.setArray(
                    3,
                    array(
                            connection,
                            "text",
                            secrets,
                            one -> base64.encodeToString(one.redacted().salt())));
            statement.setArray(
                    4,
                    array(
                            connection,
                            "text",
                            secrets,
                            one -> base64.encodeToString(one.redacted().content())));
            statement.executeUpdate();
        }
    }

    static <T> Array array(Connection connection, String type, Collection<T> rows, Function<T, Object> column)
            throws SQLException {
        return connection.createArrayOf(type, rows.stream().map(column).toArray());
    }

    private <T> T onConnection(String what, Work<T> work) {
        return on(database, what, work);
    }

    static <T> T on(DataSource database, String what, Work<T> work) {
        try (Connection connection = database.getConnection()) {
            return work.on(connection);
        } catch (SQLException e) {
            throw new IllegalStateException("cannot " + what + ": " + e.getMessage(), e);
        }
    }

    /** Something done with a connection. */
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }
}
