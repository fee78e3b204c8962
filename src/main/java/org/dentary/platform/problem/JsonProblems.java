package org.dentary.platform.problem;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.InputCoercionException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.InvalidNullException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.io.IOException;
import java.util.Arrays;
import java.util.Collection;
import java.util.stream.Collectors;

/** Faults of a JSON body in words. */
final class JsonProblems {
    private static final int LONGEST_SHOWN = 80;

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

    /** Whether lists or objects lie within each other deeper than is read; else something is longer than is read. */
    static boolean isTooDeep(JsonProcessingException fault) {
        return String.valueOf(fault.getMessage()).contains("nesting depth");
    }

    /** What was given and what is allowed. */
    static String explain(JsonMappingException fault) {
        if (fault instanceof UnrecognizedPropertyException unknown) {
            Collection<Object> known = unknown.getKnownPropertyIds();
            String allowed = known == null
                    ? ""
                    : "; allowed: "
                            + known.stream().map(Object::toString).sorted().collect(Collectors.joining(", "));
            return "'" + shown(unknown.getPropertyName()) + "' is not a field of this request" + allowed;
        }
        if (fault instanceof InvalidNullException) {
            return "null is not an entry; leave it out, or give a value";
        }
        if (fault instanceof MismatchedInputException mismatch) {
            return given(mismatch) + " is not " + allowed(mismatch.getTargetType());
        }
        if (fault.getCause() instanceof InputCoercionException beyond) {
            return "is beyond what " + kind(beyond.getTargetType()) + " can be here; check the figure";
        }
        return isOurs(fault.getCause())
                ? fault.getCause().getMessage()
                : "is not of the form expected; send it as the document of this route shows";
    }

    private static String given(MismatchedInputException fault) {
        if (fault instanceof InvalidFormatException invalid) {
            return "'" + shown(String.valueOf(invalid.getValue())) + "'";
        }
        if (!(fault.getProcessor() instanceof JsonParser parser) || parser.currentToken() == null) {
            return "what was given";
        }
        try {
            return switch (parser.currentToken()) {
                case START_OBJECT, END_OBJECT, FIELD_NAME -> "an object";
                case START_ARRAY, END_ARRAY -> "a list";
                case VALUE_STRING -> "text '" + shown(parser.getText()) + "'";
                case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> "the number " + shown(parser.getText());
                case VALUE_NULL, VALUE_TRUE, VALUE_FALSE -> parser.getText();
                default -> "what was given";
            };
        } catch (IOException closed) {
            return "what was given";
        }
    }

    private static String allowed(Class<?> target) {
        return target != null && target.isEnum()
                ? "one of the allowed values: "
                        + Arrays.stream(target.getEnumConstants())
                                .map(Object::toString)
                                .collect(Collectors.joining(", "))
                : kind(target);
    }

    /** Whether a value of ours refused what it was made of, in words that it has for that. */
    private static boolean isOurs(Throwable cause) {
        return cause instanceof IllegalArgumentException
                && cause.getStackTrace().length > 0
                && cause.getStackTrace()[0].getClassName().startsWith("org.dentary.");
    }

    /** Enough of what was given to find it again. */
    private static String shown(String given) {
        return given.length() <= LONGEST_SHOWN ? given : given.substring(0, LONGEST_SHOWN) + "...";
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
            case "Map", "LinkedHashMap" -> "an object of names and values";
            default -> target.isRecord() ? "an object" : "of the form expected";
        };
    }
}
