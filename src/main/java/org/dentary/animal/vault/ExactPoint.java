package org.dentary.animal.vault;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;

/**
 * Where exactly the animal was killed or found (WGS 84), or in the hunter's words alone. It is kept like a contact.
 *
 * @param latitude null with the longitude, where only words are known
 * @param uncertaintyMetres radius within which it lies
 * @param words the place in the hunter's words
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ExactPoint(
        @DecimalMin(value = "-90", message = "a latitude is -90 to 90 degrees")
        @DecimalMax(value = "90", message = "a latitude is -90 to 90 degrees")
        BigDecimal latitude,

        @DecimalMin(value = "-180", message = "a longitude is -180 to 180 degrees")
        @DecimalMax(value = "180", message = "a longitude is -180 to 180 degrees")
        BigDecimal longitude,

        @PositiveOrZero Integer uncertaintyMetres,
        @Size(max = 500) String words) {
    @AssertTrue(message = "0, 0 lies in the sea and is what a device sends that knows no place; leave the point out")
    boolean isAPlace() {
        return latitude == null || longitude == null || latitude.signum() != 0 || longitude.signum() != 0;
    }

    @AssertTrue(message = "give latitude and longitude, or neither and the place in words")
    boolean isWhole() {
        return latitude == null ? longitude == null && words != null && !words.isBlank() : longitude != null;
    }

    /** Says nothing of the place, so that no log can. */
    @Override
    public String toString() {
        return "a point";
    }
}
