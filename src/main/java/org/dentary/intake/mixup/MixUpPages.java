package org.dentary.intake.mixup;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.specimen.ReAttributionService;
import org.dentary.specimen.ReAttributionView;
import org.jboss.resteasy.reactive.RestForm;

/** Suspected mix-ups as a list from which both animals open side by side. */
@Path("/animals/mix-ups")
@Produces(MediaType.TEXT_HTML)
public class MixUpPages {
    private static final int TO_A_PAGE = 50;
    private static final int WAITING = 200;

    private final MixUpService mixUps;
    private final ReAttributionService reAttributions;

    MixUpPages(MixUpService mixUps, ReAttributionService reAttributions) {
        this.mixUps = mixUps;
        this.reAttributions = reAttributions;
    }

    @CheckedTemplate(basePath = "intake")
    static class Templates {
        static native TemplateInstance mixUps(
                MixUpService.Page page, List<ReAttributionView> waiting, boolean all, String after, Faults faults);
    }

    /**
     * @param all with those that were set aside
     * @param after where the page before ended, or null
     */
    @GET
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    public TemplateInstance page(@QueryParam("all") boolean all, @QueryParam("after") String after) {
        return page(all, after, Faults.NONE);
    }

    @POST
    @Path("set-aside")
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response setAside(
            @RestForm String kit, @RestForm String other, @RestForm String sign, @RestForm String reason) {
        try {
            if (reason == null || reason.isBlank() || reason.length() > 500) {
                throw InvalidInput.field("reason", "REQUIRED", "Say why it is no mix-up, in up to 500 characters");
            }
            Sign named = Arrays.stream(Sign.values())
                    .filter(one -> one.name().equals(sign))
                    .findFirst()
                    .orElseThrow(() -> InvalidInput.field("sign", "INVALID_VALUE", "Load the page again"));
            // The same form sent twice is one decision.
            UUID id = UUID.nameUUIDFromBytes(
                    String.join(" ", kit, other, sign, reason).getBytes(StandardCharsets.UTF_8));
            mixUps.setAside(id, new SetAside(kit, other, named, reason));
            return Response.seeOther(URI.create("/animals/mix-ups")).build();
        } catch (DomainException refusal) {
            return Response.status(refusal.status())
                    .entity(page(false, null, Faults.of(refusal)))
                    .build();
        }
    }

    /** Opens two animals side by side, whichever labels of them were scanned. */
    @GET
    @Path("compare")
    @PermissionsAllowed(Act.PUT_RIGHT_ASK)
    public Response compare(@QueryParam("kit") String kit, @QueryParam("with") String with) {
        try {
            return Response.seeOther(URI.create(
                            "/animals/" + mixUps.kit("kit", kit) + "/put-right?with=" + mixUps.kit("with", with)))
                    .build();
        } catch (DomainException refusal) {
            return Response.status(refusal.status())
                    .entity(page(false, null, Faults.of(refusal)))
                    .build();
        }
    }

    private TemplateInstance page(boolean all, String after, Faults faults) {
        return Templates.mixUps(
                mixUps.page(all, after, TO_A_PAGE),
                after == null ? reAttributions.open(WAITING) : List.of(),
                all,
                after,
                faults);
    }
}
