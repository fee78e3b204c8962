package org.dentary.prevalence.ageing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.dentary.jaw.agreement.KnownAgeReadings;
import org.dentary.jaw.key.AgeClass;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.ageing.ErrorMatrix.Read;
import org.dentary.prevalence.ageing.ErrorMatrix.Row;
import org.dentary.prevalence.ageing.ErrorMatrix.Table;

/** How a matrix is made of counts, and which counts make none. Pure. */
final class ErrorMatrixRules {
    private ErrorMatrixRules() {}

    /** A row of counts, in the order of the classes; at least one is above 0. */
    static Row row(String trueClass, int[] counts, Integer jaws, Integer withoutClass) {
        int all = Arrays.stream(counts).sum();
        return new Row(
                trueClass,
                all,
                jaws,
                withoutClass,
                IntStream.range(0, counts.length)
                        .mapToObj(i -> new Read(ErrorMatrix.CLASSES.get(i), counts[i], (double) counts[i] / all))
                        .toList());
    }

    /** A row of shares, in the order of the classes; divided by their sum, which differs from 1 by rounding alone. */
    static Row row(String trueClass, double[] shares) {
        double all = Arrays.stream(shares).sum();
        return new Row(
                trueClass,
                null,
                null,
                null,
                IntStream.range(0, shares.length)
                        .mapToObj(i -> new Read(ErrorMatrix.CLASSES.get(i), null, shares[i] / all))
                        .toList());
    }

    /**
     * The matrix of readings of known-age jaws, both sexes together.
     *
     * @param until day until which was counted
     * @throws InvalidInput if a class has no reading, telling how many each class has
     */
    static ErrorMatrix knownAge(KnownAgeReadings readings, LocalDate until) {
        List<Row> rows = new ArrayList<>();
        for (String trueClass : ErrorMatrix.CLASSES) {
            AgeClass known = AgeClass.valueOf(trueClass);
            int[] counts = ErrorMatrix.CLASSES.stream()
                    .mapToInt(read -> readings.readings(known, AgeClass.valueOf(read)))
                    .toArray();
            if (Arrays.stream(counts).sum() == 0) {
                throw refusal(readings);
            }
            rows.add(row(trueClass, counts, readings.jaws(known), readings.readings(known, AgeClass.UNKNOWN)));
        }
        return new ErrorMatrix(
                ErrorMatrix.KNOWN_AGE,
                "Jaws of known age read here",
                readings.species(),
                ErrorMatrix.KNOWN_AGE,
                "Readings by teeth of jaws whose age is known from a mark, blind or before the mark was told, by persons who"
                        + " told no mark of that animal, and first answers of finished practice to jaws of known age; every"
                        + " season, both sexes. Never one reader against another.",
                until.toString(),
                List.of(new Table(ErrorMatrix.BOTH, rows)));
    }

    private static InvalidInput refusal(KnownAgeReadings readings) {
        String told = ErrorMatrix.CLASSES.stream()
                .map(trueClass -> {
                    AgeClass known = AgeClass.valueOf(trueClass);
                    int read = ErrorMatrix.CLASSES.stream()
                            .mapToInt(age -> readings.readings(known, AgeClass.valueOf(age)))
                            .sum();
                    int jaws = readings.jaws(known);
                    return trueClass.toLowerCase(Locale.ROOT) + " " + read
                            + (jaws == 0 ? "" : " (" + jaws + (jaws == 1 ? " jaw)" : " jaws)"));
                })
                .collect(Collectors.joining(", "));
        return InvalidInput.field(
                "matrix",
                "KNOWN_AGE_MISSING",
                "Readings of jaws of known age by people who did not know it, by known class: " + told
                        + ". A class without any tells nothing of how it is read. Have jaws of known age read blind, or"
                        + " choose a matrix that is set up (/api/v1/ageing-error-matrices)");
    }
}
