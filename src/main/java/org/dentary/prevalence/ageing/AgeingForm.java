package org.dentary.prevalence.ageing;

import java.util.List;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.QuestionForm;

/**
 * The question as the page's form shows it.
 *
 * @param asked season, disease, species and cut
 * @param kept other conditions of the address, kept as they are
 */
record AgeingForm(QuestionForm asked, List<Choice> units, List<Choice> matrices, List<Kept> kept) {
    /** A condition that the form has no field for. */
    record Kept(String name, String value) {}
}
