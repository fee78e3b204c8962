package org.dentary.story.dossier;

import java.time.Instant;
import java.time.LocalDate;

/**
 * What a label is and what it came from; of a box, or of a label whose animal is not taken in yet, only the label. Names,
 * not codes, except kits and labels. Who hunted the animal and where exactly is not here.
 *
 * @param kitPrinted the kit that the label was printed for
 * @param kitBound the kit that what is under it belongs to; another one where a swap was put right
 * @param zone time zone of the station that the animal was taken in at, else that the label was issued to
 * @param parent code of the specimen that it was cut from, or null
 * @param swapOpen whether a swapped label of the animal is unresolved
 * @param sameAs kit of the same animal that is counted instead, or null
 * @param collectionRoute how the animal reached the program, or null
 */
public record Identity(
        String code,
        String part,
        String kitPrinted,
        String kitBound,
        Boolean voided,
        String issuedTo,
        String parent,
        String tissue,
        String tissueText,
        String side,
        String condition,
        String preservation,
        Instant collectedAt,
        String collectedBy,
        String species,
        String sex,
        LocalDate diedOn,
        String diedOnPrecision,
        String unit,
        String station,
        String zone,
        String season,
        Boolean swapOpen,
        Boolean enteredInError,
        String sameAs,
        String collectionRoute) {

    public boolean isBox() {
        return part.equals("BOX");
    }

    /** Whether it was left at a drop-off, by somebody who is not recorded. */
    public boolean isDroppedOff() {
        return "DROP_OFF".equals(collectionRoute) && parent == null;
    }

    public boolean isSpecimen() {
        return tissue != null;
    }

    public boolean isTakenIn() {
        return species != null;
    }

    /** Whether what is under the label belongs to another kit than the label was printed for. */
    public boolean isReAttributed() {
        return !kitPrinted.equals(kitBound);
    }
}
