package org.dentary.custody.chain;

import java.time.ZoneId;

/**
 * Where something happened.
 *
 * @param code opaque id: a station, store, organisation, laboratory or box; null for a place in words or none
 * @param words as typed where it is none of these, else null
 * @param kind {@code STATION}, {@code STORE}, {@code PARTY}, {@code BOX} or null
 * @param zone its time zone, or null if not known
 */
public record Place(String code, String words, String kind, ZoneId zone) {
    public static final Place NOT_SAID = new Place(null, null, null, null);

    static Place inWords(String typed) {
        return new Place(null, typed, null, null);
    }

    /** As a chain's end remembers it; null if nobody said. */
    public String shown() {
        return code == null ? words : code;
    }
}
