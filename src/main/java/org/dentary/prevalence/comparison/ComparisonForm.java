package org.dentary.prevalence.comparison;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** The question as the page's form shows it; {@code query} is the address's part behind the question mark. */
record ComparisonForm(
        List<Choice> seasons,
        List<Choice> diseases,
        List<Choice> units,
        List<Choice> cuts,
        List<Choice> with,
        List<Choice> herds,
        String ageFawn,
        String ageYearling,
        String ageAdult,
        String query) {
    /** One option of a list. */
    record Choice(String value, String words, boolean chosen) {}

    static <T> List<Choice> choices(
            List<T> items, Function<T, String> value, Function<T, String> words, String chosen, String none) {
        List<Choice> choices = new ArrayList<>();
        if (none != null) {
            choices.add(new Choice("", none, chosen == null));
        }
        items.forEach(item -> choices.add(new Choice(
                value.apply(item), words.apply(item), value.apply(item).equals(chosen))));
        return choices;
    }
}
