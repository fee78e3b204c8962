package org.dentary.prevalence.recheck;

import java.time.Instant;
import java.util.List;

/**
 * Stored answers computed again.
 *
 * @param release the service's version and its rules of reports
 * @param checkedBy who asked, or {@code service} after an upgrade
 * @param answers how many were computed again
 * @param unchecked how many are of another kind of report and were not
 * @param moved how many numbers differ
 * @param figures those numbers; empty in lists
 */
public record RecheckView(
        String id,
        String release,
        String checkedBy,
        Instant checkedAt,
        Integer answers,
        Integer unchecked,
        Integer moved,
        List<MovedFigure> figures) {
    /**
     * A number that moved.
     *
     * @param cut name of the data cut
     * @param question what was asked, RFC 8785
     * @param figure where it stands in the answer
     * @param stored as it was answered; null: none
     * @param computed as it would be answered now; null: none
     */
    public record MovedFigure(
            String cut, String question, String mediaType, String figure, String stored, String computed) {}
}
