package org.dentary.portal;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.linelist.LineColumn;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the OpenAPI document says of each route of the API. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ApiDocumentTest {
    private static final Set<String> METHODS = Set.of("get", "put", "post", "delete");

    @Inject
    SeasonFixture season;

    private JsonNode document;

    @BeforeEach
    void read() throws Exception {
        season.ensure();
        document = new ObjectMapper()
                .readTree(given().get("/q/openapi?format=json")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString());
    }

    @Test
    void itIsOpenApi31AndHoldsTheApiAlone() {
        assertTrue(document.path("openapi").textValue().startsWith("3.1"));
        document.path("paths").fieldNames().forEachRemaining(path -> assertTrue(path.startsWith("/api/v1/"), path));
        assertTrue(document.path("paths").has("/api/v1/animals/{kit}"));
    }

    @Test
    void everyRouteSaysInWordsWhatItDoes() {
        List<String> dumb = new ArrayList<>();
        operations((name, operation) -> {
            if (operation.path("summary").asText().split(" ").length < 3) {
                dumb.add(name + ": " + operation.path("summary").asText());
            }
        });
        assertEquals(List.of(), dumb);
    }

    @Test
    void everyBodyHasAnExampleThatItsSchemaAllows() {
        List<String> faults = new ArrayList<>();
        operations((name, operation) -> operation
                .path("requestBody")
                .path("content")
                .properties()
                .forEach(body -> {
                    JsonNode schema = resolved(body.getValue().path("schema"));
                    if (!schema.path("properties").isEmpty()) {
                        JsonNode example = body.getValue().has("example")
                                ? body.getValue().get("example")
                                : body.getValue().path("examples").isEmpty()
                                        ? null
                                        : body.getValue()
                                                .path("examples")
                                                .elements()
                                                .next()
                                                .path("value");
                        if (example == null) {
                            faults.add(name + " has no example");
                        } else {
                            compare(name, parsed(example), schema, faults);
                        }
                    }
                }));
        assertEquals(List.of(), faults);
    }

    @Test
    void everyChangeSaysWhichProblemsItAnswers() {
        JsonNode take =
                document.path("paths").path("/api/v1/animals/{kit}").path("put").path("responses");
        for (String status : List.of("400", "401", "403", "404", "409", "412", "422")) {
            assertTrue(take.path(status).path("content").has("application/problem+json"), status);
        }
    }

    @Test
    void everyReportTakesWhatItsAddressIsSaidToTakeAndNothingElse() {
        List<String> faults = new ArrayList<>();
        for (String report : List.of(
                "line-list", "prevalence", "true-prevalence", "chance-of-detection", "comparisons", "ageing-error")) {
            Set<String> said = new TreeSet<>(document.path("paths")
                    .path("/api/v1/" + report)
                    .path("get")
                    .path("parameters")
                    .findValuesAsText("name"));
            Set<String> asked = new TreeSet<>(LineColumn.fields());
            asked.addAll(List.of("columns", "diedOnFrom", "diedOnTo", "interval", "confidence", "nonsense"));
            asked.forEach(name -> {
                if (refuses(report, name) == said.contains(name)) {
                    faults.add(report + (said.contains(name) ? " says it takes " : " takes and does not say ") + name);
                }
            });
        }
        assertEquals(List.of(), faults);
    }

    @Test
    void everyFormOfAReportIsAskedLikeItsJson() {
        JsonNode json =
                document.path("paths").path("/api/v1/prevalence").path("get").path("parameters");
        assertTrue(json.findValuesAsText("name").contains("samplingBasis"));
        for (String form : List.of("csv", "pdf", "svg", "png", "xlsx")) {
            assertEquals(
                    json,
                    document.path("paths")
                            .path("/api/v1/prevalence." + form)
                            .path("get")
                            .path("parameters"),
                    form);
        }
    }

    /** Whether the service finds fault with the parameter itself, whatever it says of the others. */
    private static boolean refuses(String report, String name) {
        String value = switch (name) {
            case "ageDisputed", "hasSpecimen", "identityException" -> "true";
            case "clinicalSigns" -> "SEEN";
            case "collectionRoute" -> "STATION";
            case "columns" -> "managementUnit";
            case "confidence" -> "0.9";
            case "diedOn", "diedOnFrom", "diedOnTo" -> "2025-11-14";
            case "disease" -> SeasonFixture.DISEASE;
            case "exclusion" -> "DUPLICATE";
            case "interval" -> "CLOPPER_PEARSON";
            case "kit" -> "FDD3PTZ5";
            case "origin" -> "WILD";
            case "outcome" -> "PENDING";
            case "season" -> SeasonFixture.EARLIER_SEASON;
            case "species" -> SeasonFixture.SPECIES;
            case "station" -> SeasonFixture.STATION;
            default -> "UNKNOWN";
        };
        Map<String, String> asked = new HashMap<>(Map.of("season", SeasonFixture.EARLIER_SEASON));
        asked.put(name, value);
        RequestSpecification ask = given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .queryParams(asked);
        if (report.equals("ageing-error")) {
            ask.queryParam("matrix", "KNOWN_AGE");
        }
        List<String> faults = ask.get("/api/v1/" + report).jsonPath().getList("errors.field");
        return faults != null && faults.contains(name);
    }

    private interface Look {
        void at(String name, JsonNode operation);
    }

    private void operations(Look look) {
        document.path("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(operation -> {
                    if (METHODS.contains(operation.getKey())) {
                        look.at(operation.getKey() + " " + path.getKey(), operation.getValue());
                    }
                }));
    }

    private void compare(String where, JsonNode value, JsonNode given, List<String> faults) {
        JsonNode schema = resolved(given);
        if (schema.has("enum")) {
            if (!schema.get("enum").toString().contains(value.toString())) {
                faults.add(where + ": " + value + " is none of " + schema.get("enum"));
            }
        } else if (value.isArray()) {
            value.forEach(element -> compare(where + "[]", element, schema.path("items"), faults));
        } else if (value.isObject() && schema.has("properties")) {
            schema.path("required").forEach(field -> {
                if (!value.has(field.textValue())) {
                    faults.add(where + " lacks " + field);
                }
            });
            value.properties().forEach(field -> {
                if (schema.get("properties").has(field.getKey())) {
                    compare(
                            where + "." + field.getKey(),
                            field.getValue(),
                            schema.get("properties").get(field.getKey()),
                            faults);
                } else {
                    faults.add(where + " has no field " + field.getKey());
                }
            });
        }
    }

    private JsonNode resolved(JsonNode schema) {
        if (schema.has("$ref")) {
            String name = schema.get("$ref").textValue().replaceAll(".*/", "");
            return resolved(document.path("components").path("schemas").path(name));
        }
        for (JsonNode one : schema.path("anyOf")) {
            if (one.has("$ref")) {
                return resolved(one);
            }
        }
        return schema;
    }

    private static JsonNode parsed(JsonNode example) {
        try {
            return example.isTextual() ? new ObjectMapper().readTree(example.textValue()) : example;
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
