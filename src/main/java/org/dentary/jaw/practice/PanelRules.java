package org.dentary.jaw.practice;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.jaw.AgeingMethod;
import org.dentary.jaw.JawReadingView;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.Certainty;
import org.dentary.jaw.practice.PracticeView.JawKind;

/** Which animal's jaw may measure readers, and by what class. Pure. */
final class PanelRules {
    private static final Set<AgeingMethod> OF_TEETH =
            Set.of(AgeingMethod.TOOTH_REPLACEMENT, AgeingMethod.TOOTH_WEAR, AgeingMethod.TOOTH_ROW_LENGTH);
    private static final int AGREEING = 2;

    private PanelRules() {}

    /** What a jaw is on the panel. */
    record Standard(JawKind kind, AgeClass ageClass, String source) {}

    /**
     * The class of a known-age mark; else the class that at least two persons gave, one of them blind, and nobody against
     * them.
     *
     * @param readings of one animal, in the order they were received
     * @return empty where the animal's jaw is neither
     */
    static Optional<Standard> standard(List<JawReadingView> readings) {
        Set<AgeClass> marks = readings.stream()
                .filter(reading -> reading.method() == AgeingMethod.KNOWN_AGE_MARK)
                .map(JawReadingView::ageClass)
                .filter(ageClass -> ageClass != AgeClass.UNKNOWN)
                .collect(Collectors.toSet());
        if (marks.size() == 1) {
            return Optional.of(new Standard(JawKind.KNOWN_AGE, marks.iterator().next(), "Age known from a mark"));
        }
        List<JawReadingView> ofTeeth = readings.stream()
                .filter(reading -> OF_TEETH.contains(reading.method()))
                .toList();
        Set<AgeClass> classes = ofTeeth.stream().map(JawReadingView::ageClass).collect(Collectors.toSet());
        long persons = ofTeeth.stream().map(JawReadingView::examiner).distinct().count();
        boolean sure = ofTeeth.stream()
                .noneMatch(reading -> reading.disputed() || reading.certainty() == Certainty.UNRESOLVED);
        boolean blind = ofTeeth.stream().anyMatch(JawReadingView::blind);
        if (!marks.isEmpty() || classes.size() != 1 || persons < AGREEING || !sure || !blind) {
            return Optional.empty();
        }
        return Optional.of(new Standard(
                JawKind.AGREED,
                classes.iterator().next(),
                "Agreed by " + persons + " readers, one blind at least; not known"));
    }
}
