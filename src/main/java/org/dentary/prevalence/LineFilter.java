package org.dentary.prevalence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.platform.problem.InvalidInput;

/**
 * Conditions on columns of the line list, as SQL over a line {@code l} with named parameters.
 *
 * @param values column to accepted values; a value {@code UNKNOWN} of a column that can be empty matches the empty ones
 */
public record LineFilter(Map<LineColumn, List<String>> values) {
    public LineFilter {
        values = new LinkedHashMap<>(values);
    }

    /** {@code and ...} for each column, or nothing. */
    public String sql() {
        StringBuilder sql = new StringBuilder();
        values.keySet()
                .forEach(column -> sql.append(" and ")
                        .append(column.expression())
                        .append(" in (:filter_")
                        .append(column.name().toLowerCase(java.util.Locale.ROOT))
                        .append(')'));
        return sql.toString();
    }

    /** Sets the parameters that {@link #sql} names. */
    public void bind(jakarta.persistence.Query query) {
        values.forEach((column, accepted) ->
                query.setParameter("filter_" + column.name().toLowerCase(java.util.Locale.ROOT), accepted));
    }

    /**
     * Reads filters from query parameters; a parameter may be repeated or hold several values with commas.
     *
     * @param given parameters by name, those that filter nothing already taken away
     * @throws InvalidInput naming the parameter that is no column
     */
    static LineFilter of(Map<String, List<String>> given) {
        Map<LineColumn, List<String>> values = new LinkedHashMap<>();
        given.forEach((name, texts) -> {
            List<String> accepted = texts.stream()
                    .flatMap(text -> java.util.Arrays.stream(text.split(",")))
                    .map(String::trim)
                    .filter(text -> !text.isEmpty())
                    .toList();
            if (!accepted.isEmpty()) {
                values.put(LineColumn.named(name), accepted);
            }
        });
        return new LineFilter(values);
    }
}
