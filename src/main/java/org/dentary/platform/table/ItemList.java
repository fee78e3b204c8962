package org.dentary.platform.table;

import java.util.List;

/** A list as the API answers it: {@code {"items": [...]}}. */
public record ItemList<T>(List<T> items) {
    public ItemList {
        items = List.copyOf(items);
    }
}
