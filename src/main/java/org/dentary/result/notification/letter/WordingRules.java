package org.dentary.result.notification.letter;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.dentary.platform.problem.FieldProblem;

/**
 * What a letter's wording must and must not say: whom to ask and what they advise, and none of the words that would
 * promise something about an animal or its meat.
 */
final class WordingRules {
    /** What stands before the outcome's wording in a letter to somebody who was told another word. */
    static final String CORRECTION = "CORRECTION";

    /** What may stand in braces. */
    static final Set<String> PLACES = new TreeSet<>(Set.of(
            "species",
            "diedOn",
            "kit",
            "registration",
            "disease",
            "agency",
            "agencyPhone",
            "agencyAdvice",
            "resultsPhone",
            "toldBefore"));

    private static final List<String> NEEDED = List.of("disease", "agency", "agencyPhone", "agencyAdvice");
    /** A letter that puts an earlier word right names both in its first part; the rest says the outcome's own wording. */
    private static final List<String> NEEDED_OF_A_CORRECTION = List.of("disease", "toldBefore");

    private static final Pattern PLACE = Pattern.compile("\\{([^{}]*)\\}");
    private static final Pattern PROMISE = Pattern.compile(
            "\\b(safe|safely|safety|clean|negative|positive|edible|uninfected|disease-free)\\b",
            Pattern.CASE_INSENSITIVE);

    private WordingRules() {}

    /** Every fault of a wording for an outcome, or for {@code CORRECTION}; empty for none. */
    static List<FieldProblem> problems(String outcome, String wording) {
        List<FieldProblem> problems = new ArrayList<>();
        Set<String> used = PLACE.matcher(wording)
                .results()
                .map(place -> place.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
        used.stream()
                .filter(place -> !PLACES.contains(place))
                .forEach(place -> problems.add(new FieldProblem(
                        "wording",
                        "PLACE_UNKNOWN",
                        "{" + place + "} is not filled in; what may stand in braces: " + String.join(", ", PLACES))));
        (outcome.equals(CORRECTION) ? NEEDED_OF_A_CORRECTION : NEEDED)
                .stream()
                        .filter(place -> !used.contains(place))
                        .forEach(place -> problems.add(new FieldProblem(
                                "wording", "PLACE_MISSING", "{" + place + "} is missing; every letter gives it")));
        Matcher promise = PROMISE.matcher(wording);
        while (promise.find()) {
            problems.add(new FieldProblem(
                    "wording",
                    "WORD_PROMISES",
                    "'" + promise.group() + "' promises what a test cannot; say detected, not detected, inconclusive,"
                            + " unsuitable or not tested, and leave meat to the health agency"));
        }
        return problems;
    }

    /** The paragraphs with every place filled in; a place without a value becomes empty. */
    static List<String> paragraphs(String wording, Map<String, String> values) {
        String filled = PLACE.matcher(wording)
                .replaceAll(place -> Matcher.quoteReplacement(values.getOrDefault(place.group(1), "")));
        return List.of(filled.strip().split("\\R\\s*\\R"));
    }
}
