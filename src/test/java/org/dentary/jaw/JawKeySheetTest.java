package org.dentary.jaw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.MonthDay;
import org.junit.jupiter.api.Test;

/** The printed key: one page that says what the key says. */
class JawKeySheetTest {

    @Test
    void fitsOneLetterPageWithQuestionsClassesAndCautions() throws IOException {
        byte[] pdf = JawKeySheet.pdf(AgeingPlan.NORTHERN);
        Files.createDirectories(Path.of("target", "screenshots"));
        Files.write(Path.of("target", "screenshots", "jaw-key.pdf"), pdf);
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
        assertTrue(words.contains("Wear gloves"));
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
        String words = new PdfTextExtractor(new PdfReader(JawKeySheet.pdf(later)))
                .getTextFromPage(1)
                .replaceAll("\\s+", " ");
        assertTrue(words.contains("July 10 (June 15 to September 30)"), words);
    }
}
