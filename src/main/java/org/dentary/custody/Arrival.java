package org.dentary.custody;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * Codes that a laboratory or other organisation counted in.
 *
 * @param codes specimens and boxes as counted; what lies in a box is counted by its own code
 * @param receiver laboratory or party code
 * @param receivedAt when they were counted
 * @param enteredAt when that was entered on the device, or null: when the service received it
 * @param reason needed when entered beyond the plan's hours, else null
 * @param act ties the events together, such as the submission's id
 * @param photos ids of photographs that show it, kept before; null or empty for none
 */
public record Arrival(
        List<String> codes,
        String receiver,
        Instant receivedAt,
        Instant enteredAt,
        String reason,
        UUID act,
        List<UUID> photos) {
    public Arrival {
        codes = List.copyOf(codes);
        photos = photos == null ? List.of() : List.copyOf(photos);
    }
}
