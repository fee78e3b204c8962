package org.dentary.people;

import java.util.List;

/**
 * A locked place.
 *
 * @param station code of the station it stands at, or null
 * @param keeper code of the person who answers for it
 * @param people codes of those who may put in and take out, the keeper among them, sorted
 */
public record StoreView(String code, String name, String station, String keeper, List<String> people) {
    public StoreView {
        people = List.copyOf(people);
    }
}
