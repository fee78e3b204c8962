package org.dentary.result.correction;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A released word that was replaced, with who had the earlier one.
 *
 * @param recipients in order: contact, agencies in the order of their list, roles, data cuts
 */
public record CorrectionView(Head head, List<Recipient> recipients, List<Attempt> attempts) {
    /**
     * One line of the work list.
     *
     * @param earlier the word that was read before
     * @param word the word in its place; {@code PENDING}: the earlier one is withdrawn and none stands yet
     * @param cause what revised it: {@code CORRECTION}, {@code RE_ATTRIBUTION}, {@code FINDING}, {@code RELEASE} ...
     * @param state {@code OPEN}, {@code DONE}, or {@code SUPERSEDED} by a later correction of the same animal
     * @param people how many had the earlier word
     * @param told how many of them know of the correction
     */
    public record Head(
            Long id,
            String kit,
            String disease,
            String diseaseName,
            String earlier,
            String word,
            String cause,
            Instant at,
            String station,
            String timeZone,
            String state,
            Long people,
            Long told) {}

    /**
     * Somebody who had the earlier word.
     *
     * @param kind {@code CONTACT}, {@code AGENCY}, {@code ROLE} or {@code CUT}: a data cut that stands on the word
     * @param named who, without a private person's name
     * @param had the word they had
     * @param hadBy how they had it, in words
     * @param told whether they know: a contact by the notifications, a cut when it is marked superseded, others by a try
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Recipient(
            Long id,
            String kind,
            String recipient,
            String named,
            String had,
            String hadBy,
            Instant hadAt,
            Boolean told,
            Long attempts) {}

    /** A try to tell somebody. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Attempt(UUID id, Long recipient, String channel, String result, Instant at, String note, String by) {}

    public CorrectionView {
        recipients = List.copyOf(recipients);
        attempts = List.copyOf(attempts);
    }

    /** The tries to tell one of them, oldest first. */
    public List<Attempt> triesFor(Long recipient) {
        return attempts.stream()
                .filter(one -> one.recipient().equals(recipient))
                .toList();
    }
}
