package org.dentary.platform.request;

import com.fasterxml.jackson.databind.util.StdConverter;
import java.util.List;

/** Words that a query gathered with spaces between, as the list that JSON tells; none for nothing. */
public final class SpacedList extends StdConverter<String, List<String>> {
    @Override
    public List<String> convert(String words) {
        return words.isBlank() ? List.of() : List.of(words.trim().split(" +"));
    }
}
