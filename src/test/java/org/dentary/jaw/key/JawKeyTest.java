package org.dentary.jaw.key;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.dentary.jaw.AgeingMethod;
import org.dentary.jaw.key.JawAnswer.Step;
import org.dentary.jaw.key.JawObservation.Dentine;
import org.dentary.jaw.key.JawObservation.Eruption;
import org.dentary.jaw.key.JawObservation.SixthTooth;
import org.dentary.jaw.key.JawObservation.ThirdTooth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the key says on its way, and what it asks next. */
class JawKeyTest {

    @Test
    void saysEveryStepInWordsAndWhereItLed() {
        JawAnswer answer = JawKey.answer(
                jaw(6, 3, Eruption.FULL, null, Eruption.ERUPTING, Dentine.NOT_EXPOSED),
                JawContext.NONE,
                AgeingPlan.NORTHERN);
        assertEquals(
                List.of(
                        new Step(
                                "Can you see the cheek teeth all the way to the back?",
                                "Yes, to the back",
                                "Count the cheek teeth"),
                        new Step(
                                "How many cheek teeth are through the gum or coming through?",
                                "Six",
                                "Look at the third tooth (position 3)"),
                        new Step(
                                "How many cusps has the third tooth from the front?",
                                "Three cusps",
                                "Look for dentine on the sixth tooth (position 6, M3)"),
                        new Step(
                                "Is there a brown line of dentine on the sixth tooth, the last?",
                                "No line, edges sharp",
                                "Yearling, milk third tooth still in place")),
                answer.steps());
    }

    /** A doubtful answer names the tooth to look at again. */
    @ParameterizedTest
    @CsvSource({
        "6, 2, FULL, DEFINED, FULL, TRACE, Probably: Adult, position 6",
        "6, 2, FULL, TRACE, FULL, NOT_EXPOSED, Probably: Yearling, position 3",
        "6, 3, FULL, DEFINED, FULL, TRACE, Probably: Yearling, position 6",
        "6, 2, FULL, DEFINED, FULL, NOT_EXPOSED, Not determined, positions 3 and 6",
        "6, 2, ERUPTING, DEFINED, FULL, DEFINED, Not determined, position 3",
        "5, 2, ERUPTING, NOT_EXPOSED, NOT_ERUPTED, NOT_EXPOSED, Not determined, position 3"
    })
    void namesTheToothToLookAtAgain(
            int count,
            int cusps,
            Eruption third,
            Dentine thirdDentine,
            Eruption sixth,
            Dentine sixthDentine,
            String begins,
            String names) {
        JawAnswer answer = JawKey.answer(
                jaw(count, cusps, third, thirdDentine, sixth, sixthDentine), JawContext.NONE, AgeingPlan.NORTHERN);
        String last = answer.steps().get(answer.steps().size() - 1).leadsTo();
        assertTrue(last.startsWith(begins), last);
        assertTrue(last.contains(names), last);
    }

    @Test
    void asksOneQuestionAfterAnother() {
        assertEquals(Optional.of(KeyQuestion.CHEEK_TEETH), JawKey.next(jaw(null, null, null, null, null, null)));
        assertEquals(Optional.of(KeyQuestion.THIRD_CUSPS), JawKey.next(jaw(5, null, null, null, null, null)));
        assertEquals(Optional.empty(), JawKey.next(jaw(5, 3, null, null, null, null)));
        assertEquals(Optional.of(KeyQuestion.SIXTH_DENTINE), JawKey.next(jaw(6, 3, null, null, null, null)));
        assertEquals(Optional.of(KeyQuestion.THIRD_ERUPTION), JawKey.next(jaw(6, 2, null, null, null, null)));
        assertEquals(
                Optional.of(KeyQuestion.SIXTH_ERUPTION),
                JawKey.next(jaw(6, 2, Eruption.FULL, Dentine.DEFINED, null, Dentine.DEFINED)));
        assertEquals(2, JawKey.stepsSoFar(jaw(5, null, null, null, null, null)).size());
    }

    @Test
    void doesNotAnswerWhatIsNotComplete() {
        JawObservation empty = jaw(null, null, null, null, null, null);
        assertThrows(IllegalArgumentException.class, () -> JawKey.answer(empty, JawContext.NONE, AgeingPlan.NORTHERN));
    }

    @Test
    void keepsALookOrAReportBelowAnExaminedJaw() {
        for (AgeingMethod method : AgeingMethod.values()) {
            boolean looksOrHearsay = method == AgeingMethod.BODY_FEATURES || method == AgeingMethod.REPORTED_BY_HUNTER;
            assertEquals(!looksOrHearsay, method.mayBeDesignated(true), method.name());
            assertTrue(method.mayBeDesignated(false));
        }
    }

    private static JawObservation jaw(
            Integer count, Integer cusps, Eruption third, Dentine thirdDentine, Eruption sixth, Dentine sixthDentine) {
        return new JawObservation(
                null,
                null,
                null,
                count,
                new ThirdTooth(cusps, third, thirdDentine, null, null),
                new SixthTooth(sixth, sixthDentine),
                null,
                null,
                null,
                null,
                null,
                null);
    }
}
