package org.dentary.statistics;

/** The ways to put an interval on one proportion that this package offers. */
public enum IntervalMethod {
    /** The default: mean coverage near the level at every n; dips to about .84 where the true value is near 0.18/n. */
    WILSON("Wilson score", "Wilson 1927, J Am Stat Assoc 22:209-212"),
    /** Wilson's with a continuity correction. */
    WILSON_CORRECTED(
            "Wilson score with continuity correction",
            "Newcombe 1998, Stat Med 17:857-872 (method 4 of that comparison)"),
    /** Covers at least at the level whatever the truth; wide. */
    CLOPPER_PEARSON("Clopper-Pearson (exact)", "Clopper & Pearson 1934, Biometrika 26:404-413"),
    /** Equal-tailed Bayesian interval with Beta(1/2, 1/2), exactly 0 at none detected and 1 at all detected. */
    JEFFREYS("Jeffreys", "Brown, Cai & DasGupta 2001, Stat Sci 16:101-133"),
    /** Normal interval around the shifted proportion, clipped to [0, 1]. */
    AGRESTI_COULL("Agresti-Coull", "Agresti & Coull 1998, Am Stat 52:119-126"),
    /** Covers at least at the level like Clopper-Pearson and is never wider. */
    BLAKER("Blaker (exact)", "Blaker 2000, Can J Stat 28:783-798"),
    /** Clopper-Pearson with half the probability of what was seen in each tail. */
    MID_P("mid-P", "Berry & Armitage 1995, The Statistician 44:417; after Lancaster 1961");

    private final String label;
    private final String source;

    IntervalMethod(String label, String source) {
        this.label = label;
        this.source = source;
    }

    /** What a table's footnote calls it. */
    public String label() {
        return label;
    }

    /** The publication it comes from. */
    public String source() {
        return source;
    }
}
