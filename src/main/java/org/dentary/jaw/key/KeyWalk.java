package org.dentary.jaw.key;

import static org.dentary.jaw.key.Certainty.CLEAR;
import static org.dentary.jaw.key.Certainty.PROBABLE;
import static org.dentary.jaw.key.JawObservation.Eruption.NOT_ERUPTED;

import java.util.Optional;
import java.util.Set;
import org.dentary.jaw.key.JawObservation.Presence;
import org.dentary.jaw.key.JawObservation.RowSeen;
import org.dentary.jaw.key.KeyTrail.End;

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

    private final JawObservation jaw;
    private final KeyTrail trail;

    private KeyWalk(JawObservation jaw) {
        this.jaw = jaw;
        this.trail = new KeyTrail(jaw);
    }

    static End of(JawObservation jaw) {
        return new KeyWalk(jaw).rowSeen();
    }

    private End rowSeen() {
        if (jaw.isUnsure(KeyQuestion.ROW_SEEN.field()) || jaw.rowSeen() == RowSeen.FRONT_ONLY) {
            return trail.unresolved(KeyQuestion.ROW_SEEN, jaw.rowSeen(), "open the jaw to the back and count again");
        }
        trail.step(KeyQuestion.ROW_SEEN, jaw.rowSeen(), "Count the cheek teeth");
        return count();
    }

    private End count() {
        Integer count = jaw.teethCounted();
        if (count == null) {
            return trail.stop(KeyQuestion.CHEEK_TEETH, "count the cheek teeth again, sockets included");
        }
        Optional<Integer> hidden = jaw.teeth().stream()
                .filter(tooth -> tooth.position() != null && hides(tooth.position(), tooth.presence(), count))
                .map(JawObservation.ToothDetail::position)
                .sorted()
                .findFirst();
        if (hidden.isPresent()) {
            return trail.unresolved(
                    KeyQuestion.CHEEK_TEETH,
                    count,
                    "position " + hidden.get() + " cannot be read, and the key needs it; look at the other side");
        }
        if (count < 6 && jaw.isUnsure(KeyQuestion.SIXTH_ERUPTION.field())) {
            return trail.unresolved(
                    KeyQuestion.CHEEK_TEETH, count, "look behind the fifth tooth for the sixth (position 6, M3)");
        }
        trail.step(KeyQuestion.CHEEK_TEETH, count, "Look at the third tooth (position 3)");
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
            return count < 6
                    ? trail.unresolved(
                            KeyQuestion.THIRD_CUSPS,
                            KeyTrail.CAP,
                            "a premolar rising under its milk cap goes with six cheek teeth; look behind the fifth tooth")
                    : new SixTeeth(jaw, trail).milkCap(cusps);
        }
        if (cusps == null) {
            return trail.stop(KeyQuestion.THIRD_CUSPS, "count the cusps of the third tooth (position 3) again");
        }
        if (jaw.thirdEruption() == NOT_ERUPTED) {
            return trail.unresolved(
                    KeyQuestion.THIRD_CUSPS,
                    cusps,
                    "the third tooth (position 3) is said not to be through the gum; look which tooth was counted");
        }
        if (count < 6) {
            return cusps == 3
                    ? fawn()
                    : trail.unresolved(
                            KeyQuestion.THIRD_CUSPS,
                            cusps,
                            "a new third tooth (position 3, P4) goes with six cheek teeth; look behind the fifth tooth");
        }
        if (cusps == 3) {
            trail.step(KeyQuestion.THIRD_CUSPS, cusps, "Look for dentine on the sixth tooth (position 6, M3)");
            return new SixTeeth(jaw, trail).milkThird();
        }
        trail.step(KeyQuestion.THIRD_CUSPS, cusps, "See how far the third tooth (position 3, P4) is up");
        return new SixTeeth(jaw, trail).newThird();
    }

    private End fawn() {
        boolean fifthFull =
                jaw.tooth(5).filter(tooth -> tooth.presence() == Presence.FULL).isPresent();
        return fifthFull
                ? trail.end(
                        KeyQuestion.THIRD_CUSPS,
                        3,
                        KeyClass.FAWN,
                        PROBABLE,
                        "the fifth tooth is fully up: look behind it for the sixth (position 6, M3)")
                : trail.end(KeyQuestion.THIRD_CUSPS, 3, KeyClass.FAWN, CLEAR, null);
    }
}
