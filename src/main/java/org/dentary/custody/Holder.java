package org.dentary.custody;

/**
 * Who has custody: one at a time.
 *
 * @param kind {@code PERSON}, {@code PARTY} or {@code STORE}
 * @param code the person's, organisation's or store's code; of a carrier without a code, its name
 */
public record Holder(String kind, String code) {
    static final String PERSON = "PERSON";
    static final String PARTY = "PARTY";
    static final String STORE = "STORE";

    static Holder person(String actor) {
        return new Holder(PERSON, actor);
    }

    boolean isPerson(String actor) {
        return kind.equals(PERSON) && code.equals(actor);
    }
}
