package org.dentary.jaw;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.Certainty;

/** What the readings of one animal, taken together, say of its age. Pure. */
final class JawReadings {
    /** Methods that look at the teeth in the jaw; only these stand without being designated. */
    static final Set<AgeingMethod> LOOK_AT_TEETH =
            EnumSet.of(AgeingMethod.TOOTH_REPLACEMENT, AgeingMethod.TOOTH_WEAR, AgeingMethod.TOOTH_ROW_LENGTH);

    private JawReadings() {}

    /**
     * What counts of one reading.
     *
     * @param countsAlone whether it stands without another reader's word
     */
    record Said(
            AgeingMethod method,
            AgeClass ageClass,
            Certainty certainty,
            boolean disputed,
            String examiner,
            boolean countsAlone) {
        static Said of(JawReadingView reading) {
            return new Said(
                    reading.method(),
                    reading.ageClass(),
                    reading.certainty(),
                    reading.disputed(),
                    reading.examiner(),
                    reading.countsAlone());
        }

        /** Whether it may stand beside the others: by itself, or because somebody else says the same. */
        boolean standsAmong(List<Said> others) {
            return canStand()
                    && (countsAlone
                            || others.stream()
                                    .anyMatch(other -> other.canStand()
                                            && !other.examiner.equals(examiner)
                                            && other.ageClass == ageClass));
        }

        boolean canStand() {
            return LOOK_AT_TEETH.contains(method)
                    && !disputed
                    && certainty != Certainty.UNRESOLVED
                    && ageClass != AgeClass.UNKNOWN;
        }
    }

    /** The class that reports count an animal in, and whether it waits for a decision. */
    record Standing(AgeClass ageClass, boolean disputed) {}

    /**
     * The designated age if there is one; else the first reading that is clear or probable, disputed where a later one
     * differs; else unknown, disputed where a reading contradicts itself. A reading by somebody whose readings do not count
     * alone stands only where another reader gives the same class.
     *
     * @param said in the order they were received
     * @param designated null for none
     */
    static Standing standing(List<Said> said, AgeClass designated) {
        if (designated != null) {
            return new Standing(designated, false);
        }
        List<AgeClass> standing = said.stream()
                .filter(one -> one.standsAmong(said))
                .map(Said::ageClass)
                .toList();
        boolean differ = said.stream()
                        .filter(Said::canStand)
                        .map(Said::ageClass)
                        .distinct()
                        .count()
                > 1;
        return standing.isEmpty()
                ? new Standing(AgeClass.UNKNOWN, differ || said.stream().anyMatch(Said::disputed))
                : new Standing(standing.get(0), differ);
    }
}
