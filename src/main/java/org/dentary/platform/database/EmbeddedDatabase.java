package org.dentary.platform.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import org.dentary.platform.Settings;
import org.dentary.platform.StartupFault;

/**
 * PostgreSQL inside the service's own folder: durable, reached by password only, stopped with the service. A server left
 * behind by a killed service is stopped before a new one starts; its committed work is kept by the write-ahead log.
 */
final class EmbeddedDatabase {
    static final String OWNER = "dentary_owner";
    static final String SERVICE = "dentary_service";
    private static final String HBA = """
            # Written by Dentary: every connection gives a password.
            local all all scram-sha-256
            host all all 127.0.0.1/32 scram-sha-256
            host all all ::1/128 scram-sha-256
            """;

    private EmbeddedDatabase() {}

    static Settings.External start(Path data) {
        Path cluster = data.resolve("postgresql");
        try {
            stopLeftBehind(cluster);
            boolean fresh = !Files.exists(data.resolve("database-passwords"));
            Properties passwords = passwords(data.resolve("database-passwords"));
            EmbeddedPostgres server = boot(data, cluster, passwords.getProperty("postgres"));
            String admin = "jdbc:postgresql://127.0.0.1:" + server.getPort() + "/postgres";
            if (fresh || !databaseExists(admin, passwords)) {
                prepare(admin, passwords, cluster);
            }
            return new Settings.External(
                    "jdbc:postgresql://127.0.0.1:" + server.getPort() + "/dentary",
                    OWNER,
                    passwords.getProperty(OWNER),
                    SERVICE,
                    passwords.getProperty(SERVICE));
        } catch (IOException | SQLException | IllegalStateException e) {
            throw new StartupFault(
                    "The embedded database in " + cluster + " does not start (" + firstLine(e) + "); see "
                            + data.resolve("postgresql.log"),
                    e);
        }
    }

    private static EmbeddedPostgres boot(Path data, Path cluster, String password) throws IOException {
        Path log = data.resolve("postgresql.log");
        return EmbeddedPostgres.builder()
                .setDataDirectory(cluster)
                .setCleanDataDirectory(false)
                .setOverrideWorkingDirectory(Files.createDirectories(data.resolve("postgresql-binaries"))
                        .toFile())
                .setPGStartupWait(Duration.ofSeconds(60))
                .setConnectConfig("password", password)
                .setLocaleConfig("locale", "C.UTF-8")
                .setLocaleConfig("encoding", "UTF8")
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("full_page_writes", "on")
                .setServerConfig("listen_addresses", "127.0.0.1")
                .setServerConfig("unix_socket_directories", "")
                .setServerConfig("password_encryption", "scram-sha-256")
                .setServerConfig("max_connections", "120")
                .setServerConfig("shared_buffers", "256MB")
                // A first day's tables grow from nothing: plans made for empty tables must not outlive the first
                // minute.
                .setServerConfig("autovacuum_naptime", "3s")
                .setOutputRedirector(ProcessBuilder.Redirect.appendTo(log.toFile()))
                .setErrorRedirector(ProcessBuilder.Redirect.appendTo(log.toFile()))
                .start();
    }

    private static boolean databaseExists(String admin, Properties passwords) throws SQLException {
        try (Connection connection = DriverManager.getConnection(admin, "postgres", passwords.getProperty("postgres"));
                Statement statement = connection.createStatement();
                var found = statement.executeQuery("select 1 from pg_database where datname = 'dentary'")) {
            return found.next();
        }
    }

    private static void prepare(String admin, Properties passwords, Path cluster) throws SQLException, IOException {
        try (Connection connection = DriverManager.getConnection(admin, "postgres", passwords.getProperty("postgres"));
                Statement statement = connection.createStatement()) {
            statement.execute("alter role postgres password '" + passwords.getProperty("postgres") + "'");
            for (String role : new String[] {OWNER, SERVICE}) {
                try (var found = statement.executeQuery("select 1 from pg_roles where rolname = '" + role + "'")) {
                    boolean exists = found.next();
                    statement.execute((exists ? "alter" : "create") + " role " + role + " login password '"
                            + passwords.getProperty(role) + "'");
                }
            }
            Files.writeString(cluster.resolve("pg_hba.conf"), HBA);
            statement.execute("select pg_reload_conf()");
            statement.execute("create database dentary owner " + OWNER + " encoding 'UTF8' template template0");
            statement.execute("revoke all on database dentary from public");
            statement.execute("grant connect, temporary on database dentary to " + SERVICE);
        }
    }

    /** Passwords made at the first start, readable by this user alone. */
    private static Properties passwords(Path file) throws IOException {
        Properties passwords = new Properties();
        if (Files.exists(file)) {
            try (var in = Files.newBufferedReader(file)) {
                passwords.load(in);
            }
            return passwords;
        }
        SecureRandom random = new SecureRandom();
        for (String role : new String[] {"postgres", OWNER, SERVICE}) {
            byte[] bytes = new byte[24];
            random.nextBytes(bytes);
            passwords.setProperty(role, HexFormat.of().formatHex(bytes));
        }
        Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        try (var out = Files.newBufferedWriter(file)) {
            passwords.store(out, "Made at the first start");
        }
        return passwords;
    }

    private static void stopLeftBehind(Path cluster) throws IOException {
        Path pidFile = cluster.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return;
        }
        long pid = Long.parseLong(Files.readAllLines(pidFile).get(0).trim());
        Optional<ProcessHandle> left = ProcessHandle.of(pid).filter(EmbeddedDatabase::isPostgres);
        if (left.isEmpty()) {
            Files.delete(pidFile);
            return;
        }
        signalFastShutdown(pid);
        try {
            left.get().onExit().get(60, TimeUnit.SECONDS);
        } catch (InterruptedException
                | java.util.concurrent.ExecutionException
                | java.util.concurrent.TimeoutException e) {
            throw new IOException("a server left behind (process " + pid + ") did not stop within 60 s", e);
        }
    }

    private static boolean isPostgres(ProcessHandle process) {
        return process.info().command().map(c -> c.endsWith("postgres")).orElse(false);
    }

    private static void signalFastShutdown(long pid) throws IOException {
        try {
            new ProcessBuilder("kill", "-INT", Long.toString(pid)).start().waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static String firstLine(Exception e) {
        return String.valueOf(e.getMessage()).lines().findFirst().orElse(e.toString());
    }
}
