package org.dentary.prevalence.question;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * One option of a list to choose from.
 *
 * @param value what the address says of it
 * @param words what people read
 */
public record Choice(String value, String words, boolean chosen) {
    /**
     * A list of options, in the order of the items.
     *
     * @param chosen value of the one that is chosen, or null for none
     * @param none words of an empty option that comes first, or null for no such option
     */
    public static <T> List<Choice> of(
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
