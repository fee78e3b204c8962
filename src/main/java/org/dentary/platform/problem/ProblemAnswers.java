package org.dentary.platform.problem;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A refusal as an answer: problem+json for programs (RFC 9457), a page for people. */
public final class ProblemAnswers {
    private ProblemAnswers() {}

    @CheckedTemplate(basePath = "problem")
    static class Templates {
        static native TemplateInstance problem(Problem problem);
    }

    /** A refusal raised outside a resource method, told like every other. */
    public static Response answer(
            RoutingContext request, int status, String code, String title, String detail, List<FieldProblem> errors) {
        Problem problem =
                Problem.of(status, code, title, detail, request.request().path(), errors);
        Response.ResponseBuilder answer = Response.status(status);
        return isForPeople(request)
                ? answer.type(MediaType.TEXT_HTML + ";charset=UTF-8")
                        .entity(Templates.problem(problem).render())
                        .build()
                : answer.type(Problem.MEDIA_TYPE).entity(problem).build();
    }

    static Response signIn(RoutingContext request, String code, String detail) {
        if (isForPeople(request) && request.request().method().name().equals("GET")) {
            String then = URLEncoder.encode(request.request().uri(), StandardCharsets.UTF_8);
            return Response.seeOther(URI.create("/sign-in?then=" + then)).build();
        }
        Response answer = answer(request, 401, code, "Account required", detail, List.of());
        return Response.fromResponse(answer)
                .header(HttpHeaders.WWW_AUTHENTICATE, "Basic realm=\"Dentary\", charset=\"UTF-8\"")
                .build();
    }

    private static boolean isForPeople(RoutingContext request) {
        String accept = request.request().getHeader("Accept");
        return !request.request().path().startsWith("/api/") && accept != null && accept.contains("text/html");
    }
}
