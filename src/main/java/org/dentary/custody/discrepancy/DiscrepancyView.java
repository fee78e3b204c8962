package org.dentary.custody.discrepancy;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceView;

/**
 * Something that does not add up, and who settles it by when.
 *
 * @param code the code it is about
 * @param kind {@code SHORT}, {@code OVER}, {@code DAMAGED}, {@code WRONG_ID}, {@code SEAL_MISMATCH}, {@code
 *     TEMPERATURE} or {@code OTHER}
 * @param owner account or person who settles it
 * @param evidence what was seen, in words; null where nobody said or it was erased
 * @param evidenceErased who erased those words, when and why; null where they stand or nobody said
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
        ErasedText evidenceErased,
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

    /** What was seen, or who erased that, when and why, on the clock of a zone; null where nobody said. */
    public String seen(String zone) {
        return evidenceErased == null ? evidence : "(" + evidenceErased.told(zone) + ")";
    }

    /** Where a list ends that ends with it. */
    Mark mark() {
        return new Mark(dueOn.toString(), id);
    }

    /** What its kind means, one sentence. */
    @JsonIgnore
    public String meaning() {
        return PutDiscrepancy.Kind.valueOf(kind).meaning();
    }
}
