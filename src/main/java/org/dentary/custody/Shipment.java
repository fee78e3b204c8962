package org.dentary.custody;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * Codes that go to a carrier.
 *
 * @param codes specimens and boxes; what lies in a box goes with it
 * @param carrier organisation of the plan or free text
 * @param waybill the carrier's number, or null
 * @param occurredAt when the carrier took them
 * @param enteredAt when that was entered on the device, or null: when the service received it
 * @param reason needed when entered beyond the plan's hours, else null
 * @param act ties the events together, such as the submission's id
 * @param place where they were given, or null
 * @param boxes those that go for certain; one that holds what is not among the codes is refused
 */
public record Shipment(
        List<String> codes,
        String carrier,
        String waybill,
        Instant occurredAt,
        Instant enteredAt,
        String reason,
        UUID act,
        String place,
        List<String> boxes) {
    public Shipment {
        codes = List.copyOf(codes);
        boxes = List.copyOf(boxes);
    }
}
