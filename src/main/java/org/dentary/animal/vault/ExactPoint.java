package org.dentary.animal.vault;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;

/**
 * Where exactly the animal was killed or found (WGS 84). It is kept like a contact.
 *
 * @param uncertaintyMetres radius within which it lies
 * @param words the place in the hunter's words
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ExactPoint(
        @NotNull
        @DecimalMin(value = "-90", message = "a latitude is -90 to 90 degrees")
        @DecimalMax(value = "90", message = "a latitude is -90 to 90 degrees")
        BigDecimal latitude,

        @NotNull
        @DecimalMin(value = "-180", message = "a longitude is -180 to 180 degrees")
        @DecimalMax(value = "180", message = "a longitude is -180 to 180 degrees")
        BigDecimal longitude,

        @PositiveOrZero Integer uncertaintyMetres,
        @Size(max = 500) String words) {
    @AssertTrue(message = "0, 0 lies in the sea and is what a device sends that knows no place; leave the point out")
    boolean isAPlace() {
        return latitude == null || longitude == null || latitude.signum() != 0 || longitude.signum() != 0;
    }

    /** Says nothing of the place, so that no log can. */
    @Override
    public String toString() {
        return "a point";
    }
}
