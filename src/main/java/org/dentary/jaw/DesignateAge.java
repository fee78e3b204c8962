package org.dentary.jaw;

import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.UUID;
import org.dentary.jaw.key.AgeClass;

/**
 * The age that is to stand for an animal, decided by a person who gave none of its readings.
 *
 * @param reading the reading whose class stands
 * @param ageClass the class itself, where no reading has it
 */
public record DesignateAge(
        UUID reading,
        AgeClass ageClass,

        @NotBlank(message = "say why this age stands") @Size(max = 1000)
        String reason) {
    @AssertTrue(message = "give either reading or ageClass, not both and not neither")
    boolean isOneOfTwo() {
        return (reading == null) != (ageClass == null);
    }
}
