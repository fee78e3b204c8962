package org.dentary.platform.request;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.NotAcceptableException;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.util.Arrays;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Refuses a call that asks for a media type which its route does not send (RFC 9110, section 15.5.7). Of several methods of
 * one path that differ by what they send, the framework takes the first where none fits.
 */
public class AcceptFilter {
    /** @throws NotAcceptableException (406) where nothing that is asked for is sent */
    @ServerRequestFilter
    public void judge(RoutingContext request, ResourceInfo route, HttpHeaders headers) {
        if (!request.request().path().startsWith("/api/") || route.getResourceMethod() == null) {
            return;
        }
        Produces own = route.getResourceMethod().getAnnotation(Produces.class);
        Produces sent = own == null ? route.getResourceClass().getAnnotation(Produces.class) : own;
        if (sent != null
                && headers.getAcceptableMediaTypes().stream()
                        .noneMatch(asked -> Arrays.stream(sent.value())
                                .map(MediaType::valueOf)
                                .anyMatch(asked::isCompatible))) {
            throw new NotAcceptableException();
        }
    }
}
