package org.dentary.platform.database;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import org.dentary.platform.Settings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Killing the service with its database running loses nothing that was acknowledged, and the next start works. */
class LeftBehindTest {
    /** What the killed service does: start, commit, say so, wait. */
    public static final class Victim {
        public static void main(String... arguments) throws SQLException, InterruptedException {
            Settings.External at = EmbeddedDatabase.start(Path.of(arguments[0]));
            try (Connection connection = DriverManager.getConnection(at.url(), at.owner(), at.ownerPassword());
                    Statement statement = connection.createStatement()) {
                statement.execute("create table acknowledged (n int)");
                statement.execute("insert into acknowledged select generate_series(1, 1000)");
            }
            System.out.println("committed");
            Thread.sleep(600_000);
        }
    }

    @Test
    void aSecondStartAfterAKillHasEverythingAcknowledged(@TempDir(cleanup = CleanupMode.NEVER) Path data)
            throws IOException, SQLException, InterruptedException {
        Process victim = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Victim.class.getName(),
                        data.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (BufferedReader said = new BufferedReader(new InputStreamReader(victim.getInputStream()))) {
            assertTrue(said.lines().anyMatch("committed"::equals), "the first service did not commit");
        }
        victim.destroyForcibly().waitFor();
        Map<String, String> settings = DatabaseStart.start(new Settings(
                data,
                8080,
                "127.0.0.1",
                java.util.Optional.empty(),
                false,
                java.util.Optional.empty(),
                java.util.Optional.empty()));
        try (Connection connection = DriverManager.getConnection(
                        settings.get("quarkus.flyway.jdbc-url"),
                        settings.get("quarkus.flyway.username"),
                        settings.get("quarkus.flyway.password"));
                Statement statement = connection.createStatement();
                var row = statement.executeQuery("select count(*) from acknowledged")) {
            row.next();
            assertEquals(1000, row.getInt(1));
        }
    }
}
