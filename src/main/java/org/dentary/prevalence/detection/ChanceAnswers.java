package org.dentary.prevalence.detection;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.answer.StoredReport;
import org.dentary.prevalence.cut.DataCutService;
import org.dentary.prevalence.question.ReportQuestion;

/**
 * The one answer to a question that page, JSON and CSV are made from. On a cut it is read back from the bytes that were
 * stored with the first answer, so that no form differs from them and no later change of the plan moves a number.
 */
@ApplicationScoped
public class ChanceAnswers implements StoredReport {
    private static final String KIND = "chance-of-detection";

    private final ChanceService chances;
    private final StoredAnswerService stored;
    private final DataCutService cuts;
    private final ObjectReader reader;

    ChanceAnswers(ChanceService chances, StoredAnswerService stored, DataCutService cuts, ObjectMapper json) {
        this.chances = chances;
        this.stored = stored;
        this.cuts = cuts;
        this.reader =
                json.readerFor(ChanceOfDetection.class).without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
    }

    /**
     * The report as a value and in RFC 8785 form.
     *
     * @param superseded why the cut should no longer be used, as of now and not as of the first answer; null: it may
     */
    public record Answer(ChanceOfDetection report, String json, String superseded) {}

    /** The answer to a settled question, stored first if it stands on a cut. */
    public Answer of(ReportQuestion question) {
        if (question.cut() == null) {
            ChanceOfDetection report = chances.answer(question);
            return new Answer(report, stored.canonical(report), null);
        }
        Map<String, Object> key = question.canonical();
        key.put("report", KIND);
        String json = stored.answer(
                question.cut(), key, MediaType.APPLICATION_JSON, () -> stored.canonical(chances.answer(question)));
        try {
            return new Answer(
                    reader.readValue(json), json, cuts.require(question.cut()).supersededReason());
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("A stored answer is not a report", fault);
        }
    }

    @Override
    public boolean answers(Map<String, Object> question) {
        return KIND.equals(question.get("report"));
    }

    @Override
    public String again(Map<String, Object> question, UUID cut, String mediaType) {
        Map<String, Object> told = new TreeMap<>(question);
        told.remove("report");
        return stored.canonical(chances.answer(ReportQuestion.told(told, cut)));
    }
}
