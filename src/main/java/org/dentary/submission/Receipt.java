package org.dentary.submission;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * What the laboratory counted in.
 *
 * @param codes codes that arrived; what is missing becomes short, what is on no list becomes over
 * @param damaged those of them that arrived damaged, or null
 * @param source who says so: {@code SCAN} or {@code LABORATORY_LIST}; SCAN when left out
 */
public record Receipt(
        @NotNull(message = "is required: when it was counted, with offset")
        OffsetDateTime receivedAt,

        @NotNull(message = "is required: the codes that arrived; an empty list says that nothing did")
        List<@NotNull(message = "is empty; scan the tube's code") String> codes,

        List<@NotNull(message = "is empty; scan the tube's code") String> damaged,
        Source source,
        OffsetDateTime enteredAt,

        @Size(max = 300, message = "takes at most 300 characters")
        String reason) {
    /** How the count is known. */
    public enum Source {
        SCAN,
        LABORATORY_LIST
    }
}
