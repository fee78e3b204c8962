package org.dentary.prevalence;

import jakarta.ws.rs.core.MultivaluedMap;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The question as the page's form shows it; {@code query} is the address's part behind the question mark. */
public record PrevalenceForm(
        List<Choice> seasons,
        List<Choice> diseases,
        List<Choice> units,
        List<Choice> breakdowns,
        List<Choice> intervals,
        List<Choice> cuts,
        PrevalenceChoices.More more,
        String query) {
    /** One option of a list. */
    public record Choice(String value, String words, boolean chosen) {}

    static final List<String[]> BREAKDOWNS = List.of(
            new String[] {"ageClass,sex", "Age class and sex"},
            new String[] {"ageClass", "Age class"},
            new String[] {"sex", "Sex"},
            new String[] {"managementUnit", "Management unit"},
            new String[] {"managementUnit,ageClass", "Management unit and age class"},
            new String[] {"region,ageClass,sex", "Region, age class and sex"},
            new String[] {"mortalitySource", "Mortality source"},
            new String[] {"samplingBasis", "Sampling basis"},
            new String[] {"station", "Station"},
            new String[] {"month", "Month of death"});

    public static <T> List<Choice> choices(
            List<T> items, Function<T, String> value, Function<T, String> words, String chosen, String none) {
        List<Choice> choices = new ArrayList<>();
        if (none != null) {
            choices.add(new Choice("", none, chosen == null));
        }
        items.forEach(item -> choices.add(new Choice(
                value.apply(item), words.apply(item), value.apply(item).equals(chosen))));
        return choices;
    }

    public static String query(MultivaluedMap<String, String> asked) {
        return asked.entrySet().stream()
                .flatMap(e ->
                        e.getValue().stream().map(v -> e.getKey() + "=" + URLEncoder.encode(v, StandardCharsets.UTF_8)))
                .collect(Collectors.joining("&"));
    }
}
