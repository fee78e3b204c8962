package org.dentary.result.mapping;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The laboratories' code maps as they are kept. */
@ApplicationScoped
public class CodeMaps {
    private final CodeMapQueries queries;
    private final ObjectMapper json;

    CodeMaps(CodeMapQueries queries, ObjectMapper json) {
        this.queries = queries;
        this.json = json;
    }

    /** An edition of a laboratory's map. */
    public record Edition(String laboratory, int edition, CodeMap map, String madeBy, Instant madeAt) {}

    /** Every edition, by laboratory, newest first. */
    public List<Edition> all() {
        return queries.all().stream()
                .map(row -> new Edition(
                        row.laboratory(),
                        row.edition(),
                        new CodeMap(row.inForceFrom(), read(row.codes())),
                        row.madeBy(),
                        row.madeAt()))
                .toList();
    }

    /** Those of a laboratory, newest first. */
    public List<Edition> of(String laboratory) {
        return all().stream().filter(one -> one.laboratory().equals(laboratory)).toList();
    }

    /** The edition for messages made that day: the latest in force by then, of several the newest. */
    public static Optional<Edition> inForce(List<Edition> editions, LocalDate day) {
        return editions.stream()
                .filter(one -> !one.map().inForceFrom().isAfter(day))
                .max(Comparator.comparing((Edition one) -> one.map().inForceFrom())
                        .thenComparing(Edition::edition));
    }

    /** Keeps the next edition, in the caller's transaction. */
    public void keep(String laboratory, int edition, CodeMap map, String by, Instant at) {
        try {
            queries.insert(laboratory, edition, map.inForceFrom(), json.writeValueAsString(map.codes()), by, at);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a map is plain text and can be written", e);
        }
    }

    private Map<String, Map<String, String>> read(String text) {
        try {
            return json.readValue(text, new TypeReference<Map<String, Map<String, String>>>() {});
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a code map is not what was written", e);
        }
    }
}
