package org.dentary.custody.identity;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.evidence.ErasedText;
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
 * @param erasures of what was vouched for
 * @param decisionErasures of the decision
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
        List<EvidenceView> photos,
        List<ErasedText> erasures,
        List<ErasedText> decisionErasures) {

    /** A text of what was vouched for; where it was erased, by whom, when and why. */
    public String said(String field) {
        String text = switch (field) {
            case "problemText" -> problemText;
            case "evidence" -> evidence;
            default -> irreplaceable;
        };
        return text == null ? erased(erasures, field) : text;
    }

    /** Why it was granted or refused; where that was erased, by whom, when and why. */
    @JsonIgnore
    public String decisionSaid() {
        return decisionReason == null ? erased(decisionErasures, "reason") : decisionReason;
    }

    private String erased(List<ErasedText> all, String field) {
        return all.stream()
                .filter(one -> one.field().equals(field))
                .map(one -> "(" + one.told(zone) + ")")
                .findFirst()
                .orElse(null);
    }

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
        String said = said("problemText");
        return said == null ? words : words + (problemText == null ? " " + said : " (" + said + ")");
    }

    /** Where a list ends that ends with it. */
    Mark mark() {
        return new Mark(askedAt.toString(), id);
    }

    static final String OPEN = "OPEN";
    static final String GRANTED = "GRANTED";
    static final String REFUSED = "REFUSED";

    @JsonIgnore
    int version() {
        return isOpen() ? 0 : 1;
    }
}
