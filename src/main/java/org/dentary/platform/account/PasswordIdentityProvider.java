package org.dentary.platform.account;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.UsernamePasswordAuthenticationRequest;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;

/** Basic credentials of programs. */
@ApplicationScoped
class PasswordIdentityProvider implements IdentityProvider<UsernamePasswordAuthenticationRequest> {
    private final AccountService accounts;

    PasswordIdentityProvider(AccountService accounts) {
        this.accounts = accounts;
    }

    @Override
    public Class<UsernamePasswordAuthenticationRequest> getRequestType() {
        return UsernamePasswordAuthenticationRequest.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(
            UsernamePasswordAuthenticationRequest request, AuthenticationRequestContext context) {
        return context.runBlocking(() -> AccountIdentity.of(
                accounts.check(request.getUsername(), request.getPassword().getPassword()), false));
    }
}
