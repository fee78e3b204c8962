package org.dentary.platform.problem;

import java.util.List;

/** A refusal that the caller can understand: a code, a sentence, and where known the fields at fault. */
public abstract sealed class DomainException extends RuntimeException
        permits NotFound, RuleBroken, StaleVersion, InvalidInput, NotAllowed {
    private final String code;
    private final List<FieldProblem> errors;

    DomainException(String code, String message, List<FieldProblem> errors) {
        super(message, null, false, false);
        this.code = code;
        this.errors = List.copyOf(errors);
    }

    /** The rule's stable name in UPPER_SNAKE, such as {@code LABEL_UNKNOWN} or {@code J05}. */
    public String code() {
        return code;
    }

    /** The fields at fault, in the order found; empty when the whole request is. */
    public List<FieldProblem> errors() {
        return errors;
    }

    /** The HTTP status of this kind of refusal. */
    public abstract int status();

    /** A short title of this kind of refusal. */
    public abstract String title();
}
