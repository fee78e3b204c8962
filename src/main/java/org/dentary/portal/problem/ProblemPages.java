package org.dentary.portal.problem;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;

/** Where a problem's {@code type} leads: what its code means and what to do. */
@Path("/problems")
@Produces(MediaType.TEXT_HTML)
@PermitAll
public class ProblemPages {

    @CheckedTemplate(basePath = "portal")
    static class Templates {
        static native TemplateInstance problem(Explanation explanation);

        static native TemplateInstance problems(List<ProblemGroup> groups);
    }

    @GET
    public TemplateInstance problems() {
        return Templates.problems(Explanations.groups());
    }

    @GET
    @Path("{code}")
    public Response problem(@PathParam("code") String code) {
        Explanation explanation = Explanations.of(code).orElse(null);
        return Response.status(explanation == null ? 404 : 200)
                .entity(Templates.problem(explanation))
                .build();
    }
}
