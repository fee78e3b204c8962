package org.dentary.platform.page;

import io.quarkus.qute.TemplateData;
import jakarta.validation.ConstraintViolation;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;

/**
 * What was wrong with a form, for the page that shows it again.
 *
 * @param all every fault in the order found; a fault of no field has an empty field name
 */
@TemplateData
public record Faults(List<FieldProblem> all) {
    /** Nothing wrong. */
    public static final Faults NONE = new Faults(List.of());

    public Faults {
        all = List.copyOf(all);
    }

    /** The faults of a refusal: its fields', or the refusal itself where it names none. */
    public static Faults of(DomainException refusal) {
        return refusal.errors().isEmpty()
                ? new Faults(List.of(new FieldProblem("", refusal.code(), refusal.getMessage())))
                : new Faults(refusal.errors());
    }

    /** The refusal itself, for rules whose details name things rather than fields of the form. */
    public static Faults ofRule(DomainException refusal) {
        return new Faults(List.of(new FieldProblem("", refusal.code(), refusal.getMessage())));
    }

    /** All that was wrong in words, where its fields are no fields of the form. */
    public static Faults ofWords(DomainException refusal) {
        return new Faults(of(refusal).all().stream()
                .map(fault -> new FieldProblem("", fault.rule(), fault.message()))
                .toList());
    }

    /** The faults that Bean Validation found in a form record, by field name. */
    public static Faults of(Collection<? extends ConstraintViolation<?>> violations) {
        return new Faults(violations.stream()
                .map(v -> new FieldProblem(v.getPropertyPath().toString(), "INVALID_VALUE", v.getMessage()))
                .sorted(Comparator.comparing(FieldProblem::field))
                .toList());
    }

    public boolean isAny() {
        return !all.isEmpty();
    }

    /** What to say beside a field, or null where nothing is wrong with it. */
    public String on(String field) {
        return all.stream()
                .filter(fault -> fault.field().equals(field))
                .map(FieldProblem::message)
                .findFirst()
                .orElse(null);
    }
}
