package org.dentary.jaw.queue;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;

/**
 * A jaw that somebody should do something about.
 *
 * @param task {@code READ}, {@code READ_AGAIN} (by someone who has not read it) or {@code DECIDE} (by a third person)
 * @param since when it came to be so
 * @param whereabouts where the jaw was said to be when last read, as a code; null where nobody said
 * @param readers how many persons have read it
 * @param why reasons as codes, separated by spaces; none of them gives a class away
 * @param photo id of the newest photo of the jaw, or null
 */
public record JawTask(
        String kit,
        String task,
        Instant since,
        String season,
        String station,
        LocalDate diedOn,
        String jawStatus,
        String whereabouts,
        int readers,
        String why,
        String photo) {
    /** Where the jaw is, in words. */
    @JsonIgnore
    public String getWhere() {
        if (whereabouts != null) {
            return switch (whereabouts) {
                case "RETURNED" -> "given back";
                case "GONE" -> "gone";
                case "PHOTO_ONLY" -> "only the photo";
                default -> "kept";
            };
        }
        return switch (jawStatus) {
            case "PHOTO_TO_READ" -> photo == null ? "photo, not here yet" : "photo";
            case "NOT_EXAMINED" -> "not examined";
            default -> "kept";
        };
    }

    /** The reasons in words. */
    @JsonIgnore
    public String getWhyInWords() {
        return why.toLowerCase(Locale.ROOT).replace(" ", "; ").replace('_', ' ');
    }
}
