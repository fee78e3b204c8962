package org.dentary.jaw;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.Certainty;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.KeyClass;

/**
 * A reading as kept.
 *
 * @param observation what was sent, as it was given
 * @param keyClass end of the key; null where it gave none
 * @param disputed whether it contradicts itself so that its class cannot stand
 * @param countsAlone whether the plan lets the reader's class stand without a second reader
 * @param drawn whether the jaw was drawn by lot for a second reading, with this one
 * @param blind whether it was given without sight of an earlier one
 */
public record JawReadingView(
        UUID id,
        String kit,
        Instant readAt,
        String examiner,
        AgeingMethod method,
        JsonNode observation,
        KeyClass keyClass,
        AgeClass ageClass,
        Certainty certainty,
        boolean disputed,
        List<JawAnswer.Contradiction> contradictions,
        boolean needsSecondReader,
        boolean countsAlone,
        boolean drawn,
        boolean blind,
        String side,
        String jawState,
        String whereabouts,
        String note,
        String ruleSetVersion,
        String receivedBy,
        Instant receivedAt) {
    /** The youngest it can be where only a bound was told, as a code; null otherwise. */
    @JsonIgnore
    public String getAtLeast() {
        return observation == null ? null : observation.path("atLeast").textValue();
    }
}
