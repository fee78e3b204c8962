package org.dentary.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Reads accounts and sessions by one key each. */
@ApplicationScoped
class AccountQueries {
    private static final String BY_NAME = """
            select username, person, role, array_to_string(stations, ','), password_hash
              from account where username = :username and active
            """;
    private static final String BY_TOKEN = """
            select a.username, a.person, a.role, array_to_string(a.stations, ','), a.password_hash
              from session s join account a using (username)
             where s.token_hash = :hash and s.ended_at is null and s.expires_at > :now and a.active
            """;
    private static final String ALL = """
            select username, person, role, array_to_string(stations, ','), '' from account where active order by username
            """;

    private final EntityManager entities;

    AccountQueries(EntityManager entities) {
        this.entities = entities;
    }

    @ActivateRequestContext
    Optional<AccountRow> byName(String username) {
        return rows(entities.createNativeQuery(BY_NAME, AccountRow.class).setParameter("username", username));
    }

    @ActivateRequestContext
    Optional<AccountRow> byToken(String hash, Instant now) {
        return rows(entities.createNativeQuery(BY_TOKEN, AccountRow.class)
                .setParameter("hash", hash)
                .setParameter("now", now));
    }

    @SuppressWarnings("unchecked")
    List<AccountRow> all() {
        return entities.createNativeQuery(ALL, AccountRow.class).getResultList();
    }

    @SuppressWarnings("unchecked")
    private static Optional<AccountRow> rows(jakarta.persistence.Query query) {
        return ((List<AccountRow>) query.getResultList()).stream().findFirst();
    }
}
