package org.dentary.statistics;

/** A number lies outside what the function is defined for; the message says what was given and what is allowed. */
public final class OutOfDomain extends RuntimeException {

    private final String field;
    private final String given;
    private final String reason;

    /**
     * @param field name of the input, as the caller knows it: {@code detected}, {@code strata[2].weight}
     * @param given the value given, as text
     * @param reason what is allowed, as a sentence without its final stop: {@code must not exceed tested (20)}
     */
    public OutOfDomain(String field, Object given, String reason) {
        super(field + " = " + given + ": " + reason);
        this.field = field;
        this.given = String.valueOf(given);
        this.reason = reason;
    }

    public String field() {
        return field;
    }

    public String given() {
        return given;
    }

    public String reason() {
        return reason;
    }
}
