package org.dentary.jaw.key;

import static org.dentary.jaw.key.Certainty.CLEAR;

import java.util.ArrayList;
import java.util.List;
import org.dentary.jaw.key.JawAnswer.Step;

/** Writes down a walk down the key: its steps in order, and how it ends. */
final class KeyTrail {
    static final String CAP = "CAP";

    private final JawObservation jaw;
    private final List<Step> steps = new ArrayList<>();

    KeyTrail(JawObservation jaw) {
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

    void step(KeyQuestion question, Object answer, String leadsTo) {
        boolean said = answer != null && (CAP.equals(answer) || !jaw.isUnsure(question.field()));
        String words = said ? question.words(answer) : "Unsure";
        steps.add(new Step(question.question(), words, leadsTo));
    }

    /** An unsure answer ends the walk without a class; a field not given ends it with the question. */
    End stop(KeyQuestion question, String advice) {
        return jaw.isUnsure(question.field()) ? unresolved(question, null, advice) : missing(question);
    }

    End missing(KeyQuestion question) {
        return new End(null, Certainty.UNRESOLVED, null, steps, question);
    }

    End unresolved(KeyQuestion question, Object answer, String advice) {
        String label = "Not determined: " + advice;
        step(question, answer, label);
        return new End(null, Certainty.UNRESOLVED, label, steps, null);
    }

    End end(KeyQuestion question, Object answer, KeyClass keyClass, Certainty certainty, String advice) {
        step(question, answer, certainty == CLEAR ? keyClass.label() : "Probably: " + keyClass.label() + "; " + advice);
        return new End(keyClass, certainty, keyClass.label(), steps, null);
    }
}
