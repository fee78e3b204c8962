package org.dentary.animal;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;

/**
 * What describes the animal and enters no report, every part of it optional. Antlers never enter the age: they depend on
 * food and descent as well as on years.
 *
 * @param fieldDressedKilograms mass without the entrails
 * @param fetusMillimetres crown to rump length of the largest fetus
 * @param mortalitySourceText how it died, where no coded value says it
 * @param collectionRouteText how it reached us, where no coded value says it
 * @param managementUnitReason why the unit is not known
 * @param seenWith who saw the clinical signs and what was told to whom
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AnimalDetails(
        Antlers antlers,
        Integer antlerPoints,
        BigDecimal fieldDressedKilograms,
        Boolean lactating,
        Integer fetusMillimetres,
        String mortalitySourceText,
        String collectionRouteText,
        String managementUnitReason,
        String seenWith,
        String notes) {
    /** Nothing further known. */
    public static final AnimalDetails NONE =
            new AnimalDetails(null, null, null, null, null, null, null, null, null, null);
}
