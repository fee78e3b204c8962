package org.dentary.platform.problem;

/**
 * One fault in one field.
 *
 * @param field path in the request, such as {@code thirdTooth.cusps} or {@code specimens[1].code}
 * @param rule stable name of the rule, such as {@code REQUIRED}
 * @param message what was given, what is allowed, what to do
 */
public record FieldProblem(String field, String rule, String message) {}
