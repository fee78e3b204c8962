package org.dentary.specimen;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;

/**
 * A piece cut from a specimen; what is left out is as the specimen's.
 *
 * @param collectedAt when it was cut
 * @param archived kept without an order, so that nothing waits for it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CutPiece(
        Tissue tissue,
        @Size(max = 200) String tissueText,
        Side side,

        @NotNull(message = "say how it is kept: FRESH_CHILLED, FROZEN, FORMALIN, DRY, ETHANOL or OTHER")
        Preservation preservation,

        Condition condition,

        @NotNull(message = "say when it was cut, with offset, such as 2026-11-14T07:30:00-06:00")
        OffsetDateTime collectedAt,

        @Size(max = 80) String collectedBy,
        OffsetDateTime preservedAt,
        Boolean archived,
        @Size(max = 120) String place,
        OffsetDateTime enteredAt,
        @Size(max = 500) String reason) {
    /** A piece cut at that moment and kept so since; all else is as the specimen's. */
    public static CutPiece now(Preservation preservation, OffsetDateTime at, String reason) {
        return new CutPiece(null, null, null, preservation, null, at, null, null, null, null, null, reason);
    }

    TakeSpecimen of(SpecimenView parent, String code) {
        return new TakeSpecimen(
                        code,
                        tissue == null ? Tissue.valueOf(parent.tissue()) : tissue,
                        tissue == null ? parent.tissueText() : tissueText,
                        side == null ? Side.valueOf(parent.side()) : side,
                        preservation,
                        condition == null ? Condition.valueOf(parent.condition()) : condition,
                        collectedAt,
                        collectedBy,
                        preservedAt,
                        archived,
                        place,
                        enteredAt,
                        reason)
                .under(code);
    }
}
