package org.dentary.platform.account;

import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.security.QuarkusHttpUser;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.dentary.platform.problem.ProblemAnswers;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Puts the authenticated account on the request, and refuses changes that another site makes a signed-in browser send.
 * Programs that send Basic or Bearer are not asked where they come from; browsers name it in {@code Sec-Fetch-Site} or
 * {@code Origin} (Fetch standard).
 */
public class AccountFilter {
    private static final Set<String> READS = Set.of("GET", "HEAD", "OPTIONS");

    private final SecurityIdentity identity;
    private final CurrentAccount current;

    AccountFilter(SecurityIdentity identity, CurrentAccount current) {
        this.identity = identity;
        this.current = current;
    }

    @ServerRequestFilter
    public Response filter(RoutingContext request) {
        Account account = identity.getAttribute(AccountIdentity.ACCOUNT);
        current.become(account);
        boolean byCookie = Boolean.TRUE.equals(identity.getAttribute(AccountIdentity.BY_COOKIE));
        if (!byCookie || READS.contains(request.request().method().name()) || comesFromHere(request)) {
            return null;
        }
        return ProblemAnswers.answer(
                request,
                403,
                "OTHER_ORIGIN",
                "Not allowed",
                "This change was sent by another site; open the page here and send it again",
                List.of());
    }

    /** The account that a request was authenticated as; a role refused before this filter runs is known by it alone. */
    public static Optional<Account> authenticated(RoutingContext request) {
        return request.user() instanceof QuarkusHttpUser user
                ? Optional.ofNullable(user.getSecurityIdentity().getAttribute(AccountIdentity.ACCOUNT))
                : Optional.empty();
    }

    private static boolean comesFromHere(RoutingContext request) {
        String site = request.request().getHeader("Sec-Fetch-Site");
        if (site != null) {
            return site.equals("same-origin") || site.equals("none");
        }
        String origin = request.request().getHeader("Origin");
        return origin == null
                || (!origin.equals("null")
                        && String.valueOf(URI.create(origin).getAuthority())
                                .equals(String.valueOf(request.request().authority())));
    }
}
