package org.dentary.platform.database;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Map;
import org.dentary.platform.Settings;
import org.dentary.platform.StartupFault;

/** Makes a database ready and says how the service reaches it. */
public final class DatabaseStart {
    private DatabaseStart() {}

    /**
     * Starts or reaches the database.
     *
     * @return configuration keys and values: the service connects as the least-privileged role, migrations as the owner
     * @throws StartupFault if the database cannot be started or reached
     */
    public static Map<String, String> start(Settings settings) {
        Settings.External at = settings.external().orElseGet(() -> EmbeddedDatabase.start(settings.data()));
        reach(at.url(), at.owner(), at.ownerPassword());
        reach(at.url(), at.user(), at.userPassword());
        return Map.of(
                "quarkus.datasource.jdbc.url", at.url(),
                "quarkus.datasource.username", at.user(),
                "quarkus.datasource.password", at.userPassword(),
                "quarkus.flyway.jdbc-url", at.url(),
                "quarkus.flyway.username", at.owner(),
                "quarkus.flyway.password", at.ownerPassword(),
                "quarkus.flyway.placeholders.service", at.user());
    }

    private static void reach(String url, String user, String password) {
        try (Connection connection = DriverManager.getConnection(url, user, password)) {
            if (!connection.isValid(10)) {
                throw new StartupFault("The database at " + url + " does not answer as '" + user + "'");
            }
        } catch (SQLException e) {
            throw new StartupFault("The database at " + url + " cannot be reached as '" + user + "' ("
                    + e.getMessage().lines().findFirst().orElse("") + "); check DENTARY_DB_URL, role and password");
        }
    }
}
