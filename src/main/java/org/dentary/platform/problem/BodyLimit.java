package org.dentary.platform.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Says in words what is too large; the platform says a number. What announces its length is refused before a byte of it
 * is read; what does not (chunked) is counted by {@link CountedBody} as it is read, or by the platform as the parts of a
 * form, and both come before the platform's own bare answer.
 */
@ApplicationScoped
class BodyLimit {
    /** Before the platform's own limit. */
    private static final int FIRST = 500;

    /** After the platform's own limit, which it notes with the request, and before every route. */
    private static final int LAST = 1;

    private static final String PLATFORM_LIMIT = "io.quarkus.max-request-size";

    /** What may be under way on a connection and not yet counted. */
    private static final long UNDER_WAY = 8L << 20;

    private static final int READ_OUT = 4;

    private static final long LONGEST_WAIT_MILLIS = 20_000;

    private final long most;
    private final ObjectMapper json;

    BodyLimit(@ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize most, ObjectMapper json) {
        this.most = most.asLongValue();
        this.json = json;
    }

    void register(@Observes Filters filters) {
        filters.register(this::refuse, FIRST);
        filters.register(this::leaveRoom, LAST);
    }

    /** The most that a request may bring. */
    long most() {
        return most;
    }

    /** What announces its length was judged by it already; only what does not needs room and a watch. */
    private void leaveRoom(RoutingContext request) {
        HttpServerRequest sent = request.request();
        boolean unannounced = !sent.isEnded() && sent.getHeader(HttpHeaders.CONTENT_LENGTH) == null;
        if (unannounced && request.get(PLATFORM_LIMIT) != null) {
            request.put(PLATFORM_LIMIT, most + UNDER_WAY);
            endAtLast(request);
        }
        request.next();
    }

    /** A form is read to its end before it is refused, but not without end. */
    private void endAtLast(RoutingContext request) {
        HttpServerRequest sent = request.request();
        long watching = request.vertx().setPeriodic(1_000, second -> {
            if (sent.bytesRead() > READ_OUT * most) {
                sent.connection().close();
            }
        });
        request.addEndHandler(answered -> request.vertx().cancelTimer(watching));
    }

    private void refuse(RoutingContext request) {
        request.addEndHandler(answered -> readOut(request));
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
                .end(program ? problem(words, request.request().path()) : words);
    }

    /**
     * Throws away what the other side still sends once it is refused as too large, and ends the connection: one that sends all
     * before it reads would wait for ever, or find a broken connection in place of the answer. A connection whose request was
     * answered otherwise is left alone, for the next request may be on it already.
     */
    private static void readOut(RoutingContext request) {
        HttpServerRequest sent = request.request();
        if (request.response().getStatusCode() != 413 || sent.isEnded()) {
            return;
        }
        long waiting = request.vertx()
                .setTimer(LONGEST_WAIT_MILLIS, late -> sent.connection().close());
        sent.handler(part -> {});
        sent.exceptionHandler(gone -> request.vertx().cancelTimer(waiting));
        sent.endHandler(all -> {
            request.vertx().cancelTimer(waiting);
            sent.connection().close();
        });
        sent.resume();
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
