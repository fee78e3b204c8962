package org.dentary.platform.problem;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Every route of the API document, called wrongly: no account, an address that is none, a body that is empty, broken, of
 * the wrong shape or with an unknown field. Each answers with a problem (RFC 9457) that says what to do, and never with
 * 500.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class MalformedCallsTest {
    private static final Set<String> METHODS = Set.of("get", "put", "post", "delete");
    /** Who to call as: the first that may. */
    private static final List<String> ACCOUNTS =
            List.of("coordinator", "liaison", "epidemiologist", "notifier", "auditor", "sampler");

    private static final Map<String, String> WHO = new HashMap<>();
    /** Names of classes, and what a library says of itself. */
    private static final Pattern INTERNAL = Pattern.compile("java\\.|jakarta\\.|org\\.dentary|must not be null");

    private static final String ID = "7f0e3a52-3b1c-4f7d-9c60-0d3f6a1b2c4e";

    @Inject
    SeasonFixture season;

    private JsonNode document;

    @BeforeEach
    void read() throws Exception {
        season.ensure();
        document = new ObjectMapper()
                .readTree(given().get("/q/openapi?format=json").asString());
    }

    @Test
    void withoutAnAccountNothingButWhatIsOpenAnswers() {
        List<String> faults = new ArrayList<>();
        List<String> open = new ArrayList<>();
        operations((name, operation) -> {
            Response answer = given().contentType("application/json").body("{}").request(verb(name), path(name));
            if (answer.statusCode() == 401) {
                problem(name, answer, Set.of(401), faults);
            } else {
                open.add(name);
            }
        });
        assertEquals(List.of(), faults);
        assertTrue(open.size() < 30, "open without an account: " + open);
    }

    @Test
    void aBodyThatIsNoneOrBrokenIsRefused() {
        List<String> faults = new ArrayList<>();
        bodies((name, operation) -> {
            for (String body : List.of("", "{", "[1, 2", "nothing", "{\"a\": }")) {
                // A list is seen not to be what is asked before it is seen to be broken.
                problem(
                        name + " " + body,
                        call(name, body),
                        body.startsWith("[") ? Set.of(400, 404, 415, 422) : Set.of(400, 404, 415),
                        faults);
            }
        });
        assertEquals(List.of(), faults);
    }

    @Test
    void aBodyOfTheWrongShapeIsRefused() {
        List<String> faults = new ArrayList<>();
        bodies((name, operation) -> {
            for (String body : List.of("[]", "\"text\"", "7", "{\"noSuchFieldAtAll\": 1}", "null")) {
                problem(name + " " + body, call(name, body), Set.of(400, 404, 409, 415, 422), faults);
            }
        });
        assertEquals(List.of(), faults);
    }

    /** RFC 8259, section 8.2: half a surrogate pair is no character, and a database would keep another in its place. */
    @Test
    void aFieldThatHoldsHalfACharacterIsRefusedByName() {
        everyText("\"A\\ud800\"", Set.of("string"));
    }

    @Test
    void aFieldThatHoldsNulIsRefusedByName() {
        everyText("\"A\\u0000B\"", Set.of("string"));
    }

    @Test
    void aListWithNothingInItIsRefusedByName() {
        everyText("[null]", Set.of("array"));
    }

    @Test
    void aDayOrTimeBeyondTheCalendarIsRefusedByName() {
        for (String time : List.of(
                "\"-999999999-01-01T00:00:00+18:00\"",
                "\"+999999999-12-31T23:59:59Z\"",
                "\"0000-01-01T00:00:00Z\"",
                "\"9999-12-31T23:59:59Z\"",
                "1700000000",
                "\"1700000000\"",
                "[]")) {
            everyText(time, Set.of("date-time", "date"));
        }
        everyText("\"2026-11-25T00:00:00Z\"", Set.of("date"));
        everyText("\"0000-01-01\"", Set.of("date"));
    }

    @Test
    void aBodyOfNullIsToldAsSuch() {
        List<String> faults = new ArrayList<>();
        bodies((name, operation) -> {
            Response answer = call(name, "null");
            if (answer.statusCode() == 422 && !answer.asString().contains("null was sent")) {
                faults.add(name + " " + answer.asString());
            }
        });
        assertEquals(List.of(), faults);
    }

    /** Sends a value in every field of a kind, by JSON type or format; where it is the body that is judged, its field is named. */
    private void everyText(String value, Set<String> kinds) {
        List<String> faults = new ArrayList<>();
        int[] sent = {0};
        bodies((name, operation) -> schema(operation).path("properties").properties().stream()
                .filter(field -> isOf(resolved(field.getValue()), kinds))
                .forEach(field -> {
                    sent[0]++;
                    Response answer = call(name, "{\"" + field.getKey() + "\": " + value + "}");
                    String call = name + " " + field.getKey() + " " + value;
                    problem(call, answer, Set.of(404, 415, 422), faults);
                    if (answer.statusCode() == 422
                            && !answer.jsonPath().getString("errors.field").contains(field.getKey())) {
                        faults.add(call + " is not named: " + answer.asString());
                    }
                    if (answer.asString().contains("BEYOND_RANGE")) {
                        faults.add(call + " is refused by the database alone");
                    }
                }));
        assertEquals(List.of(), faults);
        assertTrue(sent[0] > 0, "no field is one of " + kinds);
    }

    private static boolean isOf(JsonNode schema, Set<String> kinds) {
        String format = schema.path("format").asText();
        return format.isEmpty()
                ? kinds.contains(schema.path("type").asText())
                        && schema.path("enum").isEmpty()
                : kinds.contains(format);
    }

    private JsonNode resolved(JsonNode schema) {
        String reference = schema.path("$ref").asText();
        return reference.isEmpty()
                ? schema
                : document.path("components").path("schemas").path(reference.substring(reference.lastIndexOf('/') + 1));
    }

    @Test
    void everyFieldOfTheWrongTypeIsNamed() {
        List<String> faults = new ArrayList<>();
        bodies((name, operation) -> schema(operation)
                .path("properties")
                .properties()
                .forEach(field -> {
                    String body = "{\"" + field.getKey() + "\": {\"not\": [\"what\", \"is\", \"asked\"]}}";
                    Response answer = call(name, body);
                    problem(name + " " + body, answer, Set.of(400, 404, 409, 415, 422), faults);
                }));
        assertEquals(List.of(), faults);
    }

    @Test
    void anAddressThatIsNoneIsNotFound() {
        List<String> faults = new ArrayList<>();
        operations((name, operation) -> {
            String route = name.substring(name.indexOf(' ') + 1);
            if (route.contains("{")) {
                for (String value : List.of("no-such-thing", "%00", "..%2f..", "'%20or%20'1'='1", "x".repeat(2000))) {
                    String path = route.replaceAll("\\{[^}]+}", value);
                    Response answer = as(who(name))
                            .urlEncodingEnabled(false)
                            .contentType("application/json")
                            .body("{}")
                            .request(verb(name), path);
                    if (answer.statusCode() >= 400) {
                        problem(
                                name + " " + value.substring(0, Math.min(20, value.length())),
                                answer,
                                Set.of(400, 403, 404, 405, 406, 409, 410, 412, 414, 415, 422),
                                faults);
                    }
                }
            }
        });
        assertEquals(List.of(), faults);
    }

    @Test
    void noAnswerIsKeptByACache() {
        List<String> kept = new ArrayList<>();
        operations((name, operation) -> {
            if (verb(name).equals("GET")) {
                String said = as(who(name)).get(path(name)).header("Cache-Control");
                if (!"private, no-store".equals(said)) {
                    kept.add(name + ": " + said);
                }
            }
        });
        assertEquals(List.of(), kept);
    }

    @Test
    void aParameterOfTheWrongFormIsRefused() {
        List<String> faults = new ArrayList<>();
        operations((name, operation) -> operation.path("parameters").forEach(parameter -> {
            if (parameter.path("in").asText().equals("query") && verb(name).equals("GET")) {
                Response answer = as(who(name))
                        .urlEncodingEnabled(false)
                        .get(path(name) + "?" + parameter.path("name").asText() + "=%27%22%3Cx%3E%00%F0%9F%A6%8C");
                if (answer.statusCode() >= 400) {
                    problem(
                            name + " ?" + parameter.path("name").asText(),
                            answer,
                            Set.of(400, 403, 404, 409, 422, 429),
                            faults);
                }
            }
        }));
        assertEquals(List.of(), faults);
    }

    private Response call(String name, String body) {
        return as(who(name)).contentType("application/json").body(body).request(verb(name), path(name));
    }

    private String who(String name) {
        return WHO.computeIfAbsent(name, this::firstAllowed);
    }

    private String firstAllowed(String name) {
        return ACCOUNTS.stream()
                .filter(account -> as(account)
                                .contentType("application/json")
                                .body("{")
                                .request(verb(name), path(name))
                                .statusCode()
                        != 403)
                .findFirst()
                .orElse("coordinator");
    }

    private static RequestSpecification as(String account) {
        return given().auth().preemptive().basic(account, SeasonFixture.PASSWORD);
    }

    private static void problem(String call, Response answer, Set<Integer> allowed, List<String> faults) {
        if (!allowed.contains(answer.statusCode())) {
            faults.add(call + " answers " + answer.statusCode());
        } else if (!answer.contentType().startsWith("application/problem+json")) {
            faults.add(call + " answers " + answer.statusCode() + " as " + answer.contentType());
        } else if (answer.path("status") == null
                || (Integer) answer.path("status") != answer.statusCode()
                || blank(answer.path("title"))
                || blank(answer.path("detail"))
                || !everyErrorSpeaks(answer)) {
            faults.add(call + " says too little: " + answer.asString());
        }
    }

    /** At least one error, each with a field (empty for the whole request), a rule, and words that name nothing internal. */
    private static boolean everyErrorSpeaks(Response answer) {
        List<Map<String, String>> errors = answer.path("errors");
        return errors != null
                && !errors.isEmpty()
                && errors.stream()
                        .allMatch(error -> error.get("field") != null
                                && !blank(error.get("rule"))
                                && !blank(error.get("message"))
                                && !INTERNAL.matcher(error.get("message")).find());
    }

    private static boolean blank(String text) {
        return text == null || text.isBlank();
    }

    private static String verb(String name) {
        return name.substring(0, name.indexOf(' '));
    }

    /** An address whose values are of the kind asked for; what they name is not there. */
    private String path(String name) {
        String path = name.substring(name.indexOf(' ') + 1);
        JsonNode route = document.path("paths").path(path);
        List<JsonNode> parameters = new ArrayList<>();
        route.path("parameters").forEach(parameters::add);
        route.path(verb(name).toLowerCase(Locale.ROOT)).path("parameters").forEach(parameters::add);
        for (JsonNode parameter : parameters) {
            JsonNode kind = resolved(parameter.path("schema"));
            String value = kind.path("type").asText().equals("integer")
                    ? "1"
                    : kind.path("enum").path(0).asText(ID);
            path = path.replace("{" + parameter.path("name").asText() + "}", value);
        }
        return path.replaceAll("\\{[^}]+}", ID);
    }

    private JsonNode schema(JsonNode operation) {
        JsonNode schema = operation
                .path("requestBody")
                .path("content")
                .path("application/json")
                .path("schema");
        return resolved(schema);
    }

    private void bodies(BiConsumer<String, JsonNode> each) {
        operations((name, operation) -> {
            JsonNode content = operation.path("requestBody").path("content");
            if (content.has("application/json")
                    && !schema(operation).path("properties").isEmpty()) {
                each.accept(name, operation);
            }
        });
    }

    private void operations(BiConsumer<String, JsonNode> each) {
        TreeMap<String, JsonNode> all = new TreeMap<>();
        document.path("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(operation -> {
                    if (METHODS.contains(operation.getKey())) {
                        all.put(
                                operation.getKey().toUpperCase(Locale.ROOT) + " " + path.getKey(),
                                operation.getValue());
                    }
                }));
        all.forEach(each);
    }
}
