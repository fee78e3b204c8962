package org.dentary.animal.line;

/**
 * The open line of an animal for one disease.
 *
 * @param derivedOutcome what the findings say; only for those who may see unreleased outcomes
 * @param outcome what is released
 * @param exclusion why it is counted nowhere; empty where it is
 */
public record LineView(
        String kit,
        String disease,
        String ageClass,
        boolean ageDisputed,
        boolean hasSpecimen,
        String derivedOutcome,
        String outcome,
        String footnotes,
        String exclusion) {}
