package org.dentary.jaw.exam;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.dentary.jaw.drawing.JawDrawing;
import org.dentary.jaw.drawing.JawDrawings;
import org.dentary.jaw.key.AgeingPlan;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.JawContext;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.key.KeyQuestion;

/**
 * The exam as its page shows it.
 *
 * @param asked questions answered, in the order of the key
 * @param next the question to answer now; null when the key asks no more
 * @param answer the key's answer; null while it asks
 * @param months the band of ages in words; null without one
 * @param diedOn day of death; null when not given
 * @param region region code; empty when not given
 */
public record JawExamView(
        List<Asked> asked, Asked next, JawAnswer answer, String months, LocalDate diedOn, String region) {

    /**
     * A question with its choices.
     *
     * @param said the answer given, in words; null when this is the question to answer now
     * @param value the answer given, as a value
     * @param again address at which it is put again
     * @param aids drawings that help to see what is asked; may be empty
     */
    public record Asked(
            int number,
            String field,
            String question,
            String hint,
            String said,
            String value,
            String again,
            List<Choice> choices,
            List<JawDrawing> aids) {}

    /**
     * @param key the number key that picks it
     * @param drawing null for "unsure"
     * @param chosen whether it is the answer given
     */
    public record Choice(int key, String words, JawDrawing drawing, String href, boolean chosen) {}

    /** The address at which the last answer is given again; the start when there is none. */
    public String back() {
        return asked.isEmpty() ? "/jaw-key" : asked.get(asked.size() - 1).again();
    }

    /** The whole jaw, to show where to look. */
    public JawDrawing jaw() {
        return JawDrawings.find("jaw-side").orElseThrow();
    }

    static JawExamView of(JawExam exam, AgeingPlan plan) {
        List<Asked> asked = new ArrayList<>();
        exam.said().keySet().forEach(question -> asked.add(asked(exam, question, asked.size() + 1)));
        String region = exam.region() == null ? "" : exam.region();
        KeyQuestion next = exam.next();
        if (next != null) {
            return new JawExamView(asked, asked(exam, next, asked.size() + 1), null, null, exam.diedOn(), region);
        }
        JawAnswer answer = JawKey.answer(exam.observation(), JawContext.NONE, plan);
        return new JawExamView(asked, null, answer, months(answer.ageInMonths()), exam.diedOn(), region);
    }

    private static Asked asked(JawExam exam, KeyQuestion question, int number) {
        String given = exam.said().get(question);
        List<Choice> choices = new ArrayList<>();
        for (KeyQuestion.Answer answer : question.answers()) {
            choices.add(new Choice(
                    choices.size() + 1,
                    answer.words(),
                    JawDrawings.find(answer.drawing()).orElseThrow(),
                    exam.with(question, answer.value()),
                    answer.value().equals(given)));
        }
        choices.add(new Choice(
                choices.size() + 1, "Unsure", null, exam.with(question, JawExam.UNSURE), JawExam.UNSURE.equals(given)));
        String said = given == null ? null : JawExam.UNSURE.equals(given) ? "Unsure" : question.words(given);
        return new Asked(
                number,
                question.field(),
                question.question(),
                question.hint(),
                said,
                given,
                exam.back(question),
                choices,
                question.aids().stream()
                        .map(name -> JawDrawings.find(name).orElseThrow())
                        .toList());
    }

    private static String months(JawAnswer.Months months) {
        if (months == null) {
            return null;
        }
        return months.to() == null
                ? "At least " + months.from() + " months on the day it died"
                : months.from() + " to " + months.to() + " months on the day it died";
    }
}
