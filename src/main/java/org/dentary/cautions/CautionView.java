package org.dentary.cautions;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.LocalDate;
import java.util.List;

/**
 * A caution in force.
 *
 * @param name the caution's code in words
 * @param disease code of the disease it is about, or null for every disease
 * @param hazards where it is shown
 * @param authority whose written instructions stand above it
 * @param reviewed whether a named person of this program reviewed it; until then it is shown as not reviewed locally
 * @param reviewBy day by which it is to be reviewed again, or null
 * @param overdue whether that day has passed
 */
public record CautionView(
        String code,
        String name,
        String version,
        String disease,
        List<String> hazards,
        String text,
        String authority,
        boolean reviewed,
        String reviewedBy,
        LocalDate reviewedOn,
        LocalDate reviewBy,
        boolean overdue) {
    public CautionView {
        hazards = List.copyOf(hazards);
    }

    /** The steps at which it is shown, in words. */
    @JsonIgnore
    public List<String> hazardWords() {
        return hazards.stream().map(hazard -> Hazard.valueOf(hazard).words()).toList();
    }

    boolean isShownAt(Hazard hazard) {
        return hazards.contains(hazard.name());
    }
}
