package org.dentary.prevalence.comparison;

/** The comparisons that are made, in the order in which they are told. */
public enum ComparisonKind {
    SEX_WITHIN_AGE_CLASS("Sexes within each age class"),
    SEX_ADJUSTED_FOR_AGE("Sexes, adjusted for age class"),
    AGE_ADJUSTED_FOR_SEX("Age classes, adjusted for sex"),
    AGE_TREND("Trend with age"),
    SEASONS_CRUDE("Seasons, as counted"),
    SEASONS_ADJUSTED("Seasons, adjusted for age class and sex"),
    STANDARDIZED("Standardized to the herd"),
    SEASONS_STANDARDIZED("Seasons, standardized to the herd");

    private final String words;

    ComparisonKind(String words) {
        this.words = words;
    }

    /** The heading above its results. */
    public String words() {
        return words;
    }
}
