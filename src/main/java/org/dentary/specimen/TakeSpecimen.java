package org.dentary.specimen;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;

/**
 * A specimen as taken.
 *
 * @param code label code, typed or scanned; the address names it where the specimen is sent by itself
 * @param tissueText what it is, for tissue {@code OTHER}
 * @param side {@code UNKNOWN} when left out
 * @param condition {@code UNKNOWN} when left out
 * @param collectedBy person code or sign-in name; who sends it when left out
 * @param preservedAt since when it is kept like this; {@code collectedAt} when left out
 * @param archived kept without an order, so that nothing waits for it
 * @param place where it was taken, for the first custody event; the station when left out
 * @param enteredAt when it was entered on the device
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TakeSpecimen(
        String code,

        @NotNull(message = "say which tissue it is, such as MEDIAL_RETROPHARYNGEAL_NODE")
        Tissue tissue,

        @Size(max = 200) String tissueText,
        Side side,

        @NotNull(message = "say how it is kept: FRESH_CHILLED, FROZEN, FORMALIN, DRY, ETHANOL or OTHER")
        Preservation preservation,

        Condition condition,

        @NotNull(message = "say when it was taken, with offset, such as 2026-11-14T07:30:00-06:00")
        OffsetDateTime collectedAt,

        @Size(max = 80) String collectedBy,
        OffsetDateTime preservedAt,
        Boolean archived,
        @Size(max = 120) String place,
        OffsetDateTime enteredAt,
        @Size(max = 500) String reason) {
    /** The same under its code in the kept form, with what was left out filled in. */
    public TakeSpecimen under(String keptCode) {
        return new TakeSpecimen(
                keptCode,
                tissue,
                tissueText,
                side == null ? Side.UNKNOWN : side,
                preservation,
                condition == null ? Condition.UNKNOWN : condition,
                collectedAt,
                collectedBy,
                preservedAt,
                Boolean.TRUE.equals(archived),
                place,
                enteredAt,
                reason);
    }
}
