package org.dentary.prevalence.cut;

import jakarta.ws.rs.core.Response;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Tells beside an answer why a cut that it stands on should no longer be used: its stored bytes stay as they are. */
public final class Superseded {
    private static final String HEADER = "Data-Cut-Superseded";

    private Superseded() {}

    /**
     * The response with the reasons in a header of its own (RFC 8187 form), or as it was where there are none.
     *
     * @param reasons null for a cut that may be used and for live lines
     */
    public static Response.ResponseBuilder on(Response.ResponseBuilder response, String... reasons) {
        String told = Stream.of(reasons).filter(Objects::nonNull).distinct().collect(Collectors.joining("; "));
        return told.isEmpty()
                ? response
                : response.header(
                        HEADER,
                        "UTF-8''"
                                + URLEncoder.encode(told, StandardCharsets.UTF_8)
                                        .replace("+", "%20"));
    }
}
