package org.dentary.prevalence.linelist;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.prevalence.Words;

/** Filters as pages and documents tell them, so that nobody takes a part for the whole. */
public final class FilterWords {
    private static final Map<String, String> DAYS =
            Map.of(LineFilter.FROM, "Died on or after", LineFilter.TO, "Died on or before");

    private FilterWords() {}

    /** {@code mortalitySource} as "Mortality source", {@code diedOnFrom} as "Died on or after". */
    public static String name(String field) {
        return DAYS.getOrDefault(
                field, Words.of(field.replaceAll("([A-Z])", "_$1").toUpperCase(Locale.ROOT)));
    }

    /** Values in words, with commas. */
    public static String values(List<String> values) {
        return values.stream().map(Words::of).collect(Collectors.joining(", "));
    }

    /** All filters of a question in one line; empty for none. */
    public static String told(Map<String, List<String>> filters) {
        return filters.entrySet().stream()
                .map(filter -> name(filter.getKey()) + ": " + values(filter.getValue()))
                .collect(Collectors.joining("; "));
    }
}
