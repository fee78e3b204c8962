package org.dentary.platform.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * An RFC 9457 problem.
 *
 * @param type address of a page that explains the code
 * @param title short title of the kind
 * @param status HTTP status
 * @param detail what was given, what is allowed, what to do
 * @param instance the request's path
 * @param code the rule's stable name
 * @param errors faults by field, never empty; one without a field where the whole request is at fault
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Problem(
        String type, String title, int status, String detail, String instance, String code, List<FieldProblem> errors) {
    public static final String MEDIA_TYPE = "application/problem+json";

    /** A problem whose type is this service's own page about the code; what names no field is told of the whole. */
    public static Problem of(
            int status, String code, String title, String detail, String instance, List<FieldProblem> errors) {
        List<FieldProblem> told = errors.isEmpty() ? List.of(new FieldProblem(header(status), code, detail)) : errors;
        return new Problem("/problems/" + code, title, status, detail, instance, code, told);
    }

    /** The faults of fields, and what the detail does not tell word for word. */
    public List<FieldProblem> beside() {
        return errors.stream()
                .filter(error -> !error.field().isEmpty() || !error.message().equals(detail))
                .toList();
    }

    /** The header of the request that such an answer is about, or empty. */
    private static String header(int status) {
        return switch (status) {
            case 401 -> "Authorization";
            case 406 -> "Accept";
            case 412 -> "If-Match";
            case 415 -> "Content-Type";
            default -> "";
        };
    }
}
