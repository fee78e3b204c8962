package org.dentary.platform.problem;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.constraints.AssertTrue;

/**
 * One fault in one field.
 *
 * @param field path in the request, such as {@code thirdTooth.cusps} or {@code specimens[1].code}
 * @param rule stable name of the rule, such as {@code REQUIRED}
 * @param message what was given, what is allowed, what to do
 */
public record FieldProblem(String field, String rule, String message) {
    /** What a constraint of Bean Validation says, without the name of the method that was called. */
    static FieldProblem of(ConstraintViolation<?> violation) {
        String path = violation.getPropertyPath().toString();
        int method = path.indexOf('.');
        String afterMethod = method < 0 ? path : path.substring(method + 1);
        String head = afterMethod.split("[.\\[]", 2)[0];
        boolean bodyParameter = violation.getLeafBean() != null
                && !violation.getLeafBean().equals(violation.getRootBean())
                && afterMethod.contains(".");
        String field = bodyParameter ? afterMethod.substring(head.length() + 1) : afterMethod;
        boolean missing = violation.getInvalidValue() == null;
        if (missing && !bodyParameter) {
            return new FieldProblem("", "REQUIRED", "null was sent; send the object that this route takes");
        }
        if (violation.getConstraintDescriptor().getAnnotation() instanceof AssertTrue) {
            // A rule over several fields lies at what holds them; its own name is nobody's field.
            field = field.substring(0, Math.max(0, field.lastIndexOf('.')));
        }
        return new FieldProblem(field, missing ? "REQUIRED" : "INVALID_VALUE", violation.getMessage());
    }
}
