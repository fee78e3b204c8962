package org.dentary.prevalence.question;

import java.util.List;

/** A question about a season as a page's form shows it; {@code query} is the address's part behind the question mark. */
public record QuestionForm(
        List<Choice> seasons, List<Choice> diseases, List<Choice> species, List<Choice> cuts, String query) {
    /** One option of a list. */
    public record Choice(String value, String words, boolean chosen) {}
}
