package org.dentary.platform.problem;

import org.hibernate.exception.ConstraintViolationException;

/** Turns a constraint of the database into the refusal that a person can act on, by the constraint's name. */
final class ConstraintProblems {
    private ConstraintProblems() {}

    /** The refusal for a broken constraint; constraints are named {@code table_what}. */
    static DomainException of(ConstraintViolationException fault) {
        String name = fault.getConstraintName() == null ? "unnamed" : fault.getConstraintName();
        String words = name.replace('_', ' ');
        return new RuleBroken(
                "CONFLICTS_WITH_RECORDS",
                "What was sent conflicts with what is recorded (" + words + "); read the present state and try again");
    }
}
