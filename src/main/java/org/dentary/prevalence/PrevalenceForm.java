package org.dentary.prevalence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.Dimension;

/** The question as the page's form shows it; {@code query} is the address's part behind the question mark. */
public record PrevalenceForm(
        List<Choice> seasons,
        List<Choice> diseases,
        List<Choice> units,
        List<Choice> breakdowns,
        List<Choice> columns,
        List<Choice> intervals,
        List<Choice> cuts,
        PrevalenceChoices.More more,
        String query,
        String queryOfOneSeason) {
    /** Rows of two dimensions and more that people ask for; each dimension alone is offered too. */
    private static final List<String> TOGETHER = List.of(
            "ageClass,sex",
            "managementUnit,ageClass",
            "managementUnit,ageClass,sex",
            "region,ageClass,sex",
            "mortalitySource,ageClass",
            "month,ageClass");

    /** What the rows may be; what was asked for is among them. */
    static List<Choice> rows(String asked) {
        List<String> offered = new ArrayList<>(TOGETHER);
        Stream.of(Dimension.values()).map(Dimension::field).forEach(offered::add);
        if (asked != null && !offered.contains(asked)) {
            offered.add(asked);
        }
        return Choice.of(offered, by -> by, PrevalenceForm::together, asked, null);
    }

    /** What may stand as columns. */
    static List<Choice> columns(String asked) {
        return Choice.of(List.of(Dimension.values()), Dimension::field, Dimension::words, asked, "None");
    }

    private static String together(String by) {
        List<String> words = new ArrayList<>(Stream.of(by.split(","))
                .map(field -> Stream.of(Dimension.values())
                        .filter(dimension -> dimension.field().equals(field.trim()))
                        .findFirst()
                        .map(Dimension::words)
                        .orElse(field))
                .toList());
        for (int i = 1; i < words.size(); i++) {
            words.set(i, words.get(i).toLowerCase(Locale.US));
        }
        String last = words.remove(words.size() - 1);
        return words.isEmpty() ? last : String.join(", ", words) + " and " + last;
    }
}
