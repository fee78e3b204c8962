package org.dentary.platform.account;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;

/** An account in the database. */
@Entity
@Table(name = "account")
class AccountEntity {
    @Id
    private String username;

    private String person;
    private String role;
    private String[] stations;

    @Column(name = "password_hash")
    private String passwordHash;

    private boolean active;

    @Version
    private int version;

    protected AccountEntity() {}

    AccountEntity(String username) {
        this.username = username;
    }

    void become(String person, Role role, String[] stations) {
        this.person = person;
        this.role = role.name();
        this.stations = stations;
        this.active = true;
    }

    void setPassword(String hash) {
        this.passwordHash = hash;
    }

    void close() {
        this.active = false;
    }
}
