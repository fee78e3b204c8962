package org.dentary.prevalence.truth;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.QuestionForm;

/**
 * The question as the page's form shows it.
 *
 * @param picks the lists to choose from, in order
 * @param kept what else the address asks, such as filters chosen on the prevalence page; stays in the form
 * @param query the address's part behind the question mark
 */
record TruthForm(List<Pick> picks, List<Kept> kept, String query) {
    static final List<String[]> BREAKDOWNS = List.of(
            new String[] {"ageClass,sex", "Age class and sex"},
            new String[] {"ageClass", "Age class"},
            new String[] {"sex", "Sex"},
            new String[] {"managementUnit", "Management unit"},
            new String[] {"managementUnit,ageClass", "Management unit and age class"},
            new String[] {"region,ageClass,sex", "Region, age class and sex"},
            new String[] {"mortalitySource", "Mortality source"},
            new String[] {"samplingBasis", "Sampling basis"},
            new String[] {"month", "Month of death"});

    /** One list to choose from. */
    record Pick(String name, String words, List<Choice> choices) {}

    /** One parameter that the form has no field for. */
    record Kept(String name, String value) {}

    /** @param none words of the empty choice, or null for none */
    static <T> Pick pick(
            String name,
            String label,
            List<T> items,
            Function<T, String> value,
            Function<T, String> words,
            Map<String, List<String>> asked,
            String none) {
        String chosen = asked.containsKey(name) ? asked.get(name).get(0) : null;
        List<Choice> choices = Choice.of(items, value, words, chosen, none);
        if (chosen != null && choices.stream().noneMatch(Choice::chosen)) {
            choices.add(new Choice(chosen, chosen, true));
        }
        return new Pick(name, label, choices);
    }

    static TruthForm of(List<Pick> picks, Map<String, List<String>> asked) {
        Set<String> shown = picks.stream().map(Pick::name).collect(Collectors.toSet());
        return new TruthForm(
                picks,
                asked.entrySet().stream()
                        .filter(parameter -> !shown.contains(parameter.getKey()))
                        .flatMap(parameter ->
                                parameter.getValue().stream().map(value -> new Kept(parameter.getKey(), value)))
                        .toList(),
                QuestionForm.query(asked));
    }
}
