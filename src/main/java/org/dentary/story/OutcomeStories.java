package org.dentary.story;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.animal.line.LineView;

/** An animal's outcomes as its story tells them, one of each disease in the order of its lines. */
final class OutcomeStories {
    private OutcomeStories() {}

    /** Without reasons. */
    static List<AnimalStory.OutcomeOfDisease> of(List<LineView> lines, boolean knowing) {
        return lines.stream()
                .map(line -> told(line, knowing ? line.derivedOutcome() : null, null, null))
                .toList();
    }

    /**
     * With why, for those who may know.
     *
     * @param reasons at most one of each disease
     * @param earlier what they were before, newest first
     */
    static List<AnimalStory.OutcomeOfDisease> of(
            List<LineView> lines,
            List<StoryQueries.Explanation> reasons,
            List<StoryQueries.EarlierExplanation> earlier) {
        Map<String, StoryQueries.Explanation> why =
                reasons.stream().collect(Collectors.toMap(StoryQueries.Explanation::disease, Function.identity()));
        Map<String, List<AnimalStory.EarlierReason>> before = earlier.stream()
                .collect(Collectors.groupingBy(
                        StoryQueries.EarlierExplanation::disease,
                        Collectors.mapping(
                                was -> new AnimalStory.EarlierReason(
                                        was.explanation(), was.rules(), was.derivedAt(), was.until()),
                                Collectors.toList())));
        return lines.stream()
                .map(line -> told(
                        line,
                        line.derivedOutcome(),
                        why.get(line.disease()),
                        before.getOrDefault(line.disease(), List.of())))
                .toList();
    }

    private static AnimalStory.OutcomeOfDisease told(
            LineView line, String derived, StoryQueries.Explanation why, List<AnimalStory.EarlierReason> earlier) {
        return new AnimalStory.OutcomeOfDisease(
                line.disease(),
                line.outcome(),
                derived,
                line.footnotes(),
                line.exclusion(),
                why == null ? null : why.explanation(),
                why == null ? null : why.review(),
                why == null ? null : why.rules(),
                why == null ? null : earlier);
    }
}
