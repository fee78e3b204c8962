package org.dentary.platform.account;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** A signed-in browser or program; only the SHA-256 of its random token is kept. */
@Entity
@Table(name = "session")
class SessionEntity {
    @Id
    @Column(name = "token_hash")
    private String tokenHash;

    private String username;

    @Column(name = "created_at")
    private Instant createdAt;

    @Column(name = "expires_at")
    private Instant expiresAt;

    @Column(name = "ended_at")
    private Instant endedAt;

    protected SessionEntity() {}

    SessionEntity(String tokenHash, String username, Instant createdAt, Instant expiresAt) {
        this.tokenHash = tokenHash;
        this.username = username;
        this.createdAt = createdAt;
        this.expiresAt = expiresAt;
    }

    void end(Instant at) {
        if (endedAt == null) {
            endedAt = at;
        }
    }
}
