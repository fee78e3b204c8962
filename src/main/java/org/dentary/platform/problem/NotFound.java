package org.dentary.platform.problem;

import java.util.List;

/** What was named does not exist, or this account may not know that it does. */
public final class NotFound extends DomainException {
    public NotFound(String code, String message) {
        super(code, message, List.of());
    }

    public NotFound(String code, String message, List<FieldProblem> errors) {
        super(code, message, errors);
    }

    @Override
    public int status() {
        return 404;
    }

    @Override
    public String title() {
        return "Not found";
    }
}
