package org.dentary.statistics.comparison;

import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * Two groups by detected or not: {@code a} of {@code a + b} in the first, {@code c} of {@code c + d} in the second. Counts are 0 or more,
 * at most a million in a group.
 */
record TwoByTwo(int a, int b, int c, int d) {

    static TwoByTwo of(int detected1, int tested1, int detected2, int tested2) {
        atMost("tested1", tested1);
        atMost("tested2", tested2);
        Domain.counts("detected1", detected1, "tested1", tested1);
        Domain.counts("detected2", detected2, "tested2", tested2);
        return new TwoByTwo(detected1, tested1 - detected1, detected2, tested2 - detected2);
    }

    private static void atMost(String field, int tested) {
        if (tested > TwoProportions.MOST_TESTED) {
            throw new OutOfDomain(field, tested, "must not exceed 1,000,000");
        }
    }

    double n1() {
        return (double) a + b;
    }

    double n2() {
        return (double) c + d;
    }

    double detected() {
        return (double) a + c;
    }

    double notDetected() {
        return (double) b + d;
    }

    double total() {
        return n1() + n2();
    }

    /** ad / bc; null when both products are 0, infinite when only the second is. */
    Double oddsRatio() {
        double ad = (double) a * d;
        double bc = (double) b * c;
        return ad == 0 && bc == 0 ? null : Double.valueOf(ad / bc);
    }

    boolean allMarginsPositive() {
        return n1() > 0 && n2() > 0 && detected() > 0 && notDetected() > 0;
    }

    long[][] cells() {
        return new long[][] {{a, b}, {c, d}};
    }
}
