package org.dentary.platform.problem;

import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.util.Arrays;
import java.util.Collection;
import java.util.stream.Collectors;

/** Faults of a JSON body in words. */
final class JsonProblems {
    private JsonProblems() {}

    /** Whether nothing at all was sent. */
    static boolean isEmptyBody(MismatchedInputException fault) {
        return fault.getOriginalMessage() != null && fault.getOriginalMessage().startsWith("No content");
    }

    /** Where in the body the fault lies, such as {@code specimens[0].code}; empty for the body itself. */
    static String path(JsonMappingException fault) {
        StringBuilder path = new StringBuilder();
        for (JsonMappingException.Reference reference : fault.getPath()) {
            if (reference.getFieldName() == null) {
                path.append('[').append(reference.getIndex()).append(']');
            } else {
                path.append(path.length() == 0 ? "" : ".").append(reference.getFieldName());
            }
        }
        return path.toString();
    }

    /** What was given and what is allowed. */
    static String explain(MismatchedInputException fault) {
        if (fault instanceof UnrecognizedPropertyException unknown) {
            Collection<Object> known = unknown.getKnownPropertyIds();
            String allowed = known == null
                    ? ""
                    : "; allowed: "
                            + known.stream().map(Object::toString).sorted().collect(Collectors.joining(", "));
            return "'" + unknown.getPropertyName() + "' is not a field of this request" + allowed;
        }
        Class<?> target = fault.getTargetType();
        String given =
                fault instanceof InvalidFormatException invalid ? "'" + invalid.getValue() + "' is not" : "is not";
        if (target != null && target.isEnum()) {
            return given + " one of the allowed values: "
                    + Arrays.stream(target.getEnumConstants())
                            .map(Object::toString)
                            .collect(Collectors.joining(", "));
        }
        return given + " " + kind(target);
    }

    private static String kind(Class<?> target) {
        if (target == null) {
            return "of the form expected";
        }
        return switch (target.getSimpleName()) {
            case "Integer", "int", "Long", "long" -> "a whole number";
            case "Double", "double", "BigDecimal" -> "a number";
            case "Boolean", "boolean" -> "true or false";
            case "UUID" -> "a UUID such as 5f0c4a9e-6f0e-4f7e-9b8e-2a6d6d3c1f10";
            case "LocalDate" -> "a date such as 2026-11-14";
            case "OffsetDateTime", "Instant" -> "a time with offset such as 2026-11-14T07:30:00-06:00";
            case "String" -> "text";
            case "List", "ArrayList", "Set" -> "a list";
            default -> "of the form expected";
        };
    }
}
