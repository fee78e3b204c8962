package org.dentary.custody.evidence;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;

/**
 * That a text, a name or a signature of an event was erased; the event holds its digest still.
 *
 * @param field which, as the event names it
 * @param words the same in plain words
 */
public record ErasedText(String field, String words, String by, String byName, Instant at, String reason) {
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", Locale.US);

    /** When, by whom and why, and that its digest stands; for the end of a sentence, on the clock of a zone. */
    public String told(String zone) {
        return "erased on " + MOMENT.withZone(ZoneId.of(zone)).format(at) + " by " + byName + ": " + reason
                + "; its digest stands";
    }

    /** The fields whose content is kept outside the hashed bytes, with what people call them. */
    public static final Map<String, String> FIELDS = Map.of(
            "reason", "reason",
            "evidence", "evidence in words",
            "problemText", "label problem in words",
            "signedBy", "name of who signed",
            "signature", "signature",
            "placeText", "place in words",
            "carrier", "carrier",
            "waybill", "waybill");
}
