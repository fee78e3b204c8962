package org.dentary.prevalence.linelist;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.prevalence.Words;

/** Filters as pages and documents tell them, so that nobody takes a part for the whole. */
@ApplicationScoped
public class FilterWords {
    private static final Map<String, String> DAYS =
            Map.of(LineFilter.FROM, "Died on or after", LineFilter.TO, "Died on or before");

    private final LineFilters filters;

    FilterWords(LineFilters filters) {
        this.filters = filters;
    }

    /** {@code mortalitySource} as "Mortality source", {@code diedOnFrom} as "Died on or after". */
    public static String name(String field) {
        return DAYS.getOrDefault(
                field, Words.of(field.replaceAll("([A-Z])", "_$1").toUpperCase(Locale.ROOT)));
    }

    /** Values of a filter as people call them, with commas; days are spelled out. */
    public String values(String field, List<String> values) {
        if (DAYS.containsKey(field)) {
            return values.stream().map(LocalDate::parse).map(Words::day).collect(Collectors.joining(", "));
        }
        Map<String, String> names = filters.names(LineColumn.named(field));
        return values.stream()
                .map(value -> names.getOrDefault(value, Words.of(value)))
                .collect(Collectors.joining(", "));
    }

    /** All filters of a question in one line; empty for none. */
    public String told(Map<String, List<String>> filters) {
        return filters.entrySet().stream()
                .map(filter -> name(filter.getKey()) + ": " + values(filter.getKey(), filter.getValue()))
                .collect(Collectors.joining("; "));
    }
}
