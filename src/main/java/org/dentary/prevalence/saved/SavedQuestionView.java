package org.dentary.prevalence.saved;

import java.time.Instant;

/**
 * A question with a name.
 *
 * @param season the season it was asked of; a run on a cut asks of the cut's
 * @param query everything said, without season and cut
 * @param withdrawn no longer offered
 */
public record SavedQuestionView(
        String id,
        String name,
        String season,
        String query,
        String madeBy,
        Instant madeAt,
        Boolean withdrawn,
        Integer version) {}
