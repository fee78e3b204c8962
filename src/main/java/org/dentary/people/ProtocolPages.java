package org.dentary.people;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.season.SeasonStateService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.jboss.resteasy.reactive.RestForm;

/** The protocol as everyone sees it, and its acknowledgement: shown and acknowledged, nothing more. */
@Path("/protocol")
@Produces(MediaType.TEXT_HTML)
public class ProtocolPages {
    private final PeopleService people;
    private final PlanService plan;
    private final SeasonStateService seasons;
    private final CurrentAccount current;

    ProtocolPages(PeopleService people, PlanService plan, SeasonStateService seasons, CurrentAccount current) {
        this.people = people;
        this.plan = plan;
        this.seasons = seasons;
        this.current = current;
    }

    @CheckedTemplate(basePath = "people")
    static class Templates {
        static native TemplateInstance protocol(
                String version,
                List<String> text,
                String reviewedBy,
                LocalDate reviewedOn,
                boolean acknowledged,
                String message);
    }

    @GET
    @PermissionsAllowed(Act.OWN_ACCOUNT)
    public TemplateInstance protocol() {
        return page("");
    }

    @POST
    @PermissionsAllowed(Act.OWN_ACCOUNT)
    public Response acknowledge(@RestForm String version) {
        if (!people.protocolVersion().equals(version)) {
            return Response.status(422)
                    .entity(page("The protocol changed while you read it. This is the edition in force; read it, then"
                            + " acknowledge it."))
                    .build();
        }
        people.acknowledge(current.get());
        return Response.seeOther(URI.create("/protocol")).build();
    }

    private TemplateInstance page(String message) {
        PlanSettings settings = plan.settings();
        boolean reviewed = seasons.protocolReviewed();
        return Templates.protocol(
                people.protocolVersion(),
                settings.everywhere(PlanSetting.PROTOCOL_TEXT).lines().toList(),
                reviewed ? settings.everywhere(PlanSetting.PROTOCOL_REVIEWED_BY) : "",
                reviewed ? day(settings.everywhere(PlanSetting.PROTOCOL_REVIEWED_ON)) : null,
                people.acknowledged(current.get()),
                message);
    }

    private static LocalDate day(String given) {
        return given.isBlank() ? null : LocalDate.parse(given);
    }
}
