package org.dentary.portal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Collection;
import java.util.List;

/** Where a problem's {@code type} leads: what its code means and what to do. */
@Path("/problems")
@Produces(MediaType.TEXT_HTML)
@PermitAll
public class ProblemPages {

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance problem(String code, Explanation explanation);

        static native TemplateInstance problems(Collection<Explanation> all);
    }

    @GET
    public TemplateInstance problems() {
        return Templates.problems(List.copyOf(Explanations.all()));
    }

    @GET
    @Path("{code}")
    public Response problem(@PathParam("code") String code) {
        if (!code.matches("[A-Z][A-Z0-9_]{1,60}")) {
            return Response.status(404).entity(Templates.problem("", null)).build();
        }
        return Response.ok(Templates.problem(code, Explanations.of(code).orElse(null)))
                .build();
    }
}
