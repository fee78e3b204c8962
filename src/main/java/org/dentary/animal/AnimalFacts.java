package org.dentary.animal;

import java.time.LocalDate;
import java.util.List;

/**
 * What is known of an animal apart from its teeth and tissue.
 *
 * @param species code of the plan
 * @param diedOn day of death in the station's time zone; null when unknown, then with a reason
 * @param unit management unit code; null when unknown
 * @param station where it was taken in
 * @param jawReason why the jaw was not examined
 * @param enteredInError whether this kit should never have been entered; it stays and counts nowhere
 */
public record AnimalFacts(
        String species,
        Origin origin,
        Sex sex,
        SexEvidence sexEvidence,
        LocalDate diedOn,
        DiedOnPrecision diedOnPrecision,
        String diedOnReason,
        String unit,
        String station,
        MortalitySource mortalitySource,
        CollectionRoute collectionRoute,
        ClinicalSigns clinicalSigns,
        SamplingBasis samplingBasis,
        JawStatus jawStatus,
        String jawReason,
        AnimalDetails details,
        List<Identifier> identifiers,
        boolean enteredInError,
        String errorReason) {
    public AnimalFacts {
        details = details == null ? AnimalDetails.NONE : details;
        identifiers = identifiers == null ? List.of() : List.copyOf(identifiers);
    }
}
