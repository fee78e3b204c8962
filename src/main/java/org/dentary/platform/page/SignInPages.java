package org.dentary.platform.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.CookieParam;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.Optional;
import org.dentary.platform.account.AccountService;
import org.jboss.resteasy.reactive.RestForm;

/** Signing in and out of the pages. */
@Path("/")
@PermitAll
@Produces(MediaType.TEXT_HTML)
public class SignInPages {
    private static final String COOKIE = "dentary-session";

    private final AccountService accounts;

    SignInPages(AccountService accounts) {
        this.accounts = accounts;
    }

    @CheckedTemplate(basePath = "platform")
    static class Templates {
        static native TemplateInstance signIn(String then, String username, String message);
    }

    @GET
    @Path("sign-in")
    public TemplateInstance signIn(@QueryParam("then") @DefaultValue("/") String then) {
        return Templates.signIn(then, "", "");
    }

    @POST
    @Path("sign-in")
    public Response signIn(
            @RestForm String username, @RestForm String password, @RestForm String then, @Context UriInfo address) {
        Optional<String> token =
                username == null || password == null ? Optional.empty() : accounts.signIn(username.trim(), password);
        if (token.isEmpty()) {
            String message = "The name or the password is not right. Both are told apart by capitals.";
            return Response.status(422)
                    .entity(Templates.signIn(local(then), username == null ? "" : username, message))
                    .build();
        }
        return Response.seeOther(URI.create(local(then)))
                .cookie(cookie(token.get(), (int) AccountService.SESSION.toSeconds(), address))
                .build();
    }

    @POST
    @Path("sign-out")
    public Response signOut(@CookieParam(COOKIE) String token, @Context UriInfo address) {
        if (token != null) {
            accounts.signOut(token);
        }
        return Response.seeOther(URI.create("/sign-in"))
                .cookie(cookie("", 0, address))
                .build();
    }

    private static NewCookie cookie(String value, int seconds, UriInfo address) {
        return new NewCookie.Builder(COOKIE)
                .value(value)
                .path("/")
                .httpOnly(true)
                .secure(address.getBaseUri().getScheme().equals("https"))
                .sameSite(NewCookie.SameSite.LAX)
                .maxAge(seconds)
                .build();
    }

    /** Only a path of this service is followed; anything else leads home. */
    private static String local(String then) {
        return then == null || !then.startsWith("/") || then.startsWith("//") || then.contains("\\") ? "/" : then;
    }
}
