package org.dentary.custody.desk;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;

/** Checks what a form became as strictly as the API checks a request. */
@ApplicationScoped
public class FormChecks {
    private final Validator validator;

    FormChecks(Validator validator) {
        this.validator = validator;
    }

    /** A refusal for a page: a broken rule in its own words, for its details name codes; else each field's fault. */
    public static Faults shown(DomainException refusal) {
        return refusal instanceof RuleBroken ? Faults.ofRule(refusal) : Faults.of(refusal);
    }

    /** @throws InvalidInput naming every field at fault */
    public <T> T checked(T command) {
        Set<ConstraintViolation<T>> violations = validator.validate(command);
        if (violations.isEmpty()) {
            return command;
        }
        List<FieldProblem> faults = violations.stream()
                .map(one -> new FieldProblem(one.getPropertyPath().toString(), "INVALID_VALUE", one.getMessage()))
                .sorted(Comparator.comparing(FieldProblem::field))
                .toList();
        throw InvalidInput.of(faults);
    }
}
