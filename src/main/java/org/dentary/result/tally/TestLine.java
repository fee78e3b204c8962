package org.dentary.result.tally;

import java.time.LocalDate;

/**
 * One reported test, to find it on an invoice.
 *
 * @param as TEST, UNSUITABLE, INVALID_RUN, NOT_TESTED, CANCELLED or CORRECTION: what it counts as
 * @param specimens labels of the tubes, apart by a blank
 */
public record TestLine(
        String laboratory,
        String performedBy,
        String accession,
        String item,
        String method,
        String stage,
        String as,
        LocalDate testedOn,
        LocalDate reportedOn,
        String run,
        String specimens) {}
