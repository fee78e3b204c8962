package org.dentary.platform.database;

import io.agroal.api.AgroalPoolInterceptor;
import io.quarkus.arc.Arc;
import jakarta.inject.Singleton;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.dentary.platform.account.CurrentAccount;
import org.postgresql.jdbc.PgConnection;

/**
 * Tells the database who is acting, on every connection taken from the pool, so that the trigger-written history names
 * the actor whatever statement changes a row.
 */
@Singleton
class ActorOnConnection implements AgroalPoolInterceptor {
    @Override
    public void onConnectionAcquire(Connection connection) {
        try {
            // Past the pool's wrapper, which refuses the commit that must come before the work's own transaction: only
            // a
            // transaction without an earlier statement can choose its isolation.
            Connection plain = connection.unwrap(PgConnection.class);
            try (PreparedStatement statement = plain.prepareStatement("select set_config('dentary.actor', ?, false)")) {
                statement.setString(1, actor());
                statement.execute();
            }
            if (!plain.getAutoCommit()) {
                plain.commit();
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the actor could not be set on the connection", e);
        }
    }

    private static String actor() {
        if (!Arc.container().requestContext().isActive()) {
            return "service";
        }
        return Arc.container()
                .instance(CurrentAccount.class)
                .get()
                .find()
                .map(account -> account.actor())
                .orElse("service");
    }
}
