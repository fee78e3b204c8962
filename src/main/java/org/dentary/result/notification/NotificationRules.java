package org.dentary.result.notification;

import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/**
 * How a released outcome is told. A detection is told by a trained person on the telephone first, a letter follows; the
 * other outcomes may go by letter or message (common practice, no source). The words are those for released outcomes, so
 * that a suspect and a pending animal cannot be told apart by them.
 */
public final class NotificationRules {
    private NotificationRules() {}

    /** Whether nothing more is to be done for the outcome after such a try. */
    static boolean closes(String outcome, Channel channel, AttemptResult result) {
        return switch (result) {
            case REACHED, NOT_WISHED, UNREACHABLE -> true;
            case SENT -> !outcome.equals("DETECTED") && (channel == Channel.LETTER || channel == Channel.MESSAGE);
            default -> false;
        };
    }

    /** Whether that can come of that channel: only what was sent is sent or returned, only a call goes unanswered. */
    static boolean fits(Channel channel, AttemptResult result) {
        boolean spoken = channel == Channel.PHONE || channel == Channel.IN_PERSON;
        return switch (result) {
            case SENT, RETURNED -> !spoken;
            case NO_ANSWER, CALL_BACK_ASKED -> spoken;
            default -> true;
        };
    }

    /** How the outcome is told, coded. */
    static String how(String outcome) {
        return outcome.equals("DETECTED") ? "PHONE_THEN_LETTER" : "LETTER_OR_MESSAGE";
    }

    /** By when it is to be told. */
    static Instant dueBy(String outcome, Instant releasedAt, int detectionHours, int otherDays) {
        return releasedAt.plus(
                outcome.equals("DETECTED") ? Duration.ofHours(detectionHours) : Duration.ofDays(otherDays));
    }

    /**
     * What to say of an outcome.
     *
     * @param outcome the released one: for a suspect that is {@code PENDING}
     * @param disease its name
     */
    public static String say(String outcome, String disease) {
        return switch (outcome) {
            case "PENDING" -> "The test for " + disease + " is not finished. Nothing can be said yet.";
            case "DETECTED" -> disease + " was detected in this animal. Give the health agency's advice and number.";
            case "NOT_DETECTED" ->
                disease + " was not detected in the tissue that was tested. That does not show that the"
                        + " animal was free of it. Give the health agency's advice and number.";
            case "INCONCLUSIVE" ->
                "The laboratory could not come to a result for " + disease
                        + ". Give the health agency's advice and number.";
            case "UNSUITABLE" ->
                "The tissue could not be tested for " + disease
                        + ", so there is no result. Give the health agency's advice and number.";
            case "NOT_ATTRIBUTABLE" ->
                "There is no result for " + disease
                        + ": the label on the tissue at the laboratory did not match, and it"
                        + " could not be shown that the tissue came from this animal. Whatever was found in it says"
                        + " nothing about this animal. Give the health agency's advice and number.";
            case "NOT_TESTED" -> "No test for " + disease + " was made. Give the health agency's advice and number.";
            default -> throw new IllegalArgumentException(outcome);
        };
    }

    /** An outcome as the subject of a letter says it. */
    public static String subject(String outcome) {
        return switch (outcome) {
            case "UNSUITABLE" -> "no result, the tissue was unsuitable for the test";
            case "NOT_ATTRIBUTABLE" -> "no result, the tissue could not be matched to the animal";
            case "NOT_TESTED" -> "no result, it was not tested";
            default -> words(outcome);
        };
    }

    /** A coded word for a file or letter: {@code NOT_DETECTED} is "not detected". */
    public static String words(String code) {
        return code.toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
