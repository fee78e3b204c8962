package org.dentary.jaw.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.time.MonthDay;
import java.util.List;
import java.util.stream.Stream;
import org.dentary.cautions.CautionView;
import org.dentary.jaw.key.AgeingPlan;
import org.dentary.jaw.key.KeyClass;
import org.dentary.jaw.key.KeyQuestion;
import org.junit.jupiter.api.Test;

/** The printed key: one page that says what the key says. */
class JawKeySheetTest {
    private static final List<CautionView> CAUTIONS = List.of(
            caution("Wear two pairs of gloves.", "The safety officer", true),
            caution("Mind the blade.", "The supervisor", false));

    private static CautionView caution(String text, String authority, boolean reviewed) {
        return new CautionView(
                "TEST", "Test", "1", null, List.of("SAMPLING"), text, authority, reviewed, null, null, null, false);
    }

    @Test
    void fitsOneLetterPageWithQuestionsClassesAndCautions() throws IOException {
        byte[] pdf = JawKeySheet.pdf(AgeingPlan.NORTHERN, CAUTIONS);
        PdfReader reader = new PdfReader(pdf);
        assertEquals(1, reader.getNumberOfPages());
        assertEquals(612, reader.getPageSize(1).getWidth());
        assertEquals(792, reader.getPageSize(1).getHeight());
        String words = new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
        for (KeyQuestion question : KeyQuestion.values()) {
            assertTrue(words.contains(question.question()), question.question());
            question.answers()
                    .forEach(answer -> assertTrue(
                            words.contains(answer.words().split(" ")[0]), () -> answer.words() + " in " + words));
        }
        for (KeyClass keyClass : KeyClass.values()) {
            assertTrue(words.contains(keyClass.label()), keyClass.label());
        }
        assertTrue(words.contains("not for enforcement or prizes"));
        assertTrue(words.contains("Wear two pairs of gloves. (The safety officer)"), words);
        assertTrue(words.contains("Mind the blade. (The supervisor*)"), words);
        assertTrue(words.contains("stand above this sheet"));
        assertTrue(words.contains("June 1 (May 10 to August 15)"), words);
        assertTrue(words.contains("Disputed: the reading contradicts itself (J02, J06)"), words);
    }

    @Test
    void printsTheBirthPulseOfThePlan() throws IOException {
        AgeingPlan north = AgeingPlan.NORTHERN;
        AgeingPlan later = new AgeingPlan(
                "later",
                MonthDay.of(6, 15),
                MonthDay.of(7, 10),
                MonthDay.of(9, 30),
                MonthDay.of(7, 1),
                north.sixthMayShowFrom(),
                north.milkThirdLateAfter(),
                north.newThirdFullFrom(),
                north.fifthFullFrom(),
                north.threeTeethLateAfter(),
                north.antlersShedFrom(),
                north.antlersShedTo(),
                north.freshDays(),
                north.fawnFetusMillimetres(),
                north.massBands(),
                false,
                north.reviewedSpecies());
        String words = new PdfTextExtractor(new PdfReader(JawKeySheet.pdf(later, List.of())))
                .getTextFromPage(1)
                .replaceAll("\\s+", " ");
        assertTrue(words.contains("July 10 (June 15 to September 30)"), words);
    }

    @Test
    void keepsToOnePageWhenAProgramHasMoreToSay() throws IOException {
        String longer = "Read the written plan of the station before you lift, cut, carry or open anything. ".repeat(3);
        List<CautionView> cautions = Stream.generate(() -> caution(longer, "The supervisor", true))
                .limit(6)
                .toList();
        PdfReader reader = new PdfReader(JawKeySheet.pdf(AgeingPlan.NORTHERN, cautions));
        assertEquals(1, reader.getNumberOfPages());
        String words = new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
        assertTrue(words.contains("local instructions come first"), words);
    }
}
