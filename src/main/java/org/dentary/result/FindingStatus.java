package org.dentary.result;

/** How settled a finding is; {@code CORRECTED} is a final one that replaces another. */
public enum FindingStatus {
    PRELIMINARY,
    FINAL,
    CORRECTED,
    CANCELLED;

    public boolean isFinal() {
        return this == FINAL || this == CORRECTED;
    }
}
