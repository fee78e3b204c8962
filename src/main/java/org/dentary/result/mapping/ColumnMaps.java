package org.dentary.result.mapping;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;

/** The laboratories' column maps as they are kept. */
@ApplicationScoped
public class ColumnMaps {
    private final ColumnMapQueries queries;
    private final ObjectMapper json;

    ColumnMaps(ColumnMapQueries queries, ObjectMapper json) {
        this.queries = queries;
        this.json = json;
    }

    /** An edition of a laboratory's map. */
    public record Edition(String laboratory, int edition, ColumnMap map, String madeBy, java.time.Instant madeAt) {}

    /** Every edition, by laboratory, newest first. */
    public List<Edition> all() {
        return queries.all().stream()
                .map(row ->
                        new Edition(row.laboratory(), row.edition(), read(row.mapping()), row.madeBy(), row.madeAt()))
                .toList();
    }

    /** The one by which the laboratory's files are read now. */
    public Optional<Edition> inForce(String laboratory) {
        return all().stream().filter(one -> one.laboratory().equals(laboratory)).findFirst();
    }

    /** Keeps the next edition, in the caller's transaction. */
    public void keep(String laboratory, int edition, ColumnMap map, String by, java.time.Instant at) {
        try {
            queries.insert(laboratory, edition, json.writeValueAsString(map), by, at);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a map is plain text and can be written", e);
        }
    }

    private ColumnMap read(String text) {
        try {
            return json.readValue(text, ColumnMap.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a column map is not what was written", e);
        }
    }
}
