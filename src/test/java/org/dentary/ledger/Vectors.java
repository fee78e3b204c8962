package org.dentary.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.function.ThrowingConsumer;

/** Reads the vector files beside the tests; each vector has {@code desc}, {@code source} and {@code expectError}. */
final class Vectors {

    private Vectors() {}

    static JsonNode read(String file) {
        try (InputStream in = Vectors.class.getResourceAsStream("/ledger/" + file)) {
            return new ObjectMapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Stream<JsonNode> each(JsonNode vectors) {
        return StreamSupport.stream(vectors.spliterator(), false);
    }

    static Stream<DynamicTest> tests(JsonNode vectors, ThrowingConsumer<JsonNode> test) {
        return DynamicTest.stream(
                each(vectors),
                vector -> vector.path("desc").asText() + " ("
                        + vector.path("source").asText() + ")",
                test);
    }
}
