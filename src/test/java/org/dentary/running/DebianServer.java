package org.dentary.running;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A PostgreSQL server of Debian's package in a cluster of its own, on loopback, gone afterwards. */
final class DebianServer implements AutoCloseable {
    private static final String SUPERUSER = "cluster_owner";
    private static final String PASSWORD = "of the cluster only";

    final int port;
    private final Path programs;
    private final Path folder;

    private DebianServer(Path programs, Path folder, int port) {
        this.programs = programs;
        this.folder = folder;
        this.port = port;
    }

    static DebianServer start() throws Exception {
        Path programs;
        try (Stream<Path> versions = Files.list(Path.of("/usr/lib/postgresql"))) {
            programs = versions.map(version -> version.resolve("bin"))
                    .filter(bin -> Files.exists(bin.resolve("initdb")))
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
        }
        // A server refuses to run as root; Debian's package brings the account postgres.
        Path folder = Path.of(run(asServer(), "mktemp", "-d", "-t", "dentary-cluster-XXXXXX"));
        DebianServer server = new DebianServer(programs, folder, PackagedService.freePort());
        run(asServer(), "bash", "-c", "echo '" + PASSWORD + "' > " + folder.resolve("password"));
        run(
                asServer(),
                programs.resolve("initdb").toString(),
                "-D",
                folder.resolve("data").toString(),
                "-U",
                SUPERUSER,
                "--auth=scram-sha-256",
                "--pwfile=" + folder.resolve("password"),
                "--encoding=UTF8",
                "--no-locale");
        run(
                asServer(),
                programs.resolve("pg_ctl").toString(),
                "-D",
                folder.resolve("data").toString(),
                "-w",
                "-l",
                folder.resolve("log").toString(),
                "-o",
                "-p " + server.port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories=" + folder
                        + " -c shared_preload_libraries=pg_stat_statements",
                "start");
        return server;
    }

    /** Runs statements as the cluster's superuser, each on its own. */
    void execute(String database, List<String> statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url(database), SUPERUSER, PASSWORD);
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    /** First column of the first row, as the cluster's superuser. */
    String ask(String database, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url(database), SUPERUSER, PASSWORD);
                Statement statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }

    String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    private static List<String> asServer() {
        return System.getProperty("user.name").equals("root") ? List.of("runuser", "-u", "postgres", "--") : List.of();
    }

    private static String run(List<String> before, String... command) throws IOException, InterruptedException {
        List<String> whole = new ArrayList<>(before);
        whole.addAll(List.of(command));
        // Into a file: a started server keeps its output open, and a pipe would never end.
        Path said = Files.createTempFile("dentary", ".said");
        Process process = new ProcessBuilder(whole)
                .directory(Path.of("/").toFile())
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        int exit = process.waitFor();
        String words = Files.readString(said).strip();
        Files.delete(said);
        if (exit != 0) {
            throw new IllegalStateException(whole + " ended with " + exit + ": " + words);
        }
        return words;
    }

    @Override
    public void close() throws Exception {
        run(
                asServer(),
                programs.resolve("pg_ctl").toString(),
                "-D",
                folder.resolve("data").toString(),
                "-m",
                "immediate",
                "-w",
                "stop");
        run(asServer(), "rm", "-r", folder.toString());
    }
}
