package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class CanonicalJsonTest {

    private final JsonNode vectors = Vectors.read("rfc8785.json");

    @TestFactory
    Stream<DynamicTest> writesOrRefusesThePublishedTexts() {
        return Vectors.tests(vectors.path("texts"), vector -> {
            String input = vector.path("input").asText();
            if (vector.path("expectError").isNull()) {
                assertEquals(vector.path("expected").asText(), CanonicalJson.canonicalize(input));
            } else {
                var refusal = assertThrows(IllegalArgumentException.class, () -> CanonicalJson.canonicalize(input));
                assertTrue(
                        refusal.getMessage().contains(vector.path("expectError").asText()), refusal.getMessage());
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> writesThePublishedNumbers() {
        return Vectors.tests(vectors.path("numbers"), vector -> {
            double number = Double.longBitsToDouble(
                    Long.parseUnsignedLong(vector.path("bits").asText(), 16));
            String expected = "[" + vector.path("expected").asText() + "]";
            assertEquals(expected, CanonicalJson.canonicalize("[" + new BigDecimal(number).toPlainString() + "]"));
            assertEquals(expected, CanonicalJson.canonicalize(expected), "its own form is its canonical form");
        });
    }

    @Test
    void writesTimesInMicrosecondsAndDecimalsAsStrings() {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("whole", 7L);
        content.put("gone", null);
        content.put("at", Instant.parse("2026-11-14T09:00:00.123456789-06:00"));
        content.put("celsius", new BigDecimal("-18.50"));
        content.put("tiny", new BigDecimal("1E-7"));
        content.put("list", List.of(true, "b"));
        assertEquals(
                "{\"at\":\"2026-11-14T15:00:00.123456Z\",\"celsius\":\"-18.50\",\"list\":[true,\"b\"],"
                        + "\"tiny\":\"0.0000001\",\"whole\":7}",
                CanonicalJson.of(content));
    }

    @Test
    void putsOnlyTheDigestOfRedactedContentIntoTheText() {
        Redacted note = Redacted.of("torn bag");
        assertEquals("{\"note\":{\"sha256\":\"" + note.digest() + "\"}}", CanonicalJson.of(Map.of("note", note)));
    }

    @Test
    void refusesFloatingNumbersBecauseTheirDigitsAreNotThoseTyped() {
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(Map.of("a", 0.1)));
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(Map.of("a", 0.1f)));
    }

    @Test
    void refusesWholeNumbersThatADoubleCannotHold() {
        assertEquals("{\"a\":9007199254740991}", CanonicalJson.of(Map.of("a", (1L << 53) - 1)));
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(Map.of("a", 1L << 53)));
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(Map.of("a", Long.MIN_VALUE)));
    }

    @Test
    void refusesHalfASurrogatePairInNamesAndValues() {
        assertEquals("{\"a\":\"\uD83D\uDE02\"}", CanonicalJson.of(Map.of("a", "\uD83D\uDE02")));
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(Map.of("a", "\uD83D")));
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(Map.of("a", "x\uDE02y")));
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(Map.of("\uD83D", "a")));
    }

    @Test
    void refusesNullInsideAList() {
        assertThrows(IllegalArgumentException.class, () -> CanonicalJson.of(Map.of("a", Arrays.asList("b", null))));
    }
}
