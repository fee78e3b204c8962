package org.dentary.custody.handover;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.evidence.ErasedText;

/**
 * A hand-over as it stands.
 *
 * @param state {@code OFFERED}, {@code ACCEPTED}, {@code PART_ACCEPTED}, {@code REFUSED} or {@code WITHDRAWN}
 * @param overdue whether nobody has answered within the plan's hours
 * @param items every code with what lay in boxes, sorted
 * @param erasures of its place in words and its reason, which then are null
 * @param version today's version, sent as ETag
 */
public record HandOverView(
        UUID id,
        String state,
        String from,
        String fromKind,
        String fromName,
        String to,
        String toKind,
        String toName,
        String place,
        String placeName,
        Instant occurredAt,
        String offeredBy,
        Instant offeredAt,
        String reason,
        boolean overdue,
        int offered,
        int accepted,
        int missing,
        int refused,
        List<Item> items,
        List<ErasedText> erasures,
        @JsonIgnore int version) {

    /**
     * One code of a hand-over.
     *
     * @param state {@code OFFERED}, {@code ACCEPTED}, {@code REFUSED} or {@code MISSING}
     */
    public record Item(String code, String state) {}

    public HandOverView {
        items = List.copyOf(items);
        erasures = List.copyOf(erasures);
    }

    /** Whether somebody still has to answer. */
    @JsonIgnore
    public boolean isOpen() {
        return state.equals("OFFERED");
    }
}
