package org.dentary.platform.database;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

/** The two roles, durability, append-only tables and the history that no statement escapes. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class DatabaseRolesTest {
    @Inject
    EntityManager entities;

    @Inject
    AccountService accounts;

    @Inject
    Snapshot snapshot;

    @ConfigProperty(name = "quarkus.datasource.jdbc.url")
    String url;

    @ConfigProperty(name = "quarkus.datasource.username")
    String user;

    @ConfigProperty(name = "quarkus.datasource.password")
    String password;

    @ConfigProperty(name = "quarkus.flyway.username")
    String owner;

    @ConfigProperty(name = "quarkus.flyway.password")
    String ownerPassword;

    @Test
    void theEmbeddedServerIsDurableAndAsksForPasswords() throws SQLException {
        for (String setting : List.of("fsync", "synchronous_commit", "full_page_writes")) {
            assertEquals("on", one("show " + setting), setting);
        }
        assertThrows(
                SQLException.class,
                () -> DriverManager.getConnection(url, user, "wrong").close());
    }

    @Test
    void appendOnlyTablesRefuseTheServiceAndTheOwner() throws SQLException {
        List<String> tables;
        try (Connection connection = DriverManager.getConnection(url, owner, ownerPassword);
                Statement statement = connection.createStatement()) {
            tables = new java.util.ArrayList<>();
            try (var rows = statement.executeQuery("select distinct event_object_table from information_schema.triggers"
                    + " where trigger_name like '%\\_append\\_only' and event_object_schema = 'public'")) {
                while (rows.next()) {
                    tables.add(rows.getString(1));
                }
            }
        }
        assertTrue(tables.containsAll(List.of(
                "jaw_reading",
                "designated_age",
                "finding",
                "release",
                "ledger_event",
                "re_attribution",
                "identity_exception",
                "identity_exception_decision")));
        for (String table : tables) {
            refused(user, password, "update " + table + " set " + column(table) + " = " + column(table));
            refused(user, password, "delete from " + table);
            refused(user, password, "truncate " + table + " cascade");
            refused(owner, ownerPassword, "truncate " + table + " cascade");
        }
        refused(user, password, "create table mine (a int)");
        refused(
                user,
                password,
                "insert into history (table_name, key, old, actor, at) values ('a', 'b', '{}', 'c', now())");
    }

    private String column(String table) throws SQLException {
        return one("select column_name from information_schema.columns where is_identity = 'NO' and table_name = '"
                + table + "' and table_schema = 'public' order by ordinal_position limit 1");
    }

    private void refused(String who, String secret, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, who, secret);
                Statement statement = connection.createStatement()) {
            SQLException fault = assertThrows(SQLException.class, () -> statement.execute(sql), who + ": " + sql);
            assertEquals("42501", fault.getSQLState(), who + ": " + sql + ": " + fault.getMessage());
        }
    }

    @Test
    void aSetBasedChangeLeavesItsHistoryWithTheActor() {
        accounts.put("history-test", null, Role.AUDITOR, List.of(), "first");
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "update account set active = false where username like 'history-te%'")
                        .executeUpdate());
        Object[] row = (Object[]) entities.createNativeQuery(
                        "select old ->> 'active', actor from history where table_name = 'account' and key = 'history-test'"
                                + " order by id desc limit 1")
                .getSingleResult();
        assertEquals("true", row[0]);
        assertEquals("service", row[1]);
    }

    @Test
    void aSnapshotReadsOnlyAndSeesOneMoment() {
        assertThrows(
                RuntimeException.class,
                () -> snapshot.read(() -> entities.createNativeQuery("update account set active = active")
                        .executeUpdate()));
        snapshot.read(() -> {
            long before = count();
            QuarkusTransaction.requiringNew()
                    .run(() -> accounts.put("snapshot-" + System.nanoTime(), null, Role.AUDITOR, List.of(), "x"));
            return assertSame(before);
        });
    }

    private Void assertSame(long before) {
        assertEquals(before, count());
        return null;
    }

    private long count() {
        return ((Number) entities.createNativeQuery("select count(*) from account")
                        .getSingleResult())
                .longValue();
    }

    private String one(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, owner, ownerPassword);
                Statement statement = connection.createStatement();
                var row = statement.executeQuery(sql)) {
            row.next();
            return row.getString(1);
        }
    }
}
