package org.dentary.plan;

/**
 * A species that may be sampled.
 *
 * @param keyReviewed whether the jaw key was reviewed for it; without that the key ages none of its jaws
 */
public record SpeciesView(String code, String name, boolean keyReviewed) {}
