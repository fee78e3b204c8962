package org.dentary.platform.problem;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.regex.Pattern;

/** What the platform refuses by a bare number, in words: RFC 9110, section 15.5. */
final class StatusAnswers {
    private static final Pattern MEDIA_TYPE = Pattern.compile("\\s*[^\\s/;,]+/[^\\s/;,]+\\s*(;.*)?");

    private StatusAnswers() {}

    /**
     * The answer of a status.
     *
     * @param allowed the methods that the place takes, parted by commas; for 405 alone
     * @param most bytes that a request may bring
     */
    static Response of(int status, String allowed, long most, RoutingContext request) {
        return switch (status) {
            case 404 ->
                ProblemAnswers.answer(
                        request,
                        404,
                        "NOT_FOUND",
                        "Not found",
                        "There is nothing at " + request.request().path()
                                + ", or a value in the address is not of the form expected",
                        List.of());
            case 405 ->
                ProblemAnswers.answer(
                        request,
                        405,
                        "METHOD_NOT_ALLOWED",
                        "Method not allowed",
                        request.request().method() + " is not offered here; allowed: " + allowed,
                        List.of());
            case 406 ->
                ProblemAnswers.answer(
                        request,
                        406,
                        "NOT_ACCEPTABLE",
                        "Not offered",
                        "Nothing that Accept '" + request.request().getHeader("Accept")
                                + "' asks for is offered here; ask for a type that the document of this route names, or for */*",
                        List.of());
            case 413 -> tooLarge(most, request);
            case 415 ->
                ProblemAnswers.answer(
                        request,
                        415,
                        "UNSUPPORTED_MEDIA_TYPE",
                        "Type not understood",
                        "Content-Type '" + request.request().getHeader("Content-Type")
                                + "' is not taken here; send one that the document of this route names",
                        List.of());
            default ->
                ProblemAnswers.answer(
                        request,
                        status,
                        status < 500 ? "MALFORMED" : "FAULT",
                        status < 500 ? "Malformed request" : "Something broke",
                        status < 500 ? "The request could not be read; check its form" : "The service could not answer",
                        List.of());
        };
    }

    /** The status of a fault; what fails on a Content-Type that is none is told as that. */
    static int status(WebApplicationException fault, RoutingContext request) {
        int status = fault.getResponse().getStatus();
        return status == 400 && hasUnreadableType(request) ? 415 : status;
    }

    /** Whether the request's Content-Type is none (RFC 9110, section 8.3). */
    static boolean hasUnreadableType(RoutingContext request) {
        String type = request.request().getHeader(HttpHeaders.CONTENT_TYPE);
        return type != null && !MEDIA_TYPE.matcher(type).matches();
    }

    /** What is too large, whole or in a field of it; the connection ends with it. */
    static Response tooLarge(long most, RoutingContext request) {
        request.response().putHeader("Connection", "close");
        boolean whole = request.request().bytesRead() > most;
        String words = whole
                ? BodyLimit.words(most)
                : "A field of what was sent is longer than this service takes; shorten it, or send it as a file";
        return ProblemAnswers.answer(
                request, 413, whole ? "TOO_LARGE" : "FIELD_TOO_LARGE", "Too large", words, List.of());
    }
}
