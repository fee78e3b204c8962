package org.dentary.calculators;

import io.quarkus.qute.TemplateData;
import java.util.List;

/**
 * One thing a calculator asks.
 *
 * @param mode keyboard wanted: {@code numeric}, {@code decimal}; null for {@link Kind#ROWS} and {@link Kind#CHOICE}
 * @param preset what stands in an empty form
 */
@TemplateData
public record Field(
        Kind kind, String name, String label, String hint, String mode, String preset, List<Option> options) {
    /** How it is asked. */
    public enum Kind {
        LINE,
        CHOICE,
        ROWS
    }

    /** One of the values of a choice. */
    @TemplateData
    public record Option(String value, String words) {}

    static final String CONFIDENCE_HINT = "A fraction, such as 0.95";

    public static Field whole(String name, String label, String hint) {
        return new Field(Kind.LINE, name, label, hint, "numeric", "", List.of());
    }

    public static Field number(String name, String label, String hint, String preset) {
        return new Field(Kind.LINE, name, label, hint, "decimal", preset, List.of());
    }

    /** The two-sided level. */
    public static Field confidence() {
        return number("confidence", "Confidence level", CONFIDENCE_HINT, "0.95");
    }

    public static Field choice(String name, String label, List<Option> options) {
        return new Field(Kind.CHOICE, name, label, null, null, options.get(0).value(), options);
    }

    /** A table to type or paste, one row a line. */
    public static Field rows(String name, String label, String hint) {
        return new Field(Kind.ROWS, name, label, hint, null, "", List.of());
    }

    public boolean isRows() {
        return kind == Kind.ROWS;
    }

    public boolean isChoice() {
        return kind == Kind.CHOICE;
    }
}
