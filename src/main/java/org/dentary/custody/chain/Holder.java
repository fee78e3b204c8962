package org.dentary.custody.chain;

/**
 * Who has custody: one at a time.
 *
 * @param kind {@code PERSON}, {@code PARTY} or {@code STORE}
 * @param code the person's, organisation's or store's code; of a carrier without a code, its name
 */
public record Holder(String kind, String code) {
    static final String PERSON = "PERSON";
    public static final String PARTY = "PARTY";
    public static final String STORE = "STORE";

    /** Custodian of what a carrier has that is no organisation of the plan; its name stands beside the event. */
    public static final String CARRIER = "CARRIER";

    /** The person or account of that opaque id. */
    public static Holder person(String actor) {
        return new Holder(PERSON, actor);
    }

    boolean isPerson(String actor) {
        return kind.equals(PERSON) && code.equals(actor);
    }
}
