package org.dentary.result.incident;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;

/**
 * Where a step stands.
 *
 * @param owner roster code of who sees to it
 * @param note what was done or found; needed where the step was not possible and for the identity
 */
public record SettleStep(
        @NotBlank(message = "is required: the roster code of the person who sees to it")
        String owner,

        LocalDate dueOn,

        @NotNull(message = "is required: OPEN, DONE or NOT_POSSIBLE")
        State state,

        @Size(max = 1000, message = "takes at most 1,000 characters")
        String note) {
    /** How far it is. */
    public enum State {
        OPEN,
        DONE,
        NOT_POSSIBLE
    }
}
