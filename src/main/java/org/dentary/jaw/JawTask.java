package org.dentary.jaw;

import java.time.Instant;
import java.time.LocalDate;

/**
 * A jaw that somebody should do something about.
 *
 * @param task {@code READ}, {@code READ_AGAIN} (by someone who has not read it) or {@code DECIDE} (by a third person)
 * @param since when it came to be so
 * @param readers how many persons have read it
 * @param why reasons as codes, separated by spaces; none of them gives a class away
 */
public record JawTask(
        String kit,
        String task,
        Instant since,
        String season,
        String station,
        LocalDate diedOn,
        String jawStatus,
        int readers,
        String why) {}
