package org.dentary.result;

import java.time.Instant;
import java.time.LocalDate;

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
        Boolean firstInUnit) {}
