package org.dentary.jaw.practice;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.practice.PracticeView.JawKind;

/**
 * An animal's jaw on the reference panel.
 *
 * @param source how its age is known
 * @param stepsKnown whether somebody wrote down what was seen, so that the key's steps can be shown
 * @param photos photos that are still there; without any it is not put to anybody
 * @param retiredAt when it left the panel; null while it is on it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ReferenceJawView(
        String id,
        String kit,
        JawKind kind,
        AgeClass ageClass,
        String source,
        boolean stepsKnown,
        int photos,
        String addedBy,
        Instant addedAt,
        Instant retiredAt,
        String retiredReason) {
    static ReferenceJawView of(PracticeQueries.ReferenceRow row) {
        return new ReferenceJawView(
                row.id(),
                row.kit(),
                JawKind.valueOf(row.kind()),
                AgeClass.valueOf(row.ageClass()),
                row.source(),
                row.observation() != null,
                row.photos(),
                row.addedBy(),
                row.addedAt(),
                row.retiredAt(),
                row.retiredReason());
    }
}
