package org.dentary.result.notification.letter;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.util.List;

/** An edition of what a letter says; one without a reviewer is not sent. */
public record WordingView(
        String outcome,
        Integer edition,
        String wording,
        String writtenBy,
        Instant writtenAt,
        String reviewedBy,
        Instant reviewedAt) {
    /** The paragraphs, places still in braces. */
    @JsonIgnore
    public List<String> getParagraphs() {
        return List.of(wording.split("\n\n"));
    }

    @JsonIgnore
    public boolean isReviewed() {
        return reviewedBy != null;
    }
}
