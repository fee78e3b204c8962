package org.dentary.portal.day;

import java.time.LocalDate;
import java.util.List;

/**
 * A day at a station in numbers. Animals are those whose intake came in that day, jars the tissue taken that day from animals of the
 * station; what was entered in error is in neither.
 *
 * @param animals taken in
 * @param enteredInError entries of the day that count nowhere
 * @param numbered animals with a registration, tag or other number
 * @param withTissue animals of which any tissue is recorded
 * @param somebodyToTell animals of which a contact is kept
 * @param jawsRead animals whose jaw was read
 * @param jawsKept jaws kept to be read
 * @param jawsPhotographed jaws to be read from photos
 * @param photosKept of those, the ones of which a photo is kept
 * @param jawsNotExamined jaws not examined
 * @param jars tissue taken that day, pieces among it; not what was reported lost or destroyed since
 * @param jarsInBoxes of those, in a box and still with somebody here
 * @param jarsInStores in a store
 * @param jarsAway with a carrier, laboratory or other organization
 * @param jarsLoose with a person, in no box
 * @param gaps what does not add up, by kit
 */
public record StationDay(
        String station,
        LocalDate date,
        long animals,
        long enteredInError,
        long numbered,
        long withTissue,
        long somebodyToTell,
        long jawsRead,
        long jawsKept,
        long jawsPhotographed,
        long photosKept,
        long jawsNotExamined,
        long jars,
        long jarsInBoxes,
        long jarsInStores,
        long jarsAway,
        long jarsLoose,
        List<DayGap> gaps) {}
