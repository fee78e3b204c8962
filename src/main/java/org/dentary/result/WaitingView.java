package org.dentary.result;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/** An animal that someone should look at. */
public record WaitingView(
        String kit,
        String disease,
        String derivedOutcome,
        String unit,
        String station,
        LocalDate diedOn,
        String explanation,
        String review,
        Instant since,
        Boolean firstInUnit) {
    /** The columns of a file of these. */
    public static final List<String> COLUMNS = List.of(
            "kit", "disease", "derived_outcome", "unit", "station", "died_on", "explanation", "review", "since");

    /** Its row in such a file. */
    public Object[] row() {
        return new Object[] {kit, disease, derivedOutcome, unit, station, diedOn, explanation, review, since};
    }
}
