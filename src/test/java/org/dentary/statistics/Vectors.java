package org.dentary.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** The vector files computed by R and kept beside the script that made them, and the agreement this package promises. */
public final class Vectors {

    /** Relative, for closed forms and library quantiles. */
    public static final double CLOSED = 1e-9;

    /** Relative, for values that are roots of an equation. */
    public static final double ROOT = 1e-8;

    private Vectors() {}

    /** A grid of at least 50 cases. */
    public static List<NamedCsvRecord> read(String file) {
        List<NamedCsvRecord> rows = readAny(file);
        assertTrue(rows.size() >= 50, () -> file + " holds only " + rows.size() + " cases");
        return rows;
    }

    static List<NamedCsvRecord> readAny(String file) {
        try (InputStream stream = Vectors.class.getResourceAsStream("/statistics/" + file)) {
            assertNotNull(stream, file);
            return CsvReader.builder()
                    .commentStrategy(CommentStrategy.SKIP)
                    .ofNamedCsvRecord(new InputStreamReader(stream, StandardCharsets.UTF_8))
                    .stream()
                    .toList();
        } catch (IOException broken) {
            throw new AssertionError(file, broken);
        }
    }

    public static int integer(NamedCsvRecord row, String field) {
        return Integer.parseInt(row.getField(field));
    }

    /** The number in a cell; null for an empty one. */
    public static Double number(NamedCsvRecord row, String field) {
        String cell = row.getField(field);
        return cell.isEmpty() ? null : Double.valueOf(cell);
    }

    /** Numbers parted by spaces, NA as null. */
    public static List<Double> numbers(String cell) {
        return Stream.of(cell.split(" "))
                .map(v -> v.equals("NA") ? null : Double.valueOf(v))
                .toList();
    }

    /** {@code 1 2;3 4} as rows of numbers. */
    public static double[][] matrix(NamedCsvRecord row, String field) {
        return Arrays.stream(row.getField(field).split(";"))
                .map(line -> Arrays.stream(line.trim().split(" "))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    /** Both null, both the same infinity, or within {@code relative} of the expected value (absolute below 1e-12). */
    public static void same(NamedCsvRecord row, String field, Double actual, double relative) {
        same(() -> row + " " + field, number(row, field), actual, relative);
    }

    public static void same(Supplier<String> what, Double expected, Double actual, double relative) {
        if (expected == null) {
            assertNull(actual, what);
            return;
        }
        assertNotNull(actual, what);
        if (expected.isInfinite()) {
            assertEquals(expected, actual, what);
            return;
        }
        assertEquals(expected, actual, Math.max(Math.abs(expected) * relative, 1e-12 * relative / CLOSED), what);
    }
}
