package org.dentary.jaw;

import static org.dentary.jaw.AgeingMethod.CEMENTUM;
import static org.dentary.jaw.AgeingMethod.REPORTED_BY_HUNTER;
import static org.dentary.jaw.AgeingMethod.TOOTH_REPLACEMENT;
import static org.dentary.jaw.key.AgeClass.ADULT;
import static org.dentary.jaw.key.AgeClass.FAWN;
import static org.dentary.jaw.key.AgeClass.UNKNOWN;
import static org.dentary.jaw.key.AgeClass.YEARLING;
import static org.dentary.jaw.key.Certainty.CLEAR;
import static org.dentary.jaw.key.Certainty.PROBABLE;
import static org.dentary.jaw.key.Certainty.UNRESOLVED;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.dentary.jaw.JawReadings.Said;
import org.dentary.jaw.JawReadings.Standing;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.Certainty;
import org.junit.jupiter.api.Test;

class JawReadingsTest {
    private static final Said YEARLING_CLEAR = said(TOOTH_REPLACEMENT, YEARLING, CLEAR, false);
    private static final Said ADULT_PROBABLE = said(TOOTH_REPLACEMENT, ADULT, PROBABLE, false);
    private static final Said REFUSED = said(TOOTH_REPLACEMENT, UNKNOWN, UNRESOLVED, true);
    private static final Said UNRESOLVED_ONE = said(TOOTH_REPLACEMENT, UNKNOWN, UNRESOLVED, false);

    @Test
    void withoutAReadingTheAgeIsUnknownAndNotDisputed() {
        assertEquals(new Standing(UNKNOWN, false), JawReadings.standing(List.of(), null));
        assertEquals(new Standing(UNKNOWN, false), JawReadings.standing(List.of(UNRESOLVED_ONE), null));
    }

    @Test
    void theFirstClearOrProbableReadingStands() {
        assertEquals(new Standing(ADULT, false), JawReadings.standing(List.of(UNRESOLVED_ONE, ADULT_PROBABLE), null));
        assertEquals(new Standing(YEARLING, false), JawReadings.standing(List.of(REFUSED, YEARLING_CLEAR), null));
    }

    @Test
    void aDifferingReadingDisputesTheAgeUntilItIsDesignated() {
        assertEquals(new Standing(YEARLING, true), JawReadings.standing(List.of(YEARLING_CLEAR, ADULT_PROBABLE), null));
        assertEquals(new Standing(ADULT, false), JawReadings.standing(List.of(YEARLING_CLEAR, ADULT_PROBABLE), ADULT));
        assertEquals(
                new Standing(YEARLING, false), JawReadings.standing(List.of(YEARLING_CLEAR, YEARLING_CLEAR), null));
    }

    @Test
    void aReadingThatContradictsItselfLeavesTheAgeUnknownAndDisputed() {
        assertEquals(new Standing(UNKNOWN, true), JawReadings.standing(List.of(REFUSED), null));
    }

    @Test
    void anotherMethodNeverStandsUnlessItIsDesignated() {
        Said cementum = said(CEMENTUM, ADULT, CLEAR, false);
        Said reported = said(REPORTED_BY_HUNTER, FAWN, PROBABLE, false);
        assertEquals(new Standing(UNKNOWN, false), JawReadings.standing(List.of(cementum, reported), null));
        assertEquals(new Standing(YEARLING, false), JawReadings.standing(List.of(cementum, YEARLING_CLEAR), null));
        assertEquals(new Standing(ADULT, false), JawReadings.standing(List.of(cementum, YEARLING_CLEAR), ADULT));
    }

    @Test
    void aReadingThatDoesNotCountAloneStandsOnlyWithAnotherReadersWord() {
        Said learner = new Said(TOOTH_REPLACEMENT, YEARLING, CLEAR, false, "LEARNER", false);
        Said himselfAgain = new Said(TOOTH_REPLACEMENT, YEARLING, CLEAR, false, "LEARNER", false);
        Said same = new Said(TOOTH_REPLACEMENT, YEARLING, PROBABLE, false, "OTHER", true);
        Said differs = new Said(TOOTH_REPLACEMENT, ADULT, CLEAR, false, "OTHER", true);
        Said learnerToo = new Said(TOOTH_REPLACEMENT, YEARLING, CLEAR, false, "OTHER", false);
        assertEquals(new Standing(UNKNOWN, false), JawReadings.standing(List.of(learner), null));
        assertEquals(new Standing(UNKNOWN, false), JawReadings.standing(List.of(learner, himselfAgain), null));
        assertEquals(new Standing(YEARLING, false), JawReadings.standing(List.of(learner, same), null));
        assertEquals(new Standing(YEARLING, false), JawReadings.standing(List.of(learner, learnerToo), null));
        assertEquals(new Standing(ADULT, true), JawReadings.standing(List.of(learner, differs), null));
    }

    private static Said said(AgeingMethod method, AgeClass ageClass, Certainty certainty, boolean disputed) {
        return new Said(method, ageClass, certainty, disputed, "SOMEBODY", true);
    }
}
