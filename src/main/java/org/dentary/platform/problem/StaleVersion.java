package org.dentary.platform.problem;

import java.util.List;

/** The If-Match of the request is not today's version. */
public final class StaleVersion extends DomainException {
    public StaleVersion(String code, String message) {
        super(code, message, List.of());
    }

    public StaleVersion(String code, String message, List<FieldProblem> errors) {
        super(code, message, errors);
    }

    @Override
    public int status() {
        return 412;
    }

    @Override
    public String title() {
        return "Changed since you read it";
    }
}
