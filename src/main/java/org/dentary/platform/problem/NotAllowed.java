package org.dentary.platform.problem;

import java.util.List;

/** This account may not do this. */
public final class NotAllowed extends DomainException {
    public NotAllowed(String code, String message) {
        super(code, message, List.of());
    }

    public NotAllowed(String code, String message, List<FieldProblem> errors) {
        super(code, message, errors);
    }

    @Override
    public int status() {
        return 403;
    }

    @Override
    public String title() {
        return "Not allowed";
    }
}
