package org.dentary.result.imports.held;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;
import org.jboss.resteasy.reactive.RestForm;

/** Lines left out, and what came of each. */
@Path("/results/held-lines")
@Produces(MediaType.TEXT_HTML)
public class HeldLinePages {
    private static final int SHOWN = 100;

    private final HeldLineService held;
    private final Validator validator;

    HeldLinePages(HeldLineService held, Validator validator) {
        this.held = held;
        this.validator = validator;
    }

    @CheckedTemplate(basePath = "result/imports")
    static class Templates {
        static native TemplateInstance heldLines(
                List<HeldLine> lines, long count, boolean all, Typed typed, Faults faults);
    }

    /** What somebody typed of a line, shown again where it was refused; {@code key} is empty where nothing was. */
    record Typed(String key, String note) {
        static final Typed NOTHING = new Typed("", "");
    }

    @GET
    @PermissionsAllowed(Act.RESULT_READ)
    public Response list(@QueryParam("all") boolean all) {
        return show(200, all, Typed.NOTHING, Faults.NONE);
    }

    @POST
    @Path("{id}/{line}")
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response settle(
            @PathParam("id") UUID id, @PathParam("line") int line, @RestForm String note, @RestForm boolean all) {
        Typed typed = new Typed(id + "-" + line, note == null ? "" : note);
        SettleLine command = new SettleLine(typed.note().strip());
        try {
            var violations = validator.validate(command);
            if (!violations.isEmpty()) {
                return show(422, all, typed, Faults.of(violations));
            }
            held.settle(id, line, command);
            return Response.seeOther(URI.create("/results/held-lines" + (all ? "?all=true" : "")))
                    .build();
        } catch (DomainException refusal) {
            return show(refusal.status(), all, typed, Faults.of(refusal));
        }
    }

    private Response show(int status, boolean all, Typed typed, Faults faults) {
        return Reply.page(status, Templates.heldLines(held.lines(all, SHOWN), held.count(all), all, typed, faults));
    }
}
