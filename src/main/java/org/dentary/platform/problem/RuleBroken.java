package org.dentary.platform.problem;

import java.util.List;

/** The request is well formed but the state found does not allow it; the message names that state. */
public final class RuleBroken extends DomainException {
    public RuleBroken(String code, String message) {
        super(code, message, List.of());
    }

    public RuleBroken(String code, String message, List<FieldProblem> errors) {
        super(code, message, errors);
    }

    @Override
    public int status() {
        return 409;
    }

    @Override
    public String title() {
        return "Conflicts with what is recorded";
    }
}
