package org.dentary.submission;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

/**
 * What the laboratory counted in.
 *
 * @param codes codes that arrived; what is missing becomes short, what is on no list becomes over
 * @param damaged those of them that arrived damaged, or null
 * @param source who says so: {@code SCAN} or {@code LABORATORY_LIST}; SCAN when left out
 * @param photos ids of photographs that show it, kept before, or left out
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
        String reason,

        // Left out where empty, so that what was accepted before there were photos has the digest that it had.
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<UUID> photos) {
    /** How the count is known. */
    public enum Source {
        SCAN,
        LABORATORY_LIST
    }
}
