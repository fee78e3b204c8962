package org.dentary.result.notification;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.InvalidInput;

/** A try as it was typed; times are those of the station's clock. */
record AttemptForm(String key, String outcome, String channel, String result, String at, String note) {
    AttemptForm {
        key = key == null || key.isBlank() ? UUID.randomUUID().toString() : key;
        outcome = text(outcome);
        channel = text(channel);
        result = text(result);
        at = text(at);
        note = text(note);
    }

    /** A choice of a list: what is sent and what is read. */
    public record Choice(String code, String words) {}

    static final List<Choice> CHANNELS = List.of(
            new Choice("PHONE", "Telephone"),
            new Choice("IN_PERSON", "In person"),
            new Choice("LETTER", "Letter"),
            new Choice("MESSAGE", "Message"));
    static final List<Choice> RESULTS = List.of(
            new Choice("REACHED", "Reached and told"),
            new Choice("SENT", "Sent"),
            new Choice("NO_ANSWER", "No answer"),
            new Choice("CALL_BACK_ASKED", "Asked to call back, nothing said of the result"),
            new Choice("WRONG_ADDRESS", "Wrong number or address"),
            new Choice("RETURNED", "Came back"),
            new Choice("NOT_WISHED", "Does not want to be told"),
            new Choice("UNREACHABLE", "Every way tried, given up"));

    UUID id() {
        try {
            return UUID.fromString(key);
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field("key", "NOT_A_KEY", "The form was changed; open the page again");
        }
    }

    RecordAttempt command(String zone) {
        return new RecordAttempt(
                outcome,
                choice("channel", Channel.class, channel, "Say how it was tried"),
                choice("result", AttemptResult.class, result, "Say what came of it"),
                moment(zone),
                note.isEmpty() ? null : note,
                null);
    }

    private OffsetDateTime moment(String zone) {
        try {
            return CalendarText.local(at).atZone(ZoneId.of(zone)).toOffsetDateTime();
        } catch (DateTimeException e) {
            throw InvalidInput.field("at", "NOT_A_TIME", "Give day and time, such as 2026-11-25T14:30");
        }
    }

    private static <E extends Enum<E>> E choice(String field, Class<E> type, String code, String message) {
        return Arrays.stream(type.getEnumConstants())
                .filter(one -> one.name().equals(code))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(field, "NOT_A_VALUE", message));
    }

    private static String text(String typed) {
        return typed == null ? "" : typed.strip();
    }
}
