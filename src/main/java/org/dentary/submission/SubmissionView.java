package org.dentary.submission;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.util.List;
import org.dentary.submission.packing.PackedView;

/**
 * A submission as it stands.
 *
 * @param number what people say on the phone
 * @param state {@code PACKING}, {@code DISPATCHED} or {@code RECEIVED}
 * @param specimens in the order packed
 * @param over codes that arrived and were on no list
 */
public record SubmissionView(
        String id,
        long number,
        String laboratory,
        String purpose,
        String state,
        String carrier,
        String waybill,
        String shipper,
        Instant dispatchedAt,
        String dispatchedBy,
        Instant receivedAt,
        String openedBy,
        Instant openedAt,
        List<PackedView> specimens,
        List<String> over,
        @JsonIgnore Integer version) {
    /** How many arrived. */
    public int getReceived() {
        return (int) specimens.stream()
                .filter(s -> "RECEIVED".equals(s.receipt()) || "DAMAGED".equals(s.receipt()))
                .count();
    }

    /** How many were sent and did not arrive. */
    public int getMissing() {
        return (int) specimens.stream().filter(s -> "SHORT".equals(s.receipt())).count();
    }
}
