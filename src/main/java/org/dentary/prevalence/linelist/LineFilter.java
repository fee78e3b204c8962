package org.dentary.prevalence.linelist;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.InvalidInput;

/**
 * Conditions on columns of the line list, as SQL over a line {@code l} with named parameters.
 *
 * @param values column to accepted values; a value {@code UNKNOWN} of a column that can be empty matches the empty ones
 * @param diedFrom first day of death that passes, or null; with a first or last day, deaths of unknown day do not pass
 * @param diedTo last day of death that passes, or null
 */
public record LineFilter(Map<LineColumn, List<String>> values, LocalDate diedFrom, LocalDate diedTo) {
    public static final String FROM = "diedOnFrom";
    public static final String TO = "diedOnTo";

    /** @throws InvalidInput if the first day is after the last */
    public LineFilter {
        values = new LinkedHashMap<>(values);
        if (diedFrom != null && diedTo != null && diedFrom.isAfter(diedTo)) {
            throw InvalidInput.field(
                    FROM,
                    "IMPOSSIBLE_COMBINATION",
                    FROM + " " + diedFrom + " is after " + TO + " " + diedTo
                            + ", so nothing can pass; exchange the two");
        }
    }

    /** {@code and ...} for each condition, or nothing. */
    public String sql() {
        StringBuilder sql = new StringBuilder();
        values.forEach((column, accepted) -> sql.append(" and ")
                .append(accepted.contains("UNKNOWN") ? column.expression() : column.known())
                .append(" in (:")
                .append(parameter(column))
                .append(')'));
        if (diedFrom != null) {
            sql.append(" and l.died_on >= :filter_died_from");
        }
        if (diedTo != null) {
            sql.append(" and l.died_on <= :filter_died_to");
        }
        return sql.toString();
    }

    /** Sets the parameters that {@link #sql} names. */
    public void bind(jakarta.persistence.Query query) {
        values.forEach((column, accepted) -> query.setParameter(parameter(column), accepted));
        if (diedFrom != null) {
            query.setParameter("filter_died_from", diedFrom);
        }
        if (diedTo != null) {
            query.setParameter("filter_died_to", diedTo);
        }
    }

    private static String parameter(LineColumn column) {
        return "filter_" + column.name().toLowerCase(Locale.ROOT);
    }

    /** The conditions as parameters of an address, equal for equal filters: names in order, values sorted, each once. */
    public Map<String, List<String>> told() {
        Map<String, List<String>> told = new TreeMap<>();
        values.forEach((column, accepted) ->
                told.put(column.field(), accepted.stream().sorted().distinct().toList()));
        if (diedFrom != null) {
            told.put(FROM, List.of(diedFrom.toString()));
        }
        if (diedTo != null) {
            told.put(TO, List.of(diedTo.toString()));
        }
        return told;
    }

    /**
     * Reads filters from query parameters; a parameter may be repeated or hold several values with commas, a first or last day
     * only one.
     *
     * @param given parameters by name, those that filter nothing already taken away
     * @throws InvalidInput naming the parameter that is no column, or the day that is none
     */
    public static LineFilter of(Map<String, List<String>> given) {
        Map<LineColumn, List<String>> values = new LinkedHashMap<>();
        Map<String, LocalDate> days = new LinkedHashMap<>();
        given.forEach((name, texts) -> {
            List<String> accepted = texts.stream()
                    .flatMap(text -> Arrays.stream(text.split(",")))
                    .map(String::trim)
                    .filter(text -> !text.isEmpty())
                    .toList();
            if (accepted.isEmpty()) {
                return;
            }
            if (name.equals(FROM) || name.equals(TO)) {
                days.put(name, onlyDay(name, accepted));
            } else {
                LineColumn column = LineColumn.named(name);
                if (column == LineColumn.DIED_ON) {
                    accepted.stream().filter(day -> !day.equals("UNKNOWN")).forEach(day -> day(name, day));
                }
                values.put(column, accepted);
            }
        });
        return new LineFilter(values, days.get(FROM), days.get(TO));
    }

    private static LocalDate onlyDay(String name, List<String> given) {
        if (given.size() > 1) {
            throw InvalidInput.field(name, "REPEATED", name + " is given " + given.size() + " times; give it once");
        }
        return day(name, given.get(0));
    }

    private static LocalDate day(String name, String given) {
        try {
            return CalendarText.day(given);
        } catch (DateTimeParseException e) {
            throw InvalidInput.field(
                    name,
                    "NOT_A_DAY",
                    "'" + given + "' is not a day; write year, month and day, such as 2026-11-14"
                            + (name.equals(LineColumn.DIED_ON.field()) ? ", or UNKNOWN" : ""));
        }
    }
}
