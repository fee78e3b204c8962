package org.dentary.prevalence.question;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.platform.problem.InvalidInput;

/** What a report can be broken down by, and the expression over a line {@code l} that gives its value. */
public enum Dimension {
    AGE_CLASS("ageClass", "Age class", "l.age_class"),
    SEX("sex", "Sex", "l.sex"),
    MANAGEMENT_UNIT("managementUnit", "Management unit", "coalesce(l.unit, 'UNKNOWN')"),
    REGION("region", "Region", "coalesce(l.region, 'UNKNOWN')"),
    STATION("station", "Station", "l.station"),
    MORTALITY_SOURCE("mortalitySource", "Mortality source", "l.mortality_source"),
    SAMPLING_BASIS("samplingBasis", "Sampling basis", "l.sampling_basis"),
    SEASON("season", "Season", "l.season"),
    MONTH("month", "Month of death", "coalesce(to_char(l.died_on, 'YYYY-MM'), 'UNKNOWN')");

    private static final int MOST = 3;

    private final String field;
    private final String words;
    private final String expression;

    Dimension(String field, String words, String expression) {
        this.field = field;
        this.words = words;
        this.expression = expression;
    }

    /** The name in requests and answers, camelCase. */
    public String field() {
        return field;
    }

    /** The name at the head of a column. */
    public String words() {
        return words;
    }

    /** The SQL expression over a line {@code l}; of fixed text alone. */
    public String expression() {
        return expression;
    }

    /**
     * Reads a comma-separated list such as {@code ageClass,sex}.
     *
     * @return the dimensions in the order given, without repeats; never empty
     * @throws InvalidInput naming the word that is no dimension, or a repeat
     */
    public static List<Dimension> parse(String by) {
        List<Dimension> dimensions =
                Arrays.stream(by.split(",", -1)).map(word -> one("by", word)).toList();
        if (dimensions.stream().distinct().count() != dimensions.size()) {
            throw InvalidInput.field("by", "REPEATED", "by '" + by + "' names a dimension twice; name each once");
        }
        if (dimensions.size() > MOST) {
            throw InvalidInput.field("by", "TOO_MANY", "by takes at most three dimensions; '" + by + "' names more");
        }
        return dimensions;
    }

    /**
     * The dimension whose values are to stand side by side.
     *
     * @param given its name, or null for none
     * @param rows what is asked for besides, itself among them or not
     * @throws InvalidInput naming the word that is no dimension, or that nothing is left for the rows
     */
    static Dimension columns(String given, List<Dimension> rows) {
        if (given == null) {
            return null;
        }
        Dimension columns = one("columns", given);
        if (rows.equals(List.of(columns))) {
            throw InvalidInput.field(
                    "columns",
                    "IMPOSSIBLE_COMBINATION",
                    "'" + columns.field
                            + "' cannot be rows and columns at once; take another dimension for one of them");
        }
        if (rows.size() == MOST && !rows.contains(columns)) {
            throw InvalidInput.field(
                    "columns",
                    "TOO_MANY",
                    "by and columns together take at most three dimensions; leave one of them out");
        }
        return columns;
    }

    /** All dimensions, that of the columns last; as they are without one. */
    static List<Dimension> withColumns(List<Dimension> rows, Dimension columns) {
        return columns == null
                ? rows
                : Stream.concat(rows.stream().filter(row -> row != columns), Stream.of(columns))
                        .toList();
    }

    private static Dimension one(String parameter, String given) {
        return Arrays.stream(values())
                .filter(d -> d.field.equals(given.trim()))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        parameter,
                        "NOT_A_DIMENSION",
                        "'" + given.trim() + "' is not a dimension; allowed: "
                                + Arrays.stream(values()).map(d -> d.field).collect(Collectors.joining(", "))));
    }
}
