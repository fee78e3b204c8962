package org.dentary.jaw.key;

import com.fasterxml.jackson.annotation.JsonValue;

/** Age at an autumn harvest in years, half a year after the birthday; written {@code 0.5} to {@code 5.5}, {@code 6.5_PLUS}. */
public enum YearClass {
    HALF("0.5", AgeClass.FAWN),
    ONE_AND_HALF("1.5", AgeClass.YEARLING),
    TWO_AND_HALF("2.5", AgeClass.ADULT),
    THREE_AND_HALF("3.5", AgeClass.ADULT),
    FOUR_AND_HALF("4.5", AgeClass.ADULT),
    FIVE_AND_HALF("5.5", AgeClass.ADULT),
    SIX_AND_HALF_PLUS("6.5_PLUS", AgeClass.ADULT);

    private final String code;
    private final AgeClass ageClass;

    YearClass(String code, AgeClass ageClass) {
        this.code = code;
        this.ageClass = ageClass;
    }

    /** The code used in JSON and files. */
    @JsonValue
    public String code() {
        return code;
    }

    /** The age class it belongs to. */
    public AgeClass ageClass() {
        return ageClass;
    }
}
