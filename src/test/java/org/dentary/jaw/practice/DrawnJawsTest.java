package org.dentary.jaw.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.AgeingPlan;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.JawContext;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.key.JawObservation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrawnJawsTest {
    /** The four patterns that settle a class, and four that settle none: common practice, no single source. */
    @ParameterizedTest
    @CsvSource({
        "drawn-01,FAWN,CLEAR",
        "drawn-04,YEARLING,CLEAR",
        "drawn-06,YEARLING,CLEAR",
        "drawn-09,ADULT,CLEAR",
        "drawn-10,ADULT,PROBABLE",
        "drawn-12,UNKNOWN,UNRESOLVED",
        "drawn-13,UNKNOWN,UNRESOLVED",
        "drawn-14,UNKNOWN,UNRESOLVED",
        "drawn-15,UNKNOWN,UNRESOLVED"
    })
    void theKeyAnswersThemAsTheTradeWould(String name, AgeClass ageClass, String certainty) {
        JawAnswer answer = answer(name);
        assertEquals(ageClass, answer.ageClass());
        assertEquals(certainty, answer.certainty().name());
    }

    @Test
    void everyClassAndTheLackOfOneCanBePracticed() {
        Map<AgeClass, Long> classes = DrawnJaws.names().stream()
                .collect(Collectors.groupingBy(name -> answer(name).ageClass(), Collectors.counting()));
        assertEquals(24, DrawnJaws.names().size());
        for (AgeClass ageClass : AgeClass.values()) {
            assertTrue(classes.getOrDefault(ageClass, 0L) >= 3, ageClass + ": " + classes);
        }
    }

    @Test
    void eachIsSeenInPicturesThatNoOtherHas() {
        HashSet<List<String>> seen = new HashSet<>();
        for (String name : DrawnJaws.names()) {
            List<String> drawings = DrawnJaws.cues(name).stream()
                    .map(cue -> cue.drawing().name())
                    .toList();
            assertTrue(seen.add(drawings), name + " looks like another");
            // Enough is drawn for the key: the back hidden is enough by itself, and three drawings are the least
            // otherwise.
            assertTrue(drawings.size() >= (drawings.contains("row-front-only") ? 1 : 2), name + drawings);
        }
    }

    @Test
    void noDescriptionNamesAClass() {
        for (String name : DrawnJaws.names()) {
            for (DrawnJaws.Cue cue : DrawnJaws.cues(name)) {
                assertFalse(cue.drawing().description().matches("(?i).*\\b(fawn|yearling|adult|month|year)s?\\b.*"));
            }
        }
    }

    private static JawAnswer answer(String name) {
        JawObservation seen = DrawnJaws.seen(name).orElseThrow();
        assertEquals(List.of(), JawKey.problems(seen, JawContext.NONE, AgeingPlan.NORTHERN), name);
        return JawKey.answer(seen, JawContext.NONE, AgeingPlan.NORTHERN);
    }
}
