package org.dentary.statistics;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.rootfinder.BrentSolver;

/** Root finding with the tolerances this package promises: about 1e-14 relative. */
public final class Roots {

    private static final BrentSolver BRENT = new BrentSolver(1e-15, 1e-300, Double.MIN_NORMAL);

    private Roots() {}

    /** The root of {@code function} in [{@code low}, {@code high}], whose ends must differ in sign or be roots themselves. */
    public static double between(DoubleUnaryOperator function, double low, double high) {
        if (function.applyAsDouble(low) == 0) {
            return low;
        }
        if (function.applyAsDouble(high) == 0) {
            return high;
        }
        return BRENT.findRoot(function, low, high);
    }
}
