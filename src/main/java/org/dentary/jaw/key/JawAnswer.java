package org.dentary.jaw.key;

import java.util.List;

/**
 * The key's answer to one observation.
 *
 * @param keyClass end of the key; null when it gives none
 * @param ageClass class for reports; {@code UNKNOWN} when the key gives none
 * @param label the class in words, or what to look at again
 * @param novemberMonths months of a November deer of this class; null without a class
 * @param ageInMonths band by the plan's birth pulse; null without a class or a day of death
 * @param certainty how far it can be relied on
 * @param steps the way through the key, in order
 * @param contradictions what speaks against the reading, in the order of the rules; may be empty
 * @param needsSecondReader whether someone else must read the jaw
 */
public record JawAnswer(
        KeyClass keyClass,
        AgeClass ageClass,
        String label,
        Integer novemberMonths,
        Months ageInMonths,
        Certainty certainty,
        List<Step> steps,
        List<Contradiction> contradictions,
        boolean needsSecondReader) {

    public JawAnswer {
        steps = List.copyOf(steps);
        contradictions = List.copyOf(contradictions);
    }

    /** Months of age; {@code to} is null when there is no upper end. */
    public record Months(double from, Double to) {}

    /** One question of the key, the answer found in the observation and what follows from it. */
    public record Step(String question, String answer, String leadsTo) {}

    /**
     * Something in the reading that does not fit.
     *
     * @param rule id of the rule
     * @param message what was seen, why it cannot be or is unusual, what to look at
     * @param teeth positions to look at again, 1 to 6; may be empty
     */
    public record Contradiction(String rule, Severity severity, String message, List<Integer> teeth) {}
}
