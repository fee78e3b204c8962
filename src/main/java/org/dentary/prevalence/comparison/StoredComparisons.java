package org.dentary.prevalence.comparison;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.answer.StoredReport;
import org.dentary.prevalence.question.ReportQuestion;

/** Reads a stored comparison's question back, so that it can be answered again. */
@ApplicationScoped
class StoredComparisons implements StoredReport {
    private final ComparisonService comparisons;
    private final StoredAnswerService answers;

    StoredComparisons(ComparisonService comparisons, StoredAnswerService answers) {
        this.comparisons = comparisons;
        this.answers = answers;
    }

    @Override
    public boolean answers(Map<String, Object> question) {
        return ComparisonQuestion.KIND.equals(question.get("report"));
    }

    @Override
    public String again(Map<String, Object> question, UUID cut, String mediaType) {
        Comparisons now = comparisons.compare(comparisons.settle(told(question, cut)));
        return mediaType.equals(MediaType.APPLICATION_JSON) ? answers.canonical(now) : ComparisonCsv.of(now);
    }

    /** The question as {@link ComparisonQuestion#canonical} told it. */
    private static ComparisonQuestion told(Map<String, Object> question, UUID cut) {
        Map<String, Object> here = new TreeMap<>();
        ((Map<?, ?>) question.get("here")).forEach((name, value) -> here.put(name.toString(), value));
        List<?> with = (List<?>) question.get("with");
        String herd = question.get("herd").toString();
        Map<String, Double> ages = new TreeMap<>();
        ((Map<?, ?>) question.get("ages"))
                .forEach((age, years) -> ages.put(age.toString(), ((Number) years).doubleValue()));
        return new ComparisonQuestion(
                ReportQuestion.told(here, cut),
                with.isEmpty() ? null : with.get(1).toString(),
                herd.isEmpty() ? null : herd,
                ages);
    }
}
