package org.dentary.jaw.key;

import static org.dentary.jaw.key.Certainty.CLEAR;
import static org.dentary.jaw.key.Certainty.PROBABLE;
import static org.dentary.jaw.key.JawObservation.Dentine.DEFINED;
import static org.dentary.jaw.key.JawObservation.Dentine.NOT_EXPOSED;
import static org.dentary.jaw.key.JawObservation.Dentine.TRACE;
import static org.dentary.jaw.key.JawObservation.Eruption.ERUPTING;
import static org.dentary.jaw.key.JawObservation.Eruption.FULL;
import static org.dentary.jaw.key.KeyTrail.CAP;

import org.dentary.jaw.key.JawObservation.Dentine;
import org.dentary.jaw.key.JawObservation.Eruption;
import org.dentary.jaw.key.KeyTrail.End;

/** The rest of the walk where six cheek teeth are through: a yearling or an adult, by the third tooth and the wear of third and sixth. */
final class SixTeeth {
    private static final String LOOK_AT_SIXTH = "look again at the sixth tooth (position 6, M3)";
    private static final String LOOK_AT_THIRD_CREST = "look again at the crest of the third tooth (position 3, P4)";

    private final JawObservation jaw;
    private final KeyTrail trail;

    SixTeeth(JawObservation jaw, KeyTrail trail) {
        this.jaw = jaw;
        this.trail = trail;
    }

    /**
     * A loose milk cap over a rising premolar.
     *
     * @param cusps of the tooth under the cap; null when not counted
     */
    End milkCap(Integer cusps) {
        if (cusps != null && cusps == 2) {
            if (jaw.thirdEruption() == FULL || worn(jaw.thirdDentine())) {
                return trail.unresolved(
                        KeyQuestion.THIRD_CUSPS,
                        CAP,
                        "no cap sits on a third tooth (position 3) that is up and in wear");
            }
            boolean fresh = jaw.thirdDentine() == NOT_EXPOSED && jaw.sixthDentine() == NOT_EXPOSED;
            return trail.end(
                    KeyQuestion.THIRD_CUSPS, CAP, KeyClass.YEARLING_NEW_THIRD, fresh ? CLEAR : PROBABLE, LOOK_AT_SIXTH);
        }
        if (cusps == null) {
            return trail.end(
                    KeyQuestion.THIRD_CUSPS,
                    CAP,
                    KeyClass.YEARLING_MILK_THIRD,
                    PROBABLE,
                    "lift the cap and count the cusps of the third tooth (position 3)");
        }
        trail.step(KeyQuestion.THIRD_CUSPS, CAP, "Look for dentine on the sixth tooth (position 6, M3)");
        Dentine sixth = jaw.sixthDentine();
        if (sixth == null && !jaw.isUnsure(KeyQuestion.SIXTH_DENTINE.field())) {
            return trail.missing(KeyQuestion.SIXTH_DENTINE);
        }
        return trail.end(
                KeyQuestion.SIXTH_DENTINE,
                sixth,
                KeyClass.YEARLING_MILK_THIRD,
                sixth == NOT_EXPOSED ? CLEAR : PROBABLE,
                "look again at the third and sixth teeth (positions 3 and 6)");
    }

    /** A three-cusped third tooth. */
    End milkThird() {
        Dentine sixth = jaw.sixthDentine();
        if (sixth == null) {
            return trail.stop(KeyQuestion.SIXTH_DENTINE, LOOK_AT_SIXTH);
        }
        return switch (sixth) {
            case NOT_EXPOSED ->
                jaw.isUnsure(KeyQuestion.SIXTH_ERUPTION.field())
                        ? trail.end(
                                KeyQuestion.SIXTH_DENTINE,
                                sixth,
                                KeyClass.YEARLING_MILK_THIRD,
                                PROBABLE,
                                "make sure that the sixth tooth (position 6, M3) is through")
                        : trail.end(KeyQuestion.SIXTH_DENTINE, sixth, KeyClass.YEARLING_MILK_THIRD, CLEAR, null);
            case TRACE ->
                trail.end(KeyQuestion.SIXTH_DENTINE, sixth, KeyClass.YEARLING_MILK_THIRD, PROBABLE, LOOK_AT_SIXTH);
            case DEFINED ->
                trail.unresolved(
                        KeyQuestion.SIXTH_DENTINE,
                        sixth,
                        "a worn sixth tooth does not go with a milk third; look again at positions 3 and 6");
        };
    }

    /** A two-cusped third tooth. */
    End newThird() {
        Eruption third = jaw.thirdEruption();
        boolean unsure = jaw.isUnsure(KeyQuestion.THIRD_ERUPTION.field());
        if (third == null && !unsure) {
            return trail.missing(KeyQuestion.THIRD_ERUPTION);
        }
        trail.step(KeyQuestion.THIRD_ERUPTION, third, "Look for dentine on the third tooth (position 3, P4)");
        Dentine thirdDentine = jaw.thirdDentine();
        if (thirdDentine == null) {
            return trail.stop(KeyQuestion.THIRD_DENTINE, LOOK_AT_THIRD_CREST);
        }
        if (thirdDentine == DEFINED && third == ERUPTING) {
            return trail.unresolved(
                    KeyQuestion.THIRD_DENTINE,
                    thirdDentine,
                    "a tooth still coming up has no worn line; look again at the third tooth (position 3, P4)");
        }
        trail.step(KeyQuestion.THIRD_DENTINE, thirdDentine, "Look for dentine on the sixth tooth (position 6, M3)");
        Dentine sixthDentine = jaw.sixthDentine();
        if (sixthDentine == null) {
            return trail.stop(KeyQuestion.SIXTH_DENTINE, LOOK_AT_SIXTH);
        }
        return newThird(third, thirdDentine, sixthDentine);
    }

    /** Six teeth and a two-cusped third: the wear of third and sixth together decides. */
    private End newThird(Eruption third, Dentine thirdWear, Dentine sixthWear) {
        if (thirdWear == NOT_EXPOSED && sixthWear == NOT_EXPOSED) {
            Certainty certainty = third == null ? PROBABLE : CLEAR;
            return sixth(
                    sixthWear,
                    KeyClass.YEARLING_NEW_THIRD,
                    certainty,
                    "see how far the third tooth (position 3, P4) is up");
        }
        if (thirdWear == NOT_EXPOSED && sixthWear == TRACE) {
            return sixth(sixthWear, KeyClass.YEARLING_NEW_THIRD, PROBABLE, LOOK_AT_SIXTH);
        }
        if (thirdWear == TRACE && sixthWear == NOT_EXPOSED) {
            return sixth(sixthWear, KeyClass.YEARLING_NEW_THIRD, PROBABLE, LOOK_AT_THIRD_CREST);
        }
        if (third == FULL && thirdWear == DEFINED && sixthWear == TRACE) {
            return sixth(sixthWear, KeyClass.ADULT, PROBABLE, LOOK_AT_SIXTH);
        }
        if (third == FULL && thirdWear != NOT_EXPOSED && sixthWear == DEFINED) {
            return needsSixthUp(thirdWear == DEFINED ? CLEAR : PROBABLE, LOOK_AT_THIRD_CREST);
        }
        return trail.unresolved(
                KeyQuestion.SIXTH_DENTINE,
                sixthWear,
                third == null && thirdWear == DEFINED
                        ? "see how far the third tooth (position 3, P4) is up"
                        : "the wear of the two teeth does not go together; look again at positions 3 and 6");
    }

    private End sixth(Dentine wear, KeyClass keyClass, Certainty certainty, String advice) {
        return trail.end(KeyQuestion.SIXTH_DENTINE, wear, keyClass, certainty, advice);
    }

    private End needsSixthUp(Certainty certainty, String advice) {
        Eruption sixth = jaw.sixthEruption();
        if (sixth == null && !jaw.isUnsure(KeyQuestion.SIXTH_ERUPTION.field())) {
            return trail.missing(KeyQuestion.SIXTH_ERUPTION);
        }
        trail.step(KeyQuestion.SIXTH_DENTINE, DEFINED, "See how far the sixth tooth (position 6, M3) is up");
        if (sixth == null) {
            return trail.unresolved(KeyQuestion.SIXTH_ERUPTION, null, LOOK_AT_SIXTH);
        }
        return sixth == FULL
                ? trail.end(KeyQuestion.SIXTH_ERUPTION, sixth, KeyClass.ADULT, certainty, advice)
                : trail.end(
                        KeyQuestion.SIXTH_ERUPTION,
                        sixth,
                        KeyClass.ADULT,
                        PROBABLE,
                        "a worn tooth is seldom still coming up: look again at the sixth (position 6, M3)");
    }

    private static boolean worn(Dentine dentine) {
        return dentine == TRACE || dentine == DEFINED;
    }
}
