package org.dentary.animal.vault;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.Size;

/**
 * Whom to tell about an animal. It is kept encrypted, apart from everything else, and every read is audited.
 *
 * @param mayBeMessaged whether the person agreed to be told by message
 * @param language language to be told in, as a word
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Contact(
        @Size(max = 200) String name,
        @Size(max = 60) String phone,
        @Size(max = 200) String email,
        @Size(max = 500) String address,
        Boolean mayBeMessaged,
        @Size(max = 40) String language) {
    @AssertTrue(message = "give a name, phone, email or address, or leave the contact out")
    boolean isReachable() {
        return given(name) || given(phone) || given(email) || given(address);
    }

    private static boolean given(String text) {
        return text != null && !text.isBlank();
    }

    /** Says nothing of the person, so that no log can. */
    @Override
    public String toString() {
        return "a contact";
    }
}
