package org.dentary.prevalence;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.answer.StoredReport;
import org.dentary.prevalence.cut.DataCutQueries;
import org.dentary.prevalence.question.Beside;
import org.dentary.prevalence.question.ReportQuestion;

/**
 * The one answer to a question that every form of it is made from: page, JSON, CSV, workbook, document and picture. On a
 * cut it is read back from the bytes that were stored with the first answer, so no form can differ from them.
 */
@ApplicationScoped
public class PrevalenceAnswers implements StoredReport {
    private final PrevalenceService prevalence;
    private final StoredAnswerService stored;
    private final DataCutQueries cuts;
    private final ObjectReader reader;

    PrevalenceAnswers(
            PrevalenceService prevalence, StoredAnswerService stored, DataCutQueries cuts, ObjectMapper json) {
        this.prevalence = prevalence;
        this.stored = stored;
        this.cuts = cuts;
        this.reader = json.readerFor(PrevalenceReport.class).without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
    }

    /**
     * An answer in every form it needs.
     *
     * @param question with everything filled in
     * @param json RFC 8785 form of the report
     * @param digest SHA-256 of that, hex
     * @param superseded why the cut should no longer be used, as of now and not as of the first answer; null: it may
     */
    public record Answer(
            ReportQuestion question, PrevalenceReport report, String json, String digest, String superseded) {}

    /** The answer to a question, stored first if it stands on a cut. */
    public Answer of(ReportQuestion asked) {
        ReportQuestion question = prevalence.settle(asked);
        if (question.cut() == null) {
            PrevalenceReport report = prevalence.report(question);
            String json = stored.canonical(report);
            return new Answer(question, report, json, StoredAnswerService.digest(json), null);
        }
        String json = stored.answer(
                question.cut(),
                question.canonical(),
                MediaType.APPLICATION_JSON,
                () -> stored.canonical(prevalence.report(question)));
        return new Answer(question, read(json), json, StoredAnswerService.digest(json), superseded(question));
    }

    /** Reasons of all the cuts that it stands on, as of now; null: none is superseded. */
    private String superseded(ReportQuestion question) {
        return Stream.concat(Stream.of(question.cut()), question.with().stream().map(Beside::cut))
                .map(cut -> cuts.require(cut).supersededReason())
                .filter(Objects::nonNull)
                .reduce((one, other) -> one + "; " + other)
                .orElse(null);
    }

    @Override
    public boolean answers(Map<String, Object> question) {
        return question.containsKey("by") && !question.containsKey("report");
    }

    @Override
    public String again(Map<String, Object> question, UUID cut, String mediaType) {
        PrevalenceReport report = prevalence.report(ReportQuestion.told(question, cut));
        return mediaType.equals(MediaType.APPLICATION_JSON) ? stored.canonical(report) : PrevalenceCsv.of(report);
    }

    PrevalenceReport read(String json) {
        try {
            return reader.readValue(json);
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("A stored answer is not a report", fault);
        }
    }
}
