package org.dentary.prevalence.question;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A question about a season as a page's form shows it; {@code query} is the address's part behind the question mark. */
public record QuestionForm(
        List<Choice> seasons, List<Choice> diseases, List<Choice> species, List<Choice> cuts, String query) {
    /** What was asked as the address's part behind the question mark, in the order asked. */
    public static String query(Map<String, List<String>> asked) {
        return asked.entrySet().stream()
                .flatMap(parameter -> parameter.getValue().stream()
                        .map(value -> parameter.getKey() + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8)))
                .collect(Collectors.joining("&"));
    }
}
