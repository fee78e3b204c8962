package org.dentary.custody.desk;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;

/** Checks what a form became as strictly as the API checks a request. */
@ApplicationScoped
public class FormChecks {
    private static final Pattern UTC = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d(\\.\\d+)?)?Z");
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm:ss z", Locale.US);

    private final Validator validator;

    FormChecks(Validator validator) {
        this.validator = validator;
    }

    /**
     * A refusal for a page: a broken rule in its own words, for its details name codes; else each field's fault. Moments
     * are told on the clock of a time zone, to the second, for the API tells them in UTC.
     */
    public static Faults shown(DomainException refusal, String zone) {
        Faults faults = refusal instanceof RuleBroken ? Faults.ofRule(refusal) : Faults.of(refusal);
        return new Faults(faults.all().stream()
                .map(fault -> new FieldProblem(fault.field(), fault.rule(), local(fault.message(), ZoneId.of(zone))))
                .toList());
    }

    private static String local(String message, ZoneId zone) {
        String moments =
                UTC.matcher(message).replaceAll(found -> MOMENT.withZone(zone).format(Instant.parse(found.group())));
        return moments.replace("occurredAt ", "the time given, ").replace("enteredAt ", "the time of entry, ");
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
