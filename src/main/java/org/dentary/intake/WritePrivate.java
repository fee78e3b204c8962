package org.dentary.intake;

import jakarta.validation.Valid;
import jakarta.validation.constraints.AssertTrue;
import org.dentary.animal.vault.Contact;
import org.dentary.animal.vault.ExactPoint;

/**
 * What is private of an animal that was taken in; a part that is left out stays as it is kept.
 *
 * @param contact whom to tell
 * @param point where it died or was found
 */
public record WritePrivate(@Valid Contact contact, @Valid ExactPoint point) {
    @AssertTrue(message = "give a contact, a point or both")
    boolean isSomething() {
        return contact != null || point != null;
    }

    /** Says nothing of the person or the place, so that no log can. */
    @Override
    public String toString() {
        return "what is private";
    }
}
