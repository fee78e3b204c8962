package org.dentary.result.notification.caller;

import java.time.LocalDate;
import java.util.List;

/**
 * An animal that a caller may have brought, without the contact: the caller names day and station, then hears the words.
 */
public record CallerMatch(
        String kit, String registration, String species, LocalDate diedOn, String station, List<Word> words) {
    /** What to say for one disease; the same for everything that is not released. */
    public record Word(String disease, String outcome, String say) {}
}
