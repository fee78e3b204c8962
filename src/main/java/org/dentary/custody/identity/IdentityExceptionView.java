package org.dentary.custody.identity;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import org.dentary.custody.evidence.EvidenceView;

/**
 * An identity exception; the specimen's papers tell of it for ever. Texts that were erased are null.
 *
 * @param code the specimen it is about; also that of the pieces cut from it
 * @param kit the kit whose animal the specimen counts for, if granted
 * @param zone time zone of the station that the label was issued to
 * @param problem a {@link LabelProblem}
 * @param state {@code OPEN}, {@code GRANTED} or {@code REFUSED}
 * @param askedBy who vouched and signed
 * @param decidedBy who granted or refused it, or null
 * @param photos photographs that show it, oldest first
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record IdentityExceptionView(
        String id,
        String code,
        String kit,
        String zone,
        String problem,
        String problemText,
        String discrepancy,
        String irreplaceable,
        String evidence,
        String state,
        String askedBy,
        String askedByName,
        Instant askedAt,
        String event,
        String decidedBy,
        String decidedByName,
        Instant decidedAt,
        String decisionReason,
        String decisionEvent,
        List<EvidenceView> photos) {

    /** Whether a second person has still to decide. */
    @JsonIgnore
    public boolean isOpen() {
        return state.equals(OPEN);
    }

    /** Whether the second person granted it. */
    @JsonIgnore
    public boolean isGranted() {
        return state.equals(GRANTED);
    }

    /** What is wrong with the label, in words. */
    @JsonIgnore
    public String problemWords() {
        String words = LabelProblem.valueOf(problem).words();
        return problemText == null ? words : words + " (" + problemText + ")";
    }

    static final String OPEN = "OPEN";
    static final String GRANTED = "GRANTED";
    static final String REFUSED = "REFUSED";

    @JsonIgnore
    int version() {
        return isOpen() ? 0 : 1;
    }
}
