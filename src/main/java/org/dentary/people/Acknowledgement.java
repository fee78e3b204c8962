package org.dentary.people;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** The protocol was shown to an account, which acknowledged it. */
@Entity
@Table(name = "protocol_acknowledgement")
@IdClass(Acknowledgement.Key.class)
class Acknowledgement {
    @Id
    private String account;

    @Id
    @Column(name = "protocol_version")
    private String protocolVersion;

    private Instant at;

    protected Acknowledgement() {}

    Acknowledgement(String account, String protocolVersion, Instant at) {
        this.account = account;
        this.protocolVersion = protocolVersion;
        this.at = at;
    }

    /** Which account, which edition. */
    record Key(String account, String protocolVersion) implements Serializable {}
}
