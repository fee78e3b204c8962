package org.dentary.codes.sheet;

import java.util.Locale;

/** The refusal of a label stock on which a code cannot be printed legibly, with the millimetres that are missing. */
public final class StockTooSmall extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final String stock;
    private final double missingMm;

    /**
     * @param stock the stock's code
     * @param what what does not fit, and in which direction
     * @param neededMm what it takes
     * @param givenMm what there is
     */
    StockTooSmall(String stock, String what, double neededMm, double givenMm) {
        super(String.format(
                Locale.ROOT,
                "Label stock %s cannot carry a legible code: %s takes %.2f mm and there are %.2f mm, so %.2f mm are missing.",
                stock,
                what,
                neededMm,
                givenMm,
                neededMm - givenMm));
        this.stock = stock;
        this.missingMm = neededMm - givenMm;
    }

    /** The stock's code. */
    public String stock() {
        return stock;
    }

    /** How much is missing, in millimetres, more than 0. */
    public double missingMm() {
        return missingMm;
    }
}
