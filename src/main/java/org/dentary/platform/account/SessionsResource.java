package org.dentary.platform.account;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.PermissionsAllowed;
import jakarta.annotation.security.PermitAll;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.Map;

/** Tokens for programs that should not send a password with every request. */
@Path("/api/v1/sessions")
public class SessionsResource {
    private final AccountService accounts;

    SessionsResource(AccountService accounts) {
        this.accounts = accounts;
    }

    /** A name and its password. */
    public record Credentials(
            @NotBlank String username, @NotBlank String password) {}

    /** Signs in: {@code {token}} to send as {@code Authorization: Bearer}. */
    @POST
    @PermitAll
    public Response open(@NotNull @Valid Credentials given) {
        String token =
                accounts.signIn(given.username(), given.password()).orElseThrow(AuthenticationFailedException::new);
        return Response.status(201).entity(Map.of("token", token)).build();
    }

    /** Ends the session whose token is sent. */
    @DELETE
    @PermissionsAllowed(Act.OWN_ACCOUNT)
    public void close(@HeaderParam("Authorization") String authorization) {
        if (authorization != null && authorization.regionMatches(true, 0, "bearer ", 0, 7)) {
            accounts.signOut(authorization.substring(7).trim());
        }
    }
}
