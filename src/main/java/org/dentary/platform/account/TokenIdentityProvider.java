package org.dentary.platform.account;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.TokenAuthenticationRequest;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;

/** Session tokens of browsers (cookie) and programs (Bearer). */
@ApplicationScoped
class TokenIdentityProvider implements IdentityProvider<TokenAuthenticationRequest> {
    private final AccountService accounts;

    TokenIdentityProvider(AccountService accounts) {
        this.accounts = accounts;
    }

    @Override
    public Class<TokenAuthenticationRequest> getRequestType() {
        return TokenAuthenticationRequest.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(
            TokenAuthenticationRequest request, AuthenticationRequestContext context) {
        boolean byCookie = SessionMechanism.COOKIE.equals(request.getToken().getType());
        return context.runBlocking(
                () -> AccountIdentity.of(accounts.byToken(request.getToken().getToken()), byCookie));
    }
}
