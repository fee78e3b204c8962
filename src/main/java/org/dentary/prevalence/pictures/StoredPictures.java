package org.dentary.prevalence.pictures;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.dentary.prevalence.answer.StoredReport;
import org.dentary.prevalence.question.ReportQuestion;

/** Counts again what stored pictures are drawn from. */
@ApplicationScoped
class StoredPictures implements StoredReport {
    private final PictureService pictures;
    private final PictureAnswers answers;

    StoredPictures(PictureService pictures, PictureAnswers answers) {
        this.pictures = pictures;
        this.answers = answers;
    }

    @Override
    public boolean answers(Map<String, Object> question) {
        return PictureAnswers.KIND.equals(question.get("report"));
    }

    @Override
    public String again(Map<String, Object> question, UUID cut, String mediaType) {
        Map<String, Object> told = new TreeMap<>(question);
        told.remove("report");
        String picture = told.remove("picture").toString();
        return answers.written(pictures.counted(picture, ReportQuestion.told(told, cut)));
    }
}
