package org.dentary.submission.packing;

import java.time.LocalDate;
import java.util.List;

/**
 * What decides whether a specimen may be packed, or may leave.
 *
 * @param collectedOn the station's day
 * @param keptSince the day since which it is in its preservation, on the station's clock
 * @param ageClass the age that stands
 * @param openElsewhere number of another submission that holds it and was not received yet, or null
 * @param here whether it is in this submission
 * @param on the station's day on which it is packed, or leaves
 * @param enteredInError whether its animal is
 * @param lastKind the last that custody tells of it, or null
 * @param passed names of the rules that a reason passed when it was packed; {@code *} for all of them
 */
public record PackingFacts(
        String code,
        String kit,
        String tissue,
        String side,
        String preservation,
        String condition,
        LocalDate collectedOn,
        LocalDate keptSince,
        String ageClass,
        String sex,
        Boolean archived,
        Boolean excluded,
        Long openElsewhere,
        Boolean here,
        LocalDate on,
        Boolean enteredInError,
        String lastKind,
        String passed) {
    /** Whether a reason passed that rule when it was packed. */
    boolean isPassed(String rule) {
        return passed != null
                && (passed.equals("*") || List.of(passed.split(" ")).contains(rule));
    }
}
