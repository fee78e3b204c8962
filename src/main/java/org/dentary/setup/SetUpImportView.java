package org.dentary.setup;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A set-up file as it stands.
 *
 * @param list name of the list it is for
 * @param state {@code PREVIEWED} or {@code POSTED}
 * @param rows lines after the header, blank ones left out
 * @param adds rows that are new
 * @param changes rows that change what is there; the other rows say what is there already
 * @param problems what forbids posting, in order of lines
 * @param warnings what should be looked at and does not forbid it
 */
public record SetUpImportView(
        UUID id,
        String list,
        String state,
        int rows,
        int adds,
        int changes,
        List<LineProblem> problems,
        List<LineProblem> warnings,
        String uploadedBy,
        Instant uploadedAt,
        String postedBy,
        Instant postedAt,
        @JsonIgnore int version) {
    @JsonIgnore
    public boolean isPosted() {
        return state.equals(SetUpImport.POSTED);
    }

    @JsonIgnore
    public boolean isPostable() {
        return !isPosted() && problems.isEmpty() && rows > 0;
    }
}
