package org.dentary.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.Writer;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;

/** The checkpoints and their leaves in the database. */
@ApplicationScoped
class CheckpointQueries {

    /** Checkpoints are made one after another; writers of events never take this lock. */
    private static final String ONE_AT_A_TIME = "select pg_advisory_xact_lock(hashtext('dentary checkpoint'))";

    private static final String UNSEALED = """
            select e.id, e.hash from ledger_event e
             where not exists (select from checkpoint_leaf l where l.event = e.id)
             order by e.chain collate "C", e.sequence
            """;
    private static final String COUNT_UNSEALED = """
            select count(*) from ledger_event e where not exists (select from checkpoint_leaf l where l.event = e.id)
            """;
    private static final String CHECKPOINT = "select number, id, bytes, signature from checkpoint ";
    private static final String LAST = CHECKPOINT + "order by number desc limit 1";
    private static final String BY_ID = CHECKPOINT + "where id = ?";
    private static final String ALL = CHECKPOINT + "order by number";
    private static final String NEWEST = CHECKPOINT + "where number < ? order by number desc limit ?";
    private static final String OF_EVENT = """
            select c.number, c.bytes, c.signature, l.index from checkpoint_leaf l join checkpoint c on c.number = l.checkpoint
             where l.event = ?
            """;
    private static final String SEALS = """
            select l.event, l.checkpoint, l.index, l.hash, c.made_at from checkpoint_leaf l join checkpoint c on c.number = l.checkpoint
             where l.event = any(?)
            """;
    private static final String LEAVES = "select hash from checkpoint_leaf where checkpoint = ? order by index";
    private static final String KEEP = """
            insert into checkpoint (number, id, made_at, tree_size, root, previous, bytes, signature)
            values (?, ?, ?::timestamptz, ?, ?, ?, ?, ?)
            """;
    private static final String KEEP_LEAVES = """
            insert into checkpoint_leaf (checkpoint, index, event, hash)
            select ?, ? + row - 1, event, hash from unnest(?::uuid[], ?::text[]) with ordinality as leaf (event, hash, row)
            """;
    private static final String EXPORT = """
            select l.checkpoint, l.hash as leaf, e.bytes, e.hash from checkpoint_leaf l left join ledger_event e on e.id = l.event
             order by l.checkpoint, l.index
            """;
    private static final String SNAPSHOT = "set transaction isolation level repeatable read, read only";
    private static final int FETCHED = 1_000;
    private static final int LEAVES_A_STATEMENT = 10_000;

    private final DataSource database;

    CheckpointQueries(DataSource database) {
        this.database = database;
    }

    /** An event that no checkpoint seals yet. */
    record Unsealed(UUID event, String hash) {}

    /** The checkpoint that seals an event, and the event's place in it. */
    record Sealing(Checkpoint checkpoint, int index) {}

    /** Waits until no other checkpoint is being made; until the transaction ends none is but the caller's. */
    void oneAtATime(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(ONE_AT_A_TIME);
        }
    }

    /** All committed events without a checkpoint, in leaf order: by chain, then position. */
    List<Unsealed> unsealed(Connection connection) throws SQLException {
        List<Unsealed> events = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement(UNSEALED)) {
            statement.setFetchSize(FETCHED);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    events.add(new Unsealed(row.getObject(1, UUID.class), row.getString(2)));
                }
            }
        }
        return events;
    }

    long countUnsealed() {
        return LedgerStore.on(database, "count what is not sealed", connection -> {
            try (PreparedStatement statement = connection.prepareStatement(COUNT_UNSEALED);
                    ResultSet row = statement.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        });
    }

    Optional<Checkpoint> last(Connection connection) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(LAST)) {
            return first(statement);
        }
    }

    Optional<Checkpoint> byId(Connection connection, UUID id) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(BY_ID)) {
            statement.setObject(1, id);
            return first(statement);
        }
    }

    /** Checkpoints before a number, newest first. */
    List<Checkpoint> newest(long before, int count) {
        return LedgerStore.on(database, "read checkpoints", connection -> {
            List<Checkpoint> checkpoints = new ArrayList<>();
            try (PreparedStatement statement = connection.prepareStatement(NEWEST)) {
                statement.setLong(1, before);
                statement.setInt(2, count);
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        checkpoints.add(checkpoint(row));
                    }
                }
            }
            return checkpoints;
        });
    }

    void keep(Connection connection, Checkpoint checkpoint, List<Unsealed> events) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(KEEP)) {
            statement.setLong(1, checkpoint.number());
            statement.setObject(2, checkpoint.id());
            statement.setString(3, CanonicalJson.time(checkpoint.madeAt()));
            statement.setInt(4, checkpoint.treeSize());
            statement.setString(5, checkpoint.root());
            statement.setString(6, checkpoint.previous());
            statement.setString(7, checkpoint.bytes());
            statement.setString(8, checkpoint.signature());
            statement.executeUpdate();
        }
        try (PreparedStatement statement = connection.prepareStatement(KEEP_LEAVES)) {
            for (int from = 0; from < events.size(); from += LEAVES_A_STATEMENT) {
                List<Unsealed> part = events.subList(from, Math.min(from + LEAVES_A_STATEMENT, events.size()));
                statement.setLong(1, checkpoint.number());
                statement.setInt(2, from);
                statement.setArray(3, LedgerStore.array(connection, "uuid", part, Unsealed::event));
                statement.setArray(4, LedgerStore.array(connection, "text", part, Unsealed::hash));
                statement.executeUpdate();
            }
        }
    }

    Optional<Sealing> sealing(UUID event) {
        return LedgerStore.on(database, "read a checkpoint", connection -> {
            try (PreparedStatement statement = connection.prepareStatement(OF_EVENT)) {
                statement.setObject(1, event);
                try (ResultSet row = statement.executeQuery()) {
                    return row.next()
                            ? Optional.of(new Sealing(checkpoint(row), row.getInt("index")))
                            : Optional.empty();
                }
            }
        });
    }

    /** Where events lie under checkpoints, in one query; events without one are left out. */
    Map<UUID, Seal> seals(Collection<UUID> events) {
        return LedgerStore.on(database, "read where events lie", connection -> {
            Map<UUID, Seal> seals = new HashMap<>();
            try (PreparedStatement statement = connection.prepareStatement(SEALS)) {
                statement.setArray(1, LedgerStore.array(connection, "uuid", events, id -> id));
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        seals.put(
                                row.getObject(1, UUID.class),
                                new Seal(
                                        row.getLong(2),
                                        row.getInt(3),
                                        row.getString(4),
                                        row.getObject(5, OffsetDateTime.class).toInstant()));
                    }
                }
            }
            return seals;
        });
    }

    /** The hashes a checkpoint seals, in leaf order. */
    List<String> leaves(long number) {
        return LedgerStore.on(database, "read a checkpoint's leaves", connection -> {
            List<String> hashes = new ArrayList<>();
            try (PreparedStatement statement = connection.prepareStatement(LEAVES)) {
                statement.setLong(1, number);
                try (ResultSet row = statement.executeQuery()) {
                    while (row.next()) {
                        hashes.add(row.getString(1));
                    }
                }
            }
            return hashes;
        });
    }

    /** Writes every checkpoint behind its events, as of one moment, a thousand rows at a time. */
    void export(Writer out) throws IOException {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            try (Statement statement = connection.createStatement()) {
                statement.execute(SNAPSHOT);
            }
            try (PreparedStatement checkpoints = connection.prepareStatement(ALL);
                    PreparedStatement leaves = connection.prepareStatement(EXPORT)) {
                checkpoints.setFetchSize(FETCHED);
                leaves.setFetchSize(FETCHED);
                try (ResultSet checkpoint = checkpoints.executeQuery();
                        ResultSet leaf = leaves.executeQuery()) {
                    write(checkpoint, leaf, out);
                }
            } finally {
                connection.rollback();
            }
        } catch (SQLException e) {
            throw new IllegalStateException("cannot export the ledger: " + e.getMessage(), e);
        }
        out.flush();
    }

    private static void write(ResultSet checkpoint, ResultSet leaf, Writer out) throws SQLException, IOException {
        boolean more = leaf.next();
        while (checkpoint.next()) {
            Checkpoint current = checkpoint(checkpoint);
            List<String> hashes = new ArrayList<>();
            while (more && leaf.getLong("checkpoint") == current.number()) {
                hashes.add(leaf.getString("leaf"));
                // An event that is gone has no line; the leaf that stays behind names it.
                if (leaf.getString("bytes") != null) {
                    out.write(ExportLines.event(leaf.getString("bytes"), leaf.getString("hash")));
                    out.write('\n');
                }
                more = leaf.next();
            }
            out.write(ExportLines.checkpoint(current, hashes));
            out.write('\n');
        }
    }

    private static Optional<Checkpoint> first(PreparedStatement statement) throws SQLException {
        try (ResultSet row = statement.executeQuery()) {
            return row.next() ? Optional.of(checkpoint(row)) : Optional.empty();
        }
    }

    private static Checkpoint checkpoint(ResultSet row) throws SQLException {
        return Checkpoint.parse(row.getString("bytes"), row.getString("signature"));
    }
}
