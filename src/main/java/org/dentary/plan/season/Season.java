package org.dentary.plan.season;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;

/** A season whose state changes; its name and days are written by set-up files. */
@Entity
@Table(name = "season")
class Season {
    static final String DRAFT = "DRAFT";
    static final String OPEN = "OPEN";
    static final String CLOSED = "CLOSED";

    @Id
    private String code;

    private String state;

    @Version
    private int version;

    protected Season() {}

    boolean isIn(String other) {
        return state.equals(other);
    }

    void become(String other) {
        this.state = other;
    }
}
