package org.dentary.prevalence.ageing;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.answer.StoredReport;
import org.dentary.prevalence.cut.DataCutService;

/**
 * The one answer to a question that page, JSON, CSV, picture and document are made from. On a cut it is read back from the
 * bytes that were stored with the first answer.
 */
@ApplicationScoped
public class AgeingAnswers implements StoredReport {
    private final AgeingService ageing;
    private final StoredAnswerService stored;
    private final DataCutService cuts;
    private final ObjectReader reader;

    AgeingAnswers(AgeingService ageing, StoredAnswerService stored, DataCutService cuts, ObjectMapper json) {
        this.ageing = ageing;
        this.stored = stored;
        this.cuts = cuts;
        this.reader = json.readerFor(AgeingWhatIf.class).without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
    }

    /**
     * An answer.
     *
     * @param filters which animals alone, by field; empty for all that a report counts
     * @param query the address's part behind the question mark that asks the same again
     * @param json RFC 8785 form
     * @param digest SHA-256 of that, hex
     * @param superseded why the cut should no longer be used, as of now; null: it may
     */
    public record Answer(
            AgeingWhatIf whatIf,
            Map<String, List<String>> filters,
            String query,
            String json,
            String digest,
            String superseded) {}

    /**
     * The answer to the parameters of an address, stored first if it stands on a cut.
     *
     * @throws org.dentary.platform.problem.InvalidInput naming the parameter and what is allowed
     */
    public Answer of(Map<String, List<String>> parameters) {
        AgeingQuestion question = ageing.settle(AgeingQuestion.of(parameters));
        UUID cut = question.report().cut();
        if (cut == null) {
            AgeingWhatIf whatIf = ageing.answer(question);
            String json = stored.canonical(whatIf);
            return new Answer(
                    whatIf,
                    question.report().filters(),
                    question.query(),
                    json,
                    StoredAnswerService.digest(json),
                    null);
        }
        String json = stored.answer(
                cut, question.canonical(), MediaType.APPLICATION_JSON, () -> stored.canonical(ageing.answer(question)));
        return new Answer(
                read(json),
                question.report().filters(),
                question.query(),
                json,
                StoredAnswerService.digest(json),
                cuts.require(cut).supersededReason());
    }

    private AgeingWhatIf read(String json) {
        try {
            return reader.readValue(json);
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("A stored answer is not a what-if", fault);
        }
    }

    @Override
    public boolean answers(Map<String, Object> question) {
        return AgeingQuestion.KIND.equals(question.get("report"));
    }

    @Override
    public String again(Map<String, Object> question, UUID cut, String mediaType) {
        return stored.canonical(ageing.answer(ageing.settle(AgeingQuestion.told(question, cut))));
    }
}
