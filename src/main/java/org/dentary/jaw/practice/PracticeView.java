package org.dentary.jaw.practice;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.JawAnswer;

/**
 * A round of practice. Until every jaw is answered nothing in it tells a right class.
 *
 * @param jaws how many jaws it has
 * @param answered how many are answered
 * @param right how many are classed rightly; null until all are answered
 * @param items the jaws in their order
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PracticeView(
        String id,
        String person,
        String ruleSetVersion,
        int jaws,
        int answered,
        Integer right,
        Instant begunAt,
        Instant finishedAt,
        List<Jaw> items) {
    /**
     * One jaw of the round.
     *
     * @param given the class given; null while it is not answered
     * @param rightClass null until the round is finished, as is all below
     * @param source how the right class is known
     * @param certainty the key's, where it was asked
     * @param steps the key's way to the class; empty where nobody wrote down what was seen
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Jaw(
            int position,
            JawKind kind,
            List<Picture> pictures,
            AgeClass given,
            AgeClass rightClass,
            Boolean isRight,
            String source,
            String certainty,
            List<JawAnswer.Step> steps) {}

    /**
     * A drawing or a photo.
     *
     * @param place what part of the jaw it shows, or which photo it is
     * @param description what is to be seen, for those who cannot see it
     */
    public record Picture(String href, String place, String description, int width, int height) {}

    /** Where the jaws of the panel come from. */
    public enum JawKind {
        DRAWN,
        KNOWN_AGE,
        AGREED
    }

    public boolean isFinished() {
        return finishedAt != null;
    }

    /** The next jaw to answer; empty when all are. */
    Optional<Jaw> next() {
        return items.stream().filter(jaw -> jaw.given() == null).findFirst();
    }
}
