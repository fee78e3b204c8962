package org.dentary.jaw;

import static org.dentary.jaw.Certainty.CLEAR;
import static org.dentary.jaw.Certainty.PROBABLE;
import static org.dentary.jaw.JawObservation.Dentine.DEFINED;
import static org.dentary.jaw.JawObservation.Dentine.NOT_EXPOSED;
import static org.dentary.jaw.JawObservation.Dentine.TRACE;
import static org.dentary.jaw.JawObservation.Eruption.ERUPTING;
import static org.dentary.jaw.JawObservation.Eruption.FULL;
import static org.dentary.jaw.JawObservation.Eruption.NOT_ERUPTED;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.dentary.jaw.JawAnswer.Step;
import org.dentary.jaw.JawObservation.Dentine;
import org.dentary.jaw.JawObservation.Eruption;
import org.dentary.jaw.JawObservation.Presence;
import org.dentary.jaw.JawObservation.RowSeen;

/**
 * One walk down the key, question by question, until a class, an answer that allows none, or a field that was not given.
 *
 * <p>Common practice, no single source: fewer than six cheek teeth and a three-cusped third tooth, a fawn; six, a three-cusped
 * third and no dentine on the sixth, a yearling with the milk premolar; six, a two-cusped third and no dentine on third or
 * sixth, a yearling with the new premolar; six, third and sixth fully up, both with a defined line, an adult. Only these are
 * {@code CLEAR}.
 */
final class KeyWalk {

    private static final Set<Presence> UNREADABLE =
            Set.of(Presence.LOST_IN_LIFE, Presence.BROKEN, Presence.MISSING_CONGENITAL, Presence.NOT_VISIBLE);

    private static final String CAP = "CAP";
    private static final String LOOK_AT_SIXTH = "look again at the sixth tooth (position 6, M3)";
    private static final String LOOK_AT_THIRD_CREST = "look again at the crest of the third tooth (position 3, P4)";

    private final JawObservation jaw;
    private final List<Step> steps = new ArrayList<>();

    private KeyWalk(JawObservation jaw) {
        this.jaw = jaw;
    }

    /**
     * Where a walk ended.
     *
     * @param keyClass null when no class follows
     * @param label class or advice in words
     * @param missing the question whose field was not given; null when the walk reached an end
     */
    record End(KeyClass keyClass, Certainty certainty, String label, List<Step> steps, KeyQuestion missing) {}

    static End of(JawObservation jaw) {
        return new KeyWalk(jaw).rowSeen();
    }

    private End rowSeen() {
        if (jaw.isUnsure(KeyQuestion.ROW_SEEN.field()) || jaw.rowSeen() == RowSeen.FRONT_ONLY) {
            return unresolved(KeyQuestion.ROW_SEEN, jaw.rowSeen(), "open the jaw to the back and count again");
        }
        step(KeyQuestion.ROW_SEEN, jaw.rowSeen(), "Count the cheek teeth");
        return count();
    }

    private End count() {
        Integer count = jaw.teethCounted();
        if (count == null) {
            return stop(KeyQuestion.CHEEK_TEETH, "count the cheek teeth again, sockets included");
        }
        Optional<Integer> hidden = jaw.teeth().stream()
                .filter(tooth -> tooth.position() != null && hides(tooth.position(), tooth.presence(), count))
                .map(JawObservation.ToothDetail::position)
                .sorted()
                .findFirst();
        if (hidden.isPresent()) {
            return unresolved(
                    KeyQuestion.CHEEK_TEETH,
                    count,
                    "position " + hidden.get() + " cannot be read, and the key needs it; look at the other side");
        }
        if (count < 6 && jaw.isUnsure(KeyQuestion.SIXTH_ERUPTION.field())) {
            return unresolved(
                    KeyQuestion.CHEEK_TEETH, count, "look behind the fifth tooth for the sixth (position 6, M3)");
        }
        step(KeyQuestion.CHEEK_TEETH, count, "Look at the third tooth (position 3)");
        return cusps(count);
    }

    /** A tooth that cannot be read matters at 3 and 6, and anywhere when it may hide that the row is full. */
    private static boolean hides(int position, Presence presence, int count) {
        boolean deciding = position == 3 || position == 6;
        return UNREADABLE.contains(presence == null ? Presence.FULL : presence)
                && (deciding
                        || (count < 6
                                && (presence == Presence.NOT_VISIBLE || presence == Presence.MISSING_CONGENITAL)));
    }

    private End cusps(int count) {
        Integer cusps = jaw.thirdCusps();
        if (jaw.milkCapLoose()) {
            return milkCap(count, cusps);
        }
        if (cusps == null) {
            return stop(KeyQuestion.THIRD_CUSPS, "count the cusps of the third tooth (position 3) again");
        }
        if (jaw.thirdEruption() == NOT_ERUPTED) {
            return unresolved(
                    KeyQuestion.THIRD_CUSPS,
                    cusps,
                    "the third tooth (position 3) is said not to be through the gum; look which tooth was counted");
        }
        if (count < 6) {
            return cusps == 3
                    ? fawn()
                    : unresolved(
                            KeyQuestion.THIRD_CUSPS,
                            cusps,
                            "a new third tooth (position 3, P4) goes with six cheek teeth; look behind the fifth tooth");
        }
        if (cusps == 3) {
            step(KeyQuestion.THIRD_CUSPS, cusps, "Look for dentine on the sixth tooth (position 6, M3)");
            return milkThird();
        }
        step(KeyQuestion.THIRD_CUSPS, cusps, "See how far the third tooth (position 3, P4) is up");
        return newThird();
    }

    private End fawn() {
        boolean fifthFull =
                jaw.tooth(5).filter(tooth -> tooth.presence() == Presence.FULL).isPresent();
        return fifthFull
                ? end(
                        KeyQuestion.THIRD_CUSPS,
                        3,
                        KeyClass.FAWN,
                        PROBABLE,
                        "the fifth tooth is fully up: look behind it for the sixth (position 6, M3)")
                : end(KeyQuestion.THIRD_CUSPS, 3, KeyClass.FAWN, CLEAR, null);
    }

    private End milkCap(int count, Integer cusps) {
        if (count < 6) {
            return unresolved(
                    KeyQuestion.THIRD_CUSPS,
                    CAP,
                    "a premolar rising under its milk cap goes with six cheek teeth; look behind the fifth tooth");
        }
        if (cusps != null && cusps == 2) {
            if (jaw.thirdEruption() == FULL || worn(jaw.thirdDentine())) {
                return unresolved(
                        KeyQuestion.THIRD_CUSPS,
                        CAP,
                        "no cap sits on a third tooth (position 3) that is up and in wear");
            }
            boolean fresh = jaw.thirdDentine() == NOT_EXPOSED && jaw.sixthDentine() == NOT_EXPOSED;
            return end(
                    KeyQuestion.THIRD_CUSPS, CAP, KeyClass.YEARLING_NEW_THIRD, fresh ? CLEAR : PROBABLE, LOOK_AT_SIXTH);
        }
        if (cusps == null) {
            return end(
                    KeyQuestion.THIRD_CUSPS,
                    CAP,
                    KeyClass.YEARLING_MILK_THIRD,
                    PROBABLE,
                    "lift the cap and count the cusps of the third tooth (position 3)");
        }
        step(KeyQuestion.THIRD_CUSPS, CAP, "Look for dentine on the sixth tooth (position 6, M3)");
        Dentine sixth = jaw.sixthDentine();
        if (sixth == null && !jaw.isUnsure(KeyQuestion.SIXTH_DENTINE.field())) {
            return missing(KeyQuestion.SIXTH_DENTINE);
        }
        return end(
                KeyQuestion.SIXTH_DENTINE,
                sixth,
                KeyClass.YEARLING_MILK_THIRD,
                sixth == NOT_EXPOSED ? CLEAR : PROBABLE,
                "look again at the third and sixth teeth (positions 3 and 6)");
    }

    private End milkThird() {
        Dentine sixth = jaw.sixthDentine();
        if (sixth == null) {
            return stop(KeyQuestion.SIXTH_DENTINE, LOOK_AT_SIXTH);
        }
        return switch (sixth) {
            case NOT_EXPOSED ->
                jaw.isUnsure(KeyQuestion.SIXTH_ERUPTION.field())
                        ? end(
                                KeyQuestion.SIXTH_DENTINE,
                                sixth,
                                KeyClass.YEARLING_MILK_THIRD,
                                PROBABLE,
                                "make sure that the sixth tooth (position 6, M3) is through")
                        : end(KeyQuestion.SIXTH_DENTINE, sixth, KeyClass.YEARLING_MILK_THIRD, CLEAR, null);
            case TRACE -> end(KeyQuestion.SIXTH_DENTINE, sixth, KeyClass.YEARLING_MILK_THIRD, PROBABLE, LOOK_AT_SIXTH);
            case DEFINED ->
                unresolved(
                        KeyQuestion.SIXTH_DENTINE,
                        sixth,
                        "a worn sixth tooth does not go with a milk third; look again at positions 3 and 6");
        };
    }

    private End newThird() {
        Eruption third = jaw.thirdEruption();
        boolean unsure = jaw.isUnsure(KeyQuestion.THIRD_ERUPTION.field());
        if (third == null && !unsure) {
            return missing(KeyQuestion.THIRD_ERUPTION);
        }
        step(KeyQuestion.THIRD_ERUPTION, third, "Look for dentine on the third tooth (position 3, P4)");
        Dentine thirdDentine = jaw.thirdDentine();
        if (thirdDentine == null) {
            return stop(KeyQuestion.THIRD_DENTINE, LOOK_AT_THIRD_CREST);
        }
        if (thirdDentine == DEFINED && third == ERUPTING) {
            return unresolved(
                    KeyQuestion.THIRD_DENTINE,
                    thirdDentine,
                    "a tooth still coming up has no worn line; look again at the third tooth (position 3, P4)");
        }
        step(KeyQuestion.THIRD_DENTINE, thirdDentine, "Look for dentine on the sixth tooth (position 6, M3)");
        Dentine sixthDentine = jaw.sixthDentine();
        if (sixthDentine == null) {
            return stop(KeyQuestion.SIXTH_DENTINE, LOOK_AT_SIXTH);
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
        return unresolved(
                KeyQuestion.SIXTH_DENTINE,
                sixthWear,
                third == null && thirdWear == DEFINED
                        ? "see how far the third tooth (position 3, P4) is up"
                        : "the wear of the two teeth does not go together; look again at positions 3 and 6");
    }

    private End sixth(Dentine wear, KeyClass keyClass, Certainty certainty, String advice) {
        return end(KeyQuestion.SIXTH_DENTINE, wear, keyClass, certainty, advice);
    }

    private End needsSixthUp(Certainty certainty, String advice) {
        Eruption sixth = jaw.sixthEruption();
        if (sixth == null && !jaw.isUnsure(KeyQuestion.SIXTH_ERUPTION.field())) {
            return missing(KeyQuestion.SIXTH_ERUPTION);
        }
        step(KeyQuestion.SIXTH_DENTINE, DEFINED, "See how far the sixth tooth (position 6, M3) is up");
        if (sixth == null) {
            return unresolved(KeyQuestion.SIXTH_ERUPTION, null, LOOK_AT_SIXTH);
        }
        return sixth == FULL
                ? end(KeyQuestion.SIXTH_ERUPTION, sixth, KeyClass.ADULT, certainty, advice)
                : end(
                        KeyQuestion.SIXTH_ERUPTION,
                        sixth,
                        KeyClass.ADULT,
                        PROBABLE,
                        "a worn tooth is seldom still coming up: look again at the sixth (position 6, M3)");
    }

    private static boolean worn(Dentine dentine) {
        return dentine == TRACE || dentine == DEFINED;
    }

    private void step(KeyQuestion question, Object answer, String leadsTo) {
        boolean said = answer != null && (CAP.equals(answer) || !jaw.isUnsure(question.field()));
        String words = said ? question.words(answer) : "Unsure";
        steps.add(new Step(question.question(), words, leadsTo));
    }

    /** An unsure answer ends the walk without a class; a field not given ends it with the question. */
    private End stop(KeyQuestion question, String advice) {
        return jaw.isUnsure(question.field()) ? unresolved(question, null, advice) : missing(question);
    }

    private End missing(KeyQuestion question) {
        return new End(null, Certainty.UNRESOLVED, null, steps, question);
    }

    private End unresolved(KeyQuestion question, Object answer, String advice) {
        String label = "Not determined: " + advice;
        step(question, answer, label);
        return new End(null, Certainty.UNRESOLVED, label, steps, null);
    }

    private End end(KeyQuestion question, Object answer, KeyClass keyClass, Certainty certainty, String advice) {
        step(question, answer, certainty == CLEAR ? keyClass.label() : "Probably: " + keyClass.label() + "; " + advice);
        return new End(keyClass, certainty, keyClass.label(), steps, null);
    }
}
