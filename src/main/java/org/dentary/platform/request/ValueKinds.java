package org.dentary.platform.request;

import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Whether a text in an address is a value of its kind. */
final class ValueKinds {
    private static final int LONGEST_SHOWN = 80;

    /** RFC 9562, section 4; the platform's own reading takes shorter groups and fills them up. */
    private static final Pattern ID = Pattern.compile("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}");

    private ValueKinds() {}

    /**
     * What is wrong, in words; empty if nothing is, if nothing was given, or if the kind is read by the route itself.
     *
     * @param kind what the route takes
     * @param given what stands in the address, or null
     */
    static Optional<String> fault(Class<?> kind, String given) {
        if (given == null) {
            return Optional.empty();
        }
        if (kind == int.class || kind == Integer.class) {
            return whole(given, Integer.MIN_VALUE, Integer.MAX_VALUE);
        }
        if (kind == long.class || kind == Long.class) {
            return whole(given, Long.MIN_VALUE, Long.MAX_VALUE);
        }
        if (kind == boolean.class || kind == Boolean.class) {
            return given.equals("true") || given.equals("false")
                    ? Optional.empty()
                    : Optional.of(shown(given) + " is neither true nor false; give one of them, or leave it out");
        }
        if (kind == UUID.class) {
            return ID.matcher(given).matches()
                    ? Optional.empty()
                    : Optional.of(shown(given) + " is not a UUID such as 5f0c4a9e-6f0e-4f7e-9b8e-2a6d6d3c1f10");
        }
        if (kind.isEnum()) {
            return Arrays.stream(kind.getEnumConstants())
                            .anyMatch(one -> ((Enum<?>) one).name().equals(given))
                    ? Optional.empty()
                    : Optional.of(shown(given) + " is not one of the allowed values: "
                            + Arrays.stream(kind.getEnumConstants())
                                    .map(one -> ((Enum<?>) one).name())
                                    .collect(Collectors.joining(", ")));
        }
        return Optional.empty();
    }

    private static Optional<String> whole(String given, long least, long most) {
        try {
            long number = Long.parseLong(given);
            if (number >= least && number <= most) {
                return Optional.empty();
            }
        } catch (NumberFormatException noNumber) {
            // told like a number that is too large
        }
        return Optional.of(shown(given) + " is not a whole number from " + least + " to " + most);
    }

    private static String shown(String given) {
        return "'" + (given.length() <= LONGEST_SHOWN ? given : given.substring(0, LONGEST_SHOWN) + "...") + "'";
    }
}
