package org.dentary.jaw.key;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The key and its contradictions against a file of readings, each with the source of what is expected. */
class JawKeyVectorsTest {

    private static final ObjectMapper JSON =
            JsonMapper.builder().addModule(new JavaTimeModule()).build();

    @TestFactory
    Stream<DynamicTest> answersAsExpected() throws IOException {
        return vectors().stream()
                .map(vector -> DynamicTest.dynamicTest(vector.path("desc").asText(), () -> check(vector)));
    }

    @Test
    void holdsOverAHundredAndTwentyCasesHalfOfThemDisputedOrFlagged() throws IOException {
        List<JsonNode> vectors = vectors();
        long doubtful = vectors.stream().filter(JawKeyVectorsTest::doubtful).count();
        assertTrue(vectors.size() >= 120, () -> vectors.size() + " cases");
        assertTrue(doubtful * 2 >= vectors.size(), () -> doubtful + " of " + vectors.size());
        for (JsonNode vector : vectors) {
            assertFalse(
                    vector.path("source").asText().isBlank(),
                    vector.path("desc").asText());
        }
    }

    @Test
    void showsEveryContradictionAtWork() throws IOException {
        Set<String> seen = new HashSet<>();
        for (JsonNode vector : vectors()) {
            texts(vector.path("expect").path("contradictions")).forEach(rule -> seen.add(rule.split(" ")[0]));
            texts(vector.path("expectError")).forEach(problem -> seen.add(problem.split(" ")[1]));
        }
        for (int i = 1; i <= 28; i++) {
            assertTrue(seen.contains(String.format("J%02d", i)), "no case for J" + i);
        }
        JawRules.ALL.forEach(rule -> assertTrue(seen.contains(rule.id()), "no case for " + rule.id()));
    }

    private static void check(JsonNode vector) throws IOException {
        JawObservation jaw = JSON.treeToValue(vector.path("observation"), JawObservation.class);
        JawContext context =
                vector.has("context") ? JSON.treeToValue(vector.path("context"), JawContext.class) : JawContext.NONE;
        List<String> problems = JawKey.problems(jaw, context, AgeingPlan.NORTHERN).stream()
                .map(problem -> problem.field() + " " + problem.rule())
                .toList();
        assertEquals(texts(vector.path("expectError")), problems);
        if (vector.has("expectError")) {
            return;
        }
        JawAnswer answer = JawKey.answer(jaw, context, AgeingPlan.NORTHERN);
        JsonNode expect = vector.path("expect");
        assertEquals(
                texts(expect.path("contradictions")),
                answer.contradictions().stream()
                        .map(found -> found.rule() + " " + found.severity())
                        .toList());
        String keyClass = answer.keyClass() == null ? null : answer.keyClass().name();
        assertEquals(expect.path("keyClass").textValue(), keyClass);
        assertEquals(expect.path("certainty").asText(), answer.certainty().name());
        assertEquals(
                answer.keyClass() == null ? AgeClass.UNKNOWN : answer.keyClass().ageClass(), answer.ageClass());
        if (expect.has("needsSecondReader")) {
            assertEquals(expect.path("needsSecondReader").asBoolean(), answer.needsSecondReader());
        }
        if (expect.path("ageInMonths").isArray()) {
            assertEquals(
                    expect.path("ageInMonths").get(0).asDouble(),
                    answer.ageInMonths().from());
            JsonNode to = expect.path("ageInMonths").get(1);
            assertEquals(
                    to.isNull() ? null : Double.valueOf(to.asDouble()),
                    answer.ageInMonths().to());
        } else if (expect.has("ageInMonths")) {
            assertEquals(null, answer.ageInMonths());
        }
    }

    private static boolean doubtful(JsonNode vector) {
        return vector.has("expectError")
                || !vector.path("expect").path("contradictions").isEmpty()
                || "UNRESOLVED".equals(vector.path("expect").path("certainty").asText());
    }

    private static List<JsonNode> vectors() throws IOException {
        try (InputStream in = JawKeyVectorsTest.class.getResourceAsStream("jaw-key-vectors.json")) {
            List<JsonNode> vectors = new ArrayList<>();
            JSON.readTree(in).forEach(vectors::add);
            return vectors;
        }
    }

    private static List<String> texts(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false)
                .map(JsonNode::asText)
                .toList();
    }
}
