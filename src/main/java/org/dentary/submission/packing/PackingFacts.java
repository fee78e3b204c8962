package org.dentary.submission.packing;

import java.time.LocalDate;

/**
 * What decides whether a specimen may be packed.
 *
 * @param collectedOn the station's day
 * @param keptSince the day since which it is in its preservation, on the station's clock
 * @param ageClass the age that stands
 * @param openElsewhere number of another submission that holds it and was not received yet, or null
 * @param here whether it is in this submission
 * @param packedOn the station's day on which it is packed
 */
public record PackingFacts(
        String code,
        String kit,
        String tissue,
        String side,
        String preservation,
        String condition,
        LocalDate collectedOn,
        LocalDate keptSince,
        String ageClass,
        String sex,
        Boolean archived,
        Boolean excluded,
        Long openElsewhere,
        Boolean here,
        LocalDate packedOn) {}
