package org.dentary.statistics;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * How often each true class is told as each class, and what that does to counts. Going from true to told counts is a product;
 * going back is its solution, or, where the solution would be below 0 in a class, the counts of 0 or more under which the told
 * ones are most likely. With two classes the solution is Rogan and Gladen's.
 *
 * <p>Source: the matrix method, Barron 1977, Biometrics 33:414-418; age classes of deer, Conn &amp; Diefenbach 2007, Ecology
 * 88:1977-1983 (both citations from memory); counts of 0 or more by expectation and maximisation, Dempster, Laird &amp; Rubin
 * 1977, J R Stat Soc B 39:1-38 (from memory). No error of the shares or of the counts is carried on: there is no interval.
 */
public final class Misclassification {
    public static final String SOURCE =
            "Barron 1977, Biometrics 33:414-418; Conn & Diefenbach 2007, Ecology 88:1977-1983; counts of 0 or more: Dempster,"
                    + " Laird & Rubin 1977, J R Stat Soc B 39:1-38 (citations from memory)";

    private static final double NOTHING = 1e-9;
    private static final int MOST_STEPS = 1_000_000;
    private static final double STILL = 1e-13;

    /** Row: true class; column: told class; each row sums to 1. */
    private final RealMatrix shares;

    private Misclassification(RealMatrix shares) {
        this.shares = shares;
    }

    /**
     * Counts by true class behind told ones.
     *
     * @param counts by true class, 0 or more, not whole; they sum to what was told
     * @param solution of the equations, below 0 in some class where the matrix does not fit
     * @param solved whether {@code counts} is the solution
     * @param unexplained how many of the told would be told otherwise under {@code counts}: half the summed differences; 0
     *     where solved
     */
    public record Behind(double[] counts, double[] solution, boolean solved, double unexplained) {}

    /**
     * @param weights square, at least two classes; row: true class, column: told class; counts or shares of 0 or more, each row
     *     divided by its sum here
     * @throws OutOfDomain when it is not square or has one class, a weight is below 0 or not finite, or a row sums to 0; the
     *     field is {@code matrix[row]} or {@code matrix[row][column]}
     */
    public static Misclassification of(double[][] weights) {
        int k = weights.length;
        if (k < 2) {
            throw new OutOfDomain("matrix", k, "must have at least two classes");
        }
        double[][] shares = new double[k][];
        for (int i = 0; i < k; i++) {
            if (weights[i].length != k) {
                throw new OutOfDomain("matrix[" + i + "]", weights[i].length, "must have as many columns as rows");
            }
            for (int j = 0; j < k; j++) {
                Domain.notBelowZero("matrix[" + i + "][" + j + "]", weights[i][j]);
            }
            double sum = Arrays.stream(weights[i]).sum();
            if (sum == 0) {
                throw new OutOfDomain(
                        "matrix[" + i + "]", 0, "must have something in it: nothing is known of this class");
            }
            shares[i] = Arrays.stream(weights[i]).map(weight -> weight / sum).toArray();
        }
        return new Misclassification(new Array2DRowRealMatrix(shares, false));
    }

    /** The share of a true class told as a class. */
    public double share(int trueClass, int toldClass) {
        return shares.getEntry(trueClass, toldClass);
    }

    /** Largest singular value over smallest, 1 or more; infinite where two classes are told alike. */
    public double condition() {
        double[] values = new SingularValueDecomposition(shares).getSingularValues();
        double smallest = values[values.length - 1];
        return smallest < NOTHING * values[0] ? Double.POSITIVE_INFINITY : values[0] / smallest;
    }

    /**
     * What is told of true counts, on average.
     *
     * @throws OutOfDomain when there are not as many counts as classes, or one is below 0
     */
    public double[] told(double... trueCounts) {
        checked(trueCounts);
        return shares.preMultiply(trueCounts);
    }

    /**
     * The true counts behind told ones.
     *
     * @throws OutOfDomain when there are not as many counts as classes, one is below 0, or the matrix tells classes alike
     */
    public Behind behind(double... toldCounts) {
        checked(toldCounts);
        if (Double.isInfinite(condition())) {
            throw new OutOfDomain(
                    "matrix", "singular", "must tell its classes apart: two are told alike, nothing follows");
        }
        double all = Arrays.stream(toldCounts).sum();
        double[] solution = new LUDecomposition(shares.transpose())
                .getSolver()
                .solve(new ArrayRealVector(toldCounts))
                .toArray();
        if (Arrays.stream(solution).allMatch(count -> count >= -NOTHING * all)) {
            return new Behind(
                    Arrays.stream(solution).map(count -> Math.max(0, count)).toArray(), solution, true, 0);
        }
        double[] likely = likeliest(toldCounts, all);
        double[] again = shares.preMultiply(likely);
        double apart = 0;
        for (int j = 0; j < again.length; j++) {
            apart += Math.abs(again[j] - toldCounts[j]) / 2;
        }
        return new Behind(likely, solution, false, apart);
    }

    /** Each step hands the told counts back to true classes by the shares that the counts of the step before give. */
    private double[] likeliest(double[] told, double all) {
        int k = told.length;
        double[] counts = new double[k];
        Arrays.fill(counts, all / k);
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] fitted = shares.preMultiply(counts);
            double moved = 0;
            double[] next = new double[k];
            for (int i = 0; i < k; i++) {
                double factor = 0;
                for (int j = 0; j < k; j++) {
                    factor += told[j] == 0 ? 0 : shares.getEntry(i, j) * told[j] / fitted[j];
                }
                next[i] = counts[i] * factor;
                moved = Math.max(moved, Math.abs(next[i] - counts[i]));
            }
            counts = next;
            if (moved < STILL * all) {
                break;
            }
        }
        return counts;
    }

    private void checked(double[] counts) {
        if (counts.length != shares.getRowDimension()) {
            throw new OutOfDomain("counts", counts.length, "must be one for each class of the matrix");
        }
        for (int i = 0; i < counts.length; i++) {
            Domain.notBelowZero("counts[" + i + "]", counts[i]);
        }
    }
}
