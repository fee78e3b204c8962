package org.dentary.portal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.PathItem.HttpMethod;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;

/**
 * Finishes the OpenAPI document: routes of the API only, each with a summary, an example of its body and the problems that
 * it answers. Summaries and examples that are not beside the code stand in {@code openapi/operations.json}, by method and
 * path.
 */
public final class ApiDocument implements OASFilter {
    private static final String API = "/api/v1/";
    private static final String PROBLEM = "application/problem+json";
    private static final Map<String, String> PROBLEMS = new TreeMap<>(Map.of(
            "400", "Malformed: no JSON, or a field that does not exist",
            "401", "No account, or a wrong password",
            "403", "The account's role may not do it",
            "404", "Nothing of that name is known",
            "409", "It contradicts what is recorded; the state found is named",
            "412", "It was changed by somebody else since it was read",
            "422", "A value is not allowed: which, what was given, what to do"));

    @Override
    public void filterOpenAPI(OpenAPI document) {
        JsonNode said = said();
        Map<String, PathItem> paths = new TreeMap<>(document.getPaths().getPathItems());
        ReportParameters.complete(paths);
        document.getPaths().setPathItems(null);
        paths.forEach((path, item) -> {
            if (path.startsWith(API)) {
                item.getOperations()
                        .forEach((method, operation) ->
                                finish(method, operation, said.path(method + " " + path), path.contains("{")));
                document.getPaths().addPathItem(path, item);
            }
        });
        document.getComponents().addSchema("Problem", problem());
    }

    private static void finish(HttpMethod method, Operation operation, JsonNode said, boolean named) {
        if (said.has("summary")) {
            operation.setSummary(said.get("summary").textValue());
        }
        if (said.has("body") && operation.getRequestBody() != null) {
            Object example = new ObjectMapper().convertValue(said.get("body"), Object.class);
            operation.getRequestBody().getContent().getMediaTypes().values().forEach(body -> body.setExample(example));
        }
        boolean open = operation.getResponses().getAPIResponse("401") == null;
        PROBLEMS.forEach((status, words) -> {
            boolean applies = switch (status) {
                case "401", "403" -> !open;
                case "404" -> named;
                case "400", "409", "412" -> method != HttpMethod.GET;
                default -> true;
            };
            if (applies) {
                operation.getResponses().addAPIResponse(status, answer(words));
            }
        });
    }

    private static APIResponse answer(String words) {
        MediaType body =
                OASFactory.createMediaType().schema(OASFactory.createSchema().ref("#/components/schemas/Problem"));
        return OASFactory.createAPIResponse()
                .description(words)
                .content(OASFactory.createContent().addMediaType(PROBLEM, body));
    }

    /** RFC 9457 with the faults of single fields. */
    private static Schema problem() {
        Schema fault = OASFactory.createSchema()
                .type(java.util.List.of(Schema.SchemaType.OBJECT))
                .description("One fault")
                .addProperty("field", text("Where the fault is, such as thirdTooth.cusps"))
                .addProperty("rule", text("The rule that was broken, such as REQUIRED"))
                .addProperty("message", text("What was given, what is allowed, what to do"));
        return OASFactory.createSchema()
                .type(java.util.List.of(Schema.SchemaType.OBJECT))
                .description("A problem (RFC 9457)")
                .addProperty("type", text("A page that explains it, such as /problems/STALE"))
                .addProperty("title", text("The kind of problem"))
                .addProperty("status", OASFactory.createSchema().type(java.util.List.of(Schema.SchemaType.INTEGER)))
                .addProperty("detail", text("What was given, what is allowed, what to do"))
                .addProperty("code", text("The rule that was broken"))
                .addProperty(
                        "errors",
                        OASFactory.createSchema()
                                .type(java.util.List.of(Schema.SchemaType.ARRAY))
                                .items(fault));
    }

    private static Schema text(String description) {
        return OASFactory.createSchema()
                .type(java.util.List.of(Schema.SchemaType.STRING))
                .description(description);
    }

    private static JsonNode said() {
        try (InputStream file = ApiDocument.class.getResourceAsStream("/openapi/operations.json")) {
            return new ObjectMapper().readTree(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
