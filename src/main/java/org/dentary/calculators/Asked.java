package org.dentary.calculators;

import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;

/**
 * What an address asks. Values are read one by one; what is missing or malformed is gathered, and {@link #check()} refuses all of it at
 * once. Until then a value at fault reads as 0 or null.
 */
public final class Asked {
    private static final double DEFAULT_CONFIDENCE = 0.95;

    private final MultivaluedMap<String, String> parameters;
    private final List<FieldProblem> problems = new ArrayList<>();

    Asked(MultivaluedMap<String, String> parameters) {
        this.parameters = parameters;
    }

    /** The query of this address. */
    public static Asked of(UriInfo address) {
        return new Asked(address.getQueryParameters());
    }

    /** Whether the field is there with something in it. */
    public boolean has(String field) {
        return text(field) != null;
    }

    /** The text given, trimmed; null when absent or blank. */
    public String text(String field) {
        List<String> values = parameters.get(field);
        if (values == null || values.isEmpty() || values.get(0).isBlank()) {
            return null;
        }
        if (values.size() > 1) {
            refuse(field, "INVALID_VALUE", field + " is given " + values.size() + " times; give it once");
        }
        return values.get(0).trim();
    }

    /** A whole number that must be given. */
    public int whole(String field) {
        String text = required(field);
        return text == null ? 0 : parseWhole(field, text, field);
    }

    /** A number that must be given. */
    public double number(String field) {
        String text = required(field);
        return text == null ? 0 : parseNumber(field, text, field);
    }

    /** A number, or what is meant by giving none. */
    public double number(String field, double otherwise) {
        String text = text(field);
        return text == null ? otherwise : parseNumber(field, text, field);
    }

    /** The two-sided level, 0.95 unless given. */
    public double confidence() {
        return number("confidence", DEFAULT_CONFIDENCE);
    }

    /** One of an enum's names, or what is meant by giving none. */
    public <E extends Enum<E>> E choice(String field, E otherwise) {
        String text = text(field);
        if (text == null) {
            return otherwise;
        }
        E[] allowed = otherwise.getDeclaringClass().getEnumConstants();
        for (E value : allowed) {
            if (value.name().equals(text.toUpperCase(Locale.ROOT))) {
                return value;
            }
        }
        String names = Arrays.stream(allowed).map(Enum::name).collect(Collectors.joining(", "));
        refuse(field, "INVALID_VALUE", "'" + text + "' is not one of the allowed values: " + names);
        return otherwise;
    }

    /** The lines of a field that holds a table, one row a line; must be given. Blank lines are passed over. */
    public List<Row> rows(String field) {
        String text = required(field);
        if (text == null) {
            return List.of();
        }
        List<Row> rows = new ArrayList<>();
        String[] lines = text.split("\\R");
        for (int i = 0; i < lines.length; i++) {
            if (!lines[i].isBlank()) {
                rows.add(new Row(
                        field,
                        i + 1,
                        Arrays.stream(lines[i].split("[,;\\t]", -1))
                                .map(String::trim)
                                .toList()));
            }
        }
        return rows;
    }

    /** Notes a fault found by the caller. */
    public void refuse(String field, String rule, String message) {
        problems.add(new FieldProblem(field, rule, message));
    }

    /**
     * @throws InvalidInput naming every fault found so far
     */
    public void check() {
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems.stream().distinct().toList());
        }
    }

    private String required(String field) {
        String text = text(field);
        if (text == null) {
            refuse(field, "REQUIRED", field + " must be given");
        }
        return text;
    }

    private int parseWhole(String field, String text, String where) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException notWhole) {
            refuse(field, "INVALID_VALUE", where + ": '" + text + "' is not a whole number below 2,147,483,648");
            return 0;
        }
    }

    private double parseNumber(String field, String text, String where) {
        try {
            return text.matches("[-+0-9.eE]+") ? Double.parseDouble(text) : refuseNumber(field, text, where);
        } catch (NumberFormatException notNumber) {
            return refuseNumber(field, text, where);
        }
    }

    private double refuseNumber(String field, String text, String where) {
        refuse(field, "INVALID_VALUE", where + ": '" + text + "' is not a number such as 0.95");
        return 0;
    }

    /** One line of a table: cells apart by comma, semicolon or tab. */
    public final class Row {
        private final String field;
        private final int line;
        private final List<String> cells;

        Row(String field, int line, List<String> cells) {
            this.field = field;
            this.line = line;
            this.cells = cells;
        }

        /** How many cells the line has. */
        public int size() {
            return cells.size();
        }

        /** Whether the cell is there with something in it. */
        public boolean has(int cell) {
            return cell < cells.size() && !cells.get(cell).isEmpty();
        }

        /** A cell's text; empty when absent. */
        public String text(int cell) {
            return has(cell) ? cells.get(cell) : "";
        }

        /** A whole number that must be there; {@code column} is what the cell is called. */
        public int whole(int cell, String column) {
            return has(cell) ? parseWhole(field, cells.get(cell), where(column)) : missing(column);
        }

        /** A number that must be there. */
        public double number(int cell, String column) {
            return has(cell) ? parseNumber(field, cells.get(cell), where(column)) : missing(column);
        }

        /** A number, or null when the cell is absent or empty. */
        public Double optional(int cell, String column) {
            return has(cell) ? Double.valueOf(parseNumber(field, cells.get(cell), where(column))) : null;
        }

        private int missing(String column) {
            refuse(field, "REQUIRED", where(column) + " is missing");
            return 0;
        }

        private String where(String column) {
            return "line " + line + ", " + column;
        }
    }
}
