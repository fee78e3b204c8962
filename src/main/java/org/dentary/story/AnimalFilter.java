package org.dentary.story;

/**
 * Which animals to list; null is "any".
 *
 * @param managementUnit code or {@code UNKNOWN}
 * @param q beginning of a kit or label code, or a whole other identifier
 * @param stations stations the reader is limited to; null for all
 */
public record AnimalFilter(
        String season,
        String station,
        String managementUnit,
        String sex,
        String ageClass,
        String outcome,
        String q,
        String[] stations) {}
