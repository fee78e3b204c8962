package org.dentary.prevalence.pictures;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.question.ReportQuestion;

/**
 * What a picture is drawn from. On a cut it is stored with the first drawing and drawn from there ever after, so that neither
 * a label that is put right nor a boundary's new edition moves a mark.
 */
@ApplicationScoped
class PictureAnswers {
    static final String KIND = "picture";

    private final StoredAnswerService stored;
    private final ObjectMapper json;

    PictureAnswers(StoredAnswerService stored, ObjectMapper json) {
        this.stored = stored;
        this.json = json;
    }

    /**
     * The rows of a picture, stored first if the question stands on a cut.
     *
     * @param row what a row is
     * @param make reads them now
     */
    <T> List<T> rows(ReportQuestion question, String picture, Class<T> row, Supplier<List<T>> make) {
        if (question.cut() == null) {
            return make.get();
        }
        Map<String, Object> key = question.canonical();
        key.put("report", KIND);
        key.put("picture", picture);
        return read(stored.answer(question.cut(), key, MediaType.APPLICATION_JSON, () -> written(make.get())), row);
    }

    /** Rows in the form in which they are stored. */
    String written(List<?> rows) {
        return stored.canonical(Map.of("rows", rows));
    }

    private <T> List<T> read(String answer, Class<T> row) {
        try {
            List<T> rows = new ArrayList<>();
            for (var one : json.readTree(answer).get("rows")) {
                rows.add(json.readerFor(row)
                        .without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                        .readValue(one));
            }
            return rows;
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("What a picture was drawn from cannot be read", fault);
        } catch (java.io.IOException fault) {
            throw new java.io.UncheckedIOException(fault);
        }
    }
}
