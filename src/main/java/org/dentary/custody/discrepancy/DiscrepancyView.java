package org.dentary.custody.discrepancy;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.dentary.custody.evidence.EvidenceView;

/**
 * Something that does not add up, and who settles it by when.
 *
 * @param code the code it is about
 * @param kind {@code SHORT}, {@code OVER}, {@code DAMAGED}, {@code WRONG_ID}, {@code SEAL_MISMATCH}, {@code
 *     TEMPERATURE} or {@code OTHER}
 * @param owner account or person who settles it
 * @param outcome how it was settled, or null while it is open
 * @param subject id of the hand-over or submission it arose in, or null
 * @param overdue whether it is open past its day
 * @param photos photographs that show it or how it was settled, oldest first
 * @param version today's version, sent as ETag
 */
public record DiscrepancyView(
        String id,
        String code,
        String kind,
        String owner,
        String ownerName,
        LocalDate dueOn,
        String evidence,
        String outcome,
        String subject,
        String openedBy,
        String openedByName,
        Instant openedAt,
        Instant closedAt,
        boolean overdue,
        List<EvidenceView> photos,
        @JsonIgnore int version) {
    public DiscrepancyView {
        photos = List.copyOf(photos);
    }

    /** What its kind means, one sentence. */
    @JsonIgnore
    public String meaning() {
        return PutDiscrepancy.Kind.valueOf(kind).meaning();
    }
}
