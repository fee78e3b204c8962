package org.dentary.platform.account;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.credential.TokenCredential;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.security.identity.request.TokenAuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpCredentialTransport;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.Cookie;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;

/** Finds the session token of a request: {@code Authorization: Bearer} first, then the cookie. */
@ApplicationScoped
class SessionMechanism implements HttpAuthenticationMechanism {
    static final String COOKIE = "dentary-session";
    private static final String BEARER = "bearer ";

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext request, IdentityProviderManager identities) {
        String header = request.request().getHeader("Authorization");
        if (header != null) {
            return header.regionMatches(true, 0, BEARER, 0, BEARER.length())
                    ? identities.authenticate(
                            token(header.substring(BEARER.length()).trim(), "bearer"))
                    : Uni.createFrom().nullItem();
        }
        Cookie cookie = request.request().getCookie(COOKIE);
        if (cookie == null) {
            return Uni.createFrom().nullItem();
        }
        // An ended session is nobody, not a fault: the sign-in page must open with an old cookie in the jar.
        return identities
                .authenticate(token(cookie.getValue(), COOKIE))
                .onFailure(AuthenticationFailedException.class)
                .recoverWithNull();
    }

    private static TokenAuthenticationRequest token(String token, String type) {
        return new TokenAuthenticationRequest(new TokenCredential(token, type));
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext request) {
        return Uni.createFrom().nullItem();
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(TokenAuthenticationRequest.class);
    }

    @Override
    public Uni<HttpCredentialTransport> getCredentialTransport(RoutingContext request) {
        return Uni.createFrom().item(new HttpCredentialTransport(HttpCredentialTransport.Type.AUTHORIZATION, "bearer"));
    }

    @Override
    public int getPriority() {
        return 2000;
    }
}
