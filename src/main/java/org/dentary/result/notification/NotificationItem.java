package org.dentary.result.notification;

import java.time.Instant;
import java.time.LocalDate;

/**
 * Somebody who is to be told, or was: one animal's released outcome for one disease. Nothing in it names a person.
 *
 * @param state {@code DUE}, {@code TELL_AGAIN} (told something else before), {@code NO_CONTACT} (a detection nobody left
 *     a contact for), {@code HELD} (labels in doubt: tell nothing), {@code TOLD} or {@code CLOSED} (not reached, given up)
 * @param outcome the released one, or {@code NOT_ATTRIBUTABLE} where all its tissue was refused by identity exceptions
 * @param how {@code PHONE_THEN_LETTER} or {@code LETTER_OR_MESSAGE}
 * @param dueBy by when the plan wants it told; null where nothing is due
 * @param attempts tries so far, corrected ones left out
 * @param toldBefore what was told last, or null
 */
public record NotificationItem(
        String kit,
        String disease,
        String diseaseName,
        String outcome,
        String state,
        String how,
        boolean contactKept,
        String season,
        String station,
        String timeZone,
        String unit,
        LocalDate diedOn,
        Instant releasedAt,
        Instant dueBy,
        boolean overdue,
        long attempts,
        Instant lastAttemptAt,
        String lastResult,
        String toldBefore) {}
