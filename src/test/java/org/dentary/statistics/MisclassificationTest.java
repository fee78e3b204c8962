package org.dentary.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class MisclassificationTest {

    /** R 4.2.2: misclassification.R, solve(), kappa() and a search along the edges. */
    @Test
    void agreesWithR() {
        int atTheEdge = 0;
        for (NamedCsvRecord row : Vectors.read("misclassification.csv")) {
            Misclassification matrix = Misclassification.of(Vectors.matrix(row, "matrix"));
            Vectors.same(row, "condition", matrix.condition(), Vectors.CLOSED);
            Misclassification.Behind behind = matrix.behind(Vectors.matrix(row, "told")[0]);
            same(row, "solution", behind.solution(), 1e-9);
            // The likeliest counts of 0 or more are the end of a walk: a millionth of an animal.
            same(row, "counts", behind.counts(), behind.solved() ? 1e-9 : 1e-6);
            assertEquals(Boolean.parseBoolean(row.getField("solved")), behind.solved(), row.toString());
            assertEquals(Vectors.number(row, "unexplained"), behind.unexplained(), 1e-6, row.toString());
            atTheEdge += behind.solved() ? 0 : 1;
        }
        assertTrue(atTheEdge >= 15, atTheEdge + " cases without a solution of 0 or more");
    }

    private static void same(NamedCsvRecord row, String field, double[] actual, double absolute) {
        assertArrayEquals(Vectors.matrix(row, field)[0], actual, absolute * 300, row + " " + field);
    }

    /**
     * Two classes are a test: Rogan and Gladen 1978. Reiczigel, Foldi and Ozsvari 2010, Epidemiol Infect 138:1674-1678:
     * 23 of 150, sensitivity .96, specificity .89, true prevalence .051 (5.1 per 100); 20 of 120, .9 and .99: .17603 (R).
     */
    @Test
    void withTwoClassesItIsRoganAndGladens() {
        Misclassification brucellosis = Misclassification.of(new double[][] {{.96, .04}, {.11, .89}});
        assertEquals(.051, brucellosis.behind(23, 127).counts()[0] / 150, .0005);
        Misclassification other = Misclassification.of(new double[][] {{.9, .1}, {.01, .99}});
        assertEquals(.17603, other.behind(20, 100).counts()[0] / 120, 5e-6);
        // The same paper, 6 of 151, .964 and .927: below 0 (raw -.0373), so 0.
        Misclassification none = Misclassification.of(new double[][] {{.964, .036}, {.073, .927}});
        Misclassification.Behind behind = none.behind(6, 145);
        assertFalse(behind.solved());
        assertEquals(-.0373, behind.solution()[0] / 151, 5e-5);
        assertEquals(0, behind.counts()[0], 1e-6);
        // 151 x .073 = 11.023 would be told so, 6 were.
        assertEquals(151 * .073 - 6, behind.unexplained(), 1e-6);
    }

    @Property(tries = 300, seed = "20261126")
    void aMatrixWithoutErrorChangesNothing(@ForAll @Size(3) List<@IntRange(max = 500) Integer> told) {
        double[] counts = numbers(told);
        Misclassification.Behind behind = Misclassification.of(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}})
                .behind(counts);
        assertArrayEquals(counts, behind.counts(), 0);
        assertTrue(behind.solved());
    }

    @Property(tries = 300, seed = "20261126")
    void totalsAreKeptAndNothingIsBelowZero(
            @ForAll @Size(6) List<@DoubleRange(max = 0.3) Double> errors,
            @ForAll @Size(3) List<@IntRange(max = 300) Integer> told) {
        double[] counts = numbers(told);
        Misclassification matrix = matrix(errors);
        Misclassification.Behind behind = matrix.behind(counts);
        double all = Arrays.stream(counts).sum();
        assertEquals(all, Arrays.stream(behind.counts()).sum(), 1e-6 * (all + 1));
        assertEquals(all, Arrays.stream(matrix.told(counts)).sum(), 1e-9 * (all + 1));
        assertTrue(Arrays.stream(behind.counts()).allMatch(count -> count >= 0));
    }

    @Property(tries = 300, seed = "20261126")
    void toldAndBackAgainIsWhereItBegan(
            @ForAll @Size(6) List<@DoubleRange(max = 0.3) Double> errors,
            @ForAll @Size(3) List<@IntRange(max = 300) Integer> truth) {
        double[] counts = numbers(truth);
        Misclassification matrix = matrix(errors);
        Misclassification.Behind behind = matrix.behind(matrix.told(counts));
        assertTrue(behind.solved());
        assertArrayEquals(counts, behind.counts(), 1e-6);
    }

    @Test
    void classesToldAlikeAreRefusedAndNearlyAlikeTell() {
        Misclassification alike = Misclassification.of(new double[][] {{1, 0, 0}, {0, .5, .5}, {0, .5, .5}});
        assertEquals(Double.POSITIVE_INFINITY, alike.condition());
        OutOfDomain refusal = assertThrows(OutOfDomain.class, () -> alike.behind(1, 2, 3));
        assertTrue(refusal.getMessage().contains("told alike"), refusal.getMessage());
        assertTrue(Misclassification.of(new double[][] {{1, 0, 0}, {0, .52, .48}, {0, .48, .52}})
                        .condition()
                > 20);
    }

    @Test
    void refusesWhatIsNoMatrixAndNoCounts() {
        assertThrows(OutOfDomain.class, () -> Misclassification.of(new double[][] {{1}}));
        assertThrows(OutOfDomain.class, () -> Misclassification.of(new double[][] {{1, 0}, {0}}));
        assertThrows(OutOfDomain.class, () -> Misclassification.of(new double[][] {{1, -1}, {0, 1}}));
        assertThrows(OutOfDomain.class, () -> Misclassification.of(new double[][] {{1, 0}, {0, 0}}));
        Misclassification two = Misclassification.of(new double[][] {{9, 1}, {1, 9}});
        assertThrows(OutOfDomain.class, () -> two.behind(1, 2, 3));
        assertThrows(OutOfDomain.class, () -> two.told(1, -2));
        assertEquals(.9, two.share(0, 0), 1e-15);
    }

    /** Errors of at most 0.3 to a class next to it and a tenth of that two classes away: always solvable. */
    private static Misclassification matrix(List<Double> errors) {
        double[] e = errors.stream().mapToDouble(Double::doubleValue).toArray();
        return Misclassification.of(new double[][] {
            {1 - e[0] - e[1] / 10, e[0], e[1] / 10},
            {e[2], 1 - e[2] - e[3], e[3]},
            {e[4] / 10, e[5], 1 - e[4] / 10 - e[5]}
        });
    }

    private static double[] numbers(List<Integer> counts) {
        return counts.stream().mapToDouble(Integer::doubleValue).toArray();
    }
}
