package org.dentary.result.tally;

/**
 * Tests of one laboratory by method, stage and month of report. A homogenate or a pool is one test; a report still preliminary and its
 * final one are one test; a correction is none.
 *
 * @param laboratory that reported
 * @param performedBy that made the test; the same where the report names no other
 * @param month of the report, such as 2026-11
 * @param tests reported, and not cancelled, not tested or corrections; unsuitable tissue and invalid runs among them
 * @param unsuitable of those, tissue that could not be read
 * @param invalidRuns of those, runs that failed
 * @param notTested reported as not tested; not in {@code tests}
 * @param cancelled cancelled; not in {@code tests}
 * @param corrections of earlier reports; not in {@code tests}
 * @param specimens tubes that those tests took
 * @param accessions different accession numbers
 */
public record TestCount(
        String laboratory,
        String performedBy,
        String method,
        String stage,
        String month,
        Long tests,
        Long unsuitable,
        Long invalidRuns,
        Long notTested,
        Long cancelled,
        Long corrections,
        Long specimens,
        Long accessions) {}
