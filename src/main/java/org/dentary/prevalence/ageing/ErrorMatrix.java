package org.dentary.prevalence.ageing;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.LocalDate;
import java.util.List;
import org.dentary.prevalence.Words;

/**
 * How often jaws of each true age class are read as each class.
 *
 * @param code short code; {@code KNOWN_AGE} is counted from jaws of known age here
 * @param name what it is
 * @param species species code of the jaws
 * @param kind {@code CITED} from a publication, {@code STATED} as a what-if, {@code KNOWN_AGE} counted here
 * @param source publication and table; of a stated one, who states it; of a counted one, what was counted
 * @param asOf day of the publication, of the statement, or until which was counted
 * @param tables one for {@code BOTH} sexes, or one for {@code MALE} and one for {@code FEMALE}
 */
public record ErrorMatrix(
        String code, String name, String species, String kind, String source, String asOf, List<Table> tables) {
    /** The classes of jaws, in order. */
    static final List<String> CLASSES = List.of("FAWN", "YEARLING", "ADULT");

    static final String KNOWN_AGE = "KNOWN_AGE";
    static final String STATED = "STATED";
    static final String BOTH = "BOTH";

    /** The rows of a sex, in the order of the classes. */
    public record Table(String sex, List<Row> rows) {}

    /**
     * How jaws of one true class are read.
     *
     * @param readings readings behind the shares; null where only shares are given
     * @param jaws jaws that those readings are of; null where that is not known
     * @param withoutClass readings besides these that gave no class; null where that is not known
     * @param reads in the order of the classes
     */
    public record Row(String trueClass, Integer readings, Integer jaws, Integer withoutClass, List<Read> reads) {}

    /**
     * One read class.
     *
     * @param readings null where only shares are given
     * @param share of the true class read so, in [0, 1]
     */
    public record Read(String readClass, Integer readings, double share) {}

    /** {@link #asOf} as people say it. */
    @JsonIgnore
    public String day() {
        return Words.day(LocalDate.parse(asOf));
    }

    /** The table for a sex of animals; null where the matrix has none for it. */
    @JsonIgnore
    Table table(String sex) {
        return tables.stream()
                .filter(table -> table.sex().equals(BOTH) || table.sex().equals(sex))
                .findFirst()
                .orElse(null);
    }

    /** Shares by row and column, as the arithmetic takes them. */
    static double[][] shares(Table table) {
        return table.rows().stream()
                .map(row -> row.reads().stream().mapToDouble(Read::share).toArray())
                .toArray(double[][]::new);
    }
}
