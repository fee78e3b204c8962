package org.dentary.custody.evidence;

import java.time.Instant;
import java.util.Map;

/**
 * That a text, a name or a signature of an event was erased; the event holds its digest still.
 *
 * @param field which, as the event names it
 * @param words the same in plain words
 */
public record ErasedText(String field, String words, String by, String byName, Instant at, String reason) {
    /** The fields whose content is kept outside the hashed bytes, with what people call them. */
    public static final Map<String, String> FIELDS = Map.of(
            "reason", "reason",
            "evidence", "evidence in words",
            "signedBy", "name of who signed",
            "signature", "signature",
            "placeText", "place in words",
            "carrier", "carrier",
            "waybill", "waybill");
}
