package org.dentary.people;

/**
 * Who holds a sample.
 *
 * @param code roster code (or the sign-in name of a shared device), party, laboratory or store code
 */
public record Custodian(Kind kind, String code, String name) {
    /** A person, an organisation (laboratories among them) or a locked place. */
    public enum Kind {
        PERSON,
        PARTY,
        STORE
    }
}
