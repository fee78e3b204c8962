package org.dentary.platform.problem;

import java.util.List;

/** The request was understood but a value is missing, malformed or impossible. */
public final class InvalidInput extends DomainException {
    public InvalidInput(String code, String message) {
        super(code, message, List.of());
    }

    public InvalidInput(String code, String message, List<FieldProblem> errors) {
        super(code, message, errors);
    }

    /** One field at fault. */
    public static InvalidInput field(String field, String rule, String message) {
        return new InvalidInput(rule, message, List.of(new FieldProblem(field, rule, message)));
    }

    /** Several faults at once, so that all can be mended in one go; never empty. */
    public static InvalidInput of(List<FieldProblem> errors) {
        return new InvalidInput(errors.get(0).rule(), errors.get(0).message(), errors);
    }

    @Override
    public int status() {
        return 422;
    }

    @Override
    public String title() {
        return "Not accepted as given";
    }
}
