package org.dentary.plan;

import java.time.ZoneId;

/**
 * A place where animals are taken in.
 *
 * @param unit code of the management unit it stands in, or null
 * @param region region of that unit, or null
 * @param timeZone IANA name; decides which day, and so which season, an instant falls on
 */
public record StationView(String code, String name, String unit, String region, String timeZone) {
    /** Its time zone. */
    public ZoneId zone() {
        return ZoneId.of(timeZone);
    }
}
