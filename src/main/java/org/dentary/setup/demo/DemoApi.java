package org.dentary.setup.demo;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/** The public API as the demo's people call it, over loopback; keys are made from names, so that all can be repeated. */
final class DemoApi {
    static final String PASSWORD = "demo";

    private final HttpClient http = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();
    private final ObjectMapper json;
    private final String base;
    private final Map<String, String> tokens = new ConcurrentHashMap<>();

    DemoApi(ObjectMapper json, int port) {
        this.json = json;
        this.base = "http://127.0.0.1:" + port + "/api/v1";
    }

    /** The same UUID for the same name. */
    static UUID key(Object... name) {
        StringBuilder text = new StringBuilder("demo");
        for (Object part : name) {
            text.append('/').append(part);
        }
        return UUID.nameUUIDFromBytes(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    JsonNode put(String who, String path, Object body) {
        return send(who, "PUT", path, "application/json", write(body));
    }

    JsonNode post(String who, String path, Object body) {
        return send(who, "POST", path, "application/json", write(body));
    }

    JsonNode putCsv(String who, String path, String csv) {
        return send(who, "PUT", path, "text/csv", csv);
    }

    private JsonNode send(String who, String method, String path, String type, String body) {
        String token = tokens.computeIfAbsent(who, this::signIn);
        HttpResponse<String> answer = exchange(HttpRequest.newBuilder(URI.create(base + path))
                .header("Authorization", "Bearer " + token)
                .header("Content-Type", type)
                .header("Accept", "application/json")
                .timeout(Duration.ofMinutes(5))
                .method(method, HttpRequest.BodyPublishers.ofString(body))
                .build());
        if (answer.statusCode() >= 300) {
            throw new IllegalStateException(
                    method + " " + path + " as " + who + " answered " + answer.statusCode() + ": " + answer.body());
        }
        return read(answer.body());
    }

    private String signIn(String who) {
        HttpResponse<String> answer = exchange(HttpRequest.newBuilder(URI.create(base + "/sessions"))
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(write(Map.of("username", who, "password", PASSWORD))))
                .build());
        if (answer.statusCode() != 201) {
            throw new IllegalStateException("signing in as " + who + " answered " + answer.statusCode());
        }
        return read(answer.body()).get("token").textValue();
    }

    private HttpResponse<String> exchange(HttpRequest request) {
        for (int attempt = 1; ; attempt++) {
            try {
                return http.send(request, HttpResponse.BodyHandlers.ofString());
            } catch (java.net.ConnectException e) {
                // The loader may be faster than the listener.
                if (attempt == 60) {
                    throw new IllegalStateException("the service does not listen on " + base, e);
                }
                pause();
            } catch (IOException e) {
                throw new IllegalStateException(request.method() + " " + request.uri() + " failed", e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("interrupted", e);
            }
        }
    }

    private static void pause() {
        try {
            Thread.sleep(500);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private String write(Object body) {
        try {
            return json.writeValueAsString(body);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private JsonNode read(String body) {
        try {
            return json.readTree(body);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
