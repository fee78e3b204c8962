package org.dentary.statistics.agreement;

import java.util.Arrays;
import java.util.List;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/** A square table of two readers' classes as shares of the animals. */
record Readings(double[][] shares, double[] rows, double[] columns, int animals) {

    /** Weight of the pair (first reader's class, second reader's class). */
    interface Weight {
        double of(int i, int j);
    }

    static Readings of(List<List<Integer>> counts) {
        Domain.notEmpty("counts", counts);
        int k = counts.size();
        if (k < 2) {
            throw new OutOfDomain("counts", counts, "must have at least two classes");
        }
        int[][] table = new int[k][k];
        long animals = 0;
        for (int i = 0; i < k; i++) {
            List<Integer> row = counts.get(i);
            if (row == null || row.size() != k) {
                throw new OutOfDomain(
                        "counts[" + i + "]", row, "must have as many columns as the table has rows (" + k + ")");
            }
            for (int j = 0; j < k; j++) {
                if (row.get(j) == null) {
                    throw new OutOfDomain("counts[" + i + "][" + j + "]", "null", "must be a count");
                }
                Domain.count("counts[" + i + "][" + j + "]", row.get(j));
                table[i][j] = row.get(j);
                animals += row.get(j);
            }
        }
        if (animals > Domain.MOST) {
            throw new OutOfDomain("counts", animals, "must not add up to more than 10,000,000");
        }
        return of(table, (int) animals);
    }

    private static Readings of(int[][] table, int animals) {
        int k = table.length;
        double[][] shares = new double[k][k];
        long[] rows = new long[k];
        long[] columns = new long[k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                shares[i][j] = (double) table[i][j] / animals;
                rows[i] += table[i][j];
                columns[j] += table[i][j];
            }
        }
        double[] rowShares =
                Arrays.stream(rows).mapToDouble(n -> (double) n / animals).toArray();
        double[] columnShares =
                Arrays.stream(columns).mapToDouble(n -> (double) n / animals).toArray();
        return new Readings(shares, rowShares, columnShares, animals);
    }

    int classes() {
        return shares.length;
    }

    double share(int i, int j) {
        return shares[i][j];
    }

    double row(int i) {
        return rows[i];
    }

    double column(int j) {
        return columns[j];
    }

    /** Weighted share observed. */
    double observed(Weight weight) {
        double sum = 0;
        for (int i = 0; i < classes(); i++) {
            for (int j = 0; j < classes(); j++) {
                sum += weight.of(i, j) * shares[i][j];
            }
        }
        return sum;
    }

    /** Weighted share expected from the margins. */
    double expected(Weight weight) {
        double sum = 0;
        for (int i = 0; i < classes(); i++) {
            for (int j = 0; j < classes(); j++) {
                sum += weight.of(i, j) * rows[i] * columns[j];
            }
        }
        return sum;
    }
}
