package org.dentary.platform.request;

import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import java.util.List;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** What a resource does not say how long to keep is kept by no cache: most of it is about animals, results or people. */
public class UncachedFilter {
    @ServerResponseFilter
    public void forbid(ContainerResponseContext answer) {
        answer.getHeaders().putIfAbsent(HttpHeaders.CACHE_CONTROL, List.of("private, no-store"));
    }
}
