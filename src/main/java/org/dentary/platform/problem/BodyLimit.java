package org.dentary.platform.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Says in words what is too large by its announced length, before a byte of it is read; the platform says a number. */
@ApplicationScoped
class BodyLimit {
    /** Before the platform's own limit. */
    private static final int FIRST = 500;

    private final long most;
    private final ObjectMapper json;

    BodyLimit(@ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize most, ObjectMapper json) {
        this.most = most.asLongValue();
        this.json = json;
    }

    void register(@Observes Filters filters) {
        filters.register(this::refuse, FIRST);
    }

    private void refuse(RoutingContext request) {
        String announced = request.request().getHeader(HttpHeaders.CONTENT_LENGTH);
        if (announced == null || !announced.matches("[0-9]{1,18}") || Long.parseLong(announced) <= most) {
            request.next();
            return;
        }
        String words = words(most);
        boolean program = request.request().path().startsWith("/api/");
        request.response()
                .setStatusCode(413)
                .putHeader(HttpHeaders.CONNECTION, "close")
                .putHeader(HttpHeaders.CONTENT_TYPE, program ? Problem.MEDIA_TYPE : "text/plain;charset=UTF-8")
                .endHandler(sent -> request.request().connection().close())
                .end(program ? problem(words, request.request().path()) : words);
    }

    /** What to do about a file beyond so many bytes. */
    static String words(long most) {
        return "What was sent is larger than " + (most >> 20)
                + " MB; nothing of it was kept. Send it in parts, or without pictures and empty lines.";
    }

    private String problem(String words, String path) {
        try {
            return json.writeValueAsString(Problem.of(413, "TOO_LARGE", "Too large", words, path, List.of()));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a problem is plain text and can be written", e);
        }
    }
}
