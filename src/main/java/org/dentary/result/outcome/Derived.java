package org.dentary.result.outcome;

/**
 * What the rules make of an animal's findings for one disease.
 *
 * @param explanation which finding or lack decides, in words
 * @param review why a person should look, or null
 * @param footnotes codes separated by spaces ({@code POOL}, {@code SCREENING_ALONE}); empty for none
 */
record Derived(Outcome outcome, String explanation, String review, String footnotes) {}
