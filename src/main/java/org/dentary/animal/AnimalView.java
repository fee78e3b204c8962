package org.dentary.animal;

import java.time.Instant;

/**
 * An animal as it stands.
 *
 * @param facts what is known of it
 * @param season season of the day of death; null when that is unknown
 * @param sameAs the kit that counts for this animal; null unless this kit is the duplicate
 * @param notAttributable whether a swapped label is unresolved
 * @param version changes with every correction of the facts
 */
public record AnimalView(
        String kit,
        AnimalFacts facts,
        String season,
        String sameAs,
        boolean notAttributable,
        String recordedBy,
        Instant recordedAt,
        int version) {}
