package org.dentary.result.mapping;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How one laboratory's files read. Columns, and words within them, are compared without regard to case and outer spaces.
 *
 * @param columns the laboratory's column name to ours; to empty text for a column that is knowingly left out
 * @param fixed our column to the value that every line has, where the laboratory sends no such column
 * @param dateFormat how days are written, such as {@code MM/dd/uuuu}; null where they are ISO 8601
 * @param words our column to the laboratory's words and ours; a word that is not in it stays as it is
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ColumnMap(
        @NotNull(message = "is required: the laboratory's column names and ours")
        @Size(min = 1, max = 100, message = "names 1 to 100 columns")
        @JsonSetter(contentNulls = Nulls.FAIL)
        Map<String, String> columns,

        @JsonSetter(contentNulls = Nulls.FAIL) Map<String, String> fixed,

        @Size(max = 40, message = "takes at most 40 characters")
        String dateFormat,

        @JsonSetter(contentNulls = Nulls.FAIL) Map<String, Map<String, String>> words) {
    /** Our columns that every line fills, or that a map fixes. */
    public static final List<String> REQUIRED =
            List.of("specimen_code", "accession_number", "test_method", "stage", "finding", "tested_on", "reported_on");
    /** Our columns that may be missing. */
    public static final List<String> OPTIONAL = List.of(
            "status",
            "unsuitable_reason",
            "measured_value",
            "laboratory_item",
            "performing_laboratory",
            "corrects",
            "run");

    public ColumnMap {
        columns = columns == null ? null : Map.copyOf(columns);
        fixed = fixed == null ? Map.of() : Map.copyOf(fixed);
        words = words == null ? Map.of() : Map.copyOf(words);
    }

    /** Our names of a file's columns: empty for one that is left out, the laboratory's own where it is not mapped. */
    public List<String> names(List<String> heads) {
        return heads.stream()
                .map(head -> head == null ? null : found(columns, head, head))
                .toList();
    }

    /** A cell in our words; what is not mapped, or no such day, stays as given for the checks to name. */
    public String value(String column, String given) {
        if (given == null) {
            return fixed.get(column);
        }
        if (dateFormat != null && column.endsWith("_on")) {
            return day(given);
        }
        return found(words.getOrDefault(column, Map.of()), given, given);
    }

    private String day(String given) {
        try {
            return LocalDate.parse(given.strip(), format(dateFormat)).toString();
        } catch (DateTimeException e) {
            return given;
        }
    }

    /**
     * A strict format of days.
     *
     * @throws IllegalArgumentException if the pattern is none
     */
    public static DateTimeFormatter format(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.US).withResolverStyle(ResolverStyle.STRICT);
    }

    private static String found(Map<String, String> in, String given, String otherwise) {
        return in.entrySet().stream()
                .filter(entry -> entry.getKey().strip().equalsIgnoreCase(given.strip()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse(otherwise);
    }
}
