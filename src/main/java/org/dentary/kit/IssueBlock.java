package org.dentary.kit;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.List;
import org.dentary.codes.Part;

/**
 * Issue new kits to a station.
 *
 * @param season season they are meant for
 * @param station station that gets them
 * @param person roster code of who answers for them, or null
 * @param kits how many, 1 to 5,000
 * @param parts the labels of each kit, in printing order, each part once
 * @param copies identical labels printed of each, 1 to 10; null is 1
 */
public record IssueBlock(
        @NotBlank(message = "is missing; name the season the kits are for")
        String season,

        @NotBlank(message = "is missing; name the station that gets the kits")
        String station,

        String person,

        @NotNull(message = "is missing; say how many kits, 1 to 5000")
        @Min(value = 1, message = "must be 1 to 5000; issue at least one kit")
        @Max(value = 5000, message = "must be 1 to 5000; issue several blocks for more")
        Integer kits,

        @NotEmpty(message = "is missing; name at least one part, such as JAW")
        List<@NotNull(message = "is empty; name a part, such as JAW") Part> parts,

        @Min(value = 1, message = "must be 1 to 10; print at least one of each label")
        @Max(value = 10, message = "must be 1 to 10; print again for more")
        Integer copies) {
    /** The identical labels of each, 1 where nothing was said. */
    int copiesOrOne() {
        return copies == null ? 1 : copies;
    }
}
