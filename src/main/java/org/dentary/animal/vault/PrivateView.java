package org.dentary.animal.vault;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;

/** What is known privately about an animal; either part may be null. */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PrivateView(String kit, Contact contact, ExactPoint point, String writtenBy, Instant writtenAt) {
    @Override
    public String toString() {
        return "what is private of kit " + kit;
    }
}
