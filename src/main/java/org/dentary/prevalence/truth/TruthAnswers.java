package org.dentary.prevalence.truth;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import java.util.Map;
import java.util.UUID;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.answer.StoredReport;
import org.dentary.prevalence.cut.DataCutService;

/**
 * The one answer to a question that page, picture, JSON and CSV are made from. On a cut it is read back from the bytes that
 * were stored with the first answer, so that no form differs from them.
 */
@ApplicationScoped
class TruthAnswers implements StoredReport {
    private final TruthService truths;
    private final StoredAnswerService stored;
    private final DataCutService cuts;
    private final ObjectReader reader;

    TruthAnswers(TruthService truths, StoredAnswerService stored, DataCutService cuts, ObjectMapper json) {
        this.truths = truths;
        this.stored = stored;
        this.cuts = cuts;
        this.reader = json.readerFor(TruthReport.class).without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
    }

    /**
     * An answer.
     *
     * @param question with everything filled in
     * @param json RFC 8785 form of the report
     * @param superseded why the cut should no longer be used, as of now and not as of the first answer; null: it may
     */
    record Answer(TruthQuestion question, TruthReport report, String json, String superseded) {}

    /** The answer, stored first if it stands on a cut. */
    Answer of(TruthQuestion asked) {
        TruthQuestion question = truths.settle(asked);
        UUID cut = question.report().cut();
        if (cut == null) {
            TruthReport report = truths.answer(question);
            return new Answer(question, report, stored.canonical(report), null);
        }
        String json = stored.answer(
                cut, question.canonical(), MediaType.APPLICATION_JSON, () -> stored.canonical(truths.answer(question)));
        try {
            return new Answer(
                    question, reader.readValue(json), json, cuts.require(cut).supersededReason());
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("A stored answer is not a report", fault);
        }
    }

    @Override
    public boolean answers(Map<String, Object> question) {
        return TruthQuestion.KIND.equals(question.get("report"));
    }

    @Override
    public String again(Map<String, Object> question, UUID cut, String mediaType) {
        return stored.canonical(truths.answer(truths.settle(TruthQuestion.told(question, cut))));
    }
}
