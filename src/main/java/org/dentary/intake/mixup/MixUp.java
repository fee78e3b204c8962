package org.dentary.intake.mixup;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.time.LocalDate;

/**
 * A suspected mix-up.
 *
 * @param kit one animal
 * @param other the other, or null where only one is known: scan it on the page
 * @param sign what makes it likely
 * @param detail the number, the codes or the rule that shows it
 * @param station where the first was taken in
 * @param diedOn of the first, or null
 * @param at when the sign came up
 * @param zone the station's
 * @param setAside why it was none and who said so, or null while it is open
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MixUp(
        String kit,
        String other,
        Sign sign,
        String detail,
        String station,
        String stationName,
        LocalDate diedOn,
        Instant at,
        String zone,
        String setAside) {
    /** Where both are compared. */
    public String getHref() {
        return "/animals/" + kit + "/put-right" + (other == null ? "" : "?with=" + other);
    }
}
