package org.dentary.prevalence.cut;

import java.time.Instant;

/**
 * A dated cut of a season's line list.
 *
 * @param id UUID
 * @param supersededReason why it should no longer be used, or null
 * @param lines how many lines it holds
 * @param context what was still on its way when it was made
 */
public record DataCutView(
        String id,
        String season,
        String name,
        String madeBy,
        Instant madeAt,
        String supersededReason,
        Integer version,
        Long lines,
        CutContext context) {}
