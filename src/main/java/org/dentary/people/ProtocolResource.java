package org.dentary.people;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.RuleBroken;

/** The protocol for programs. */
@Path("/api/v1/protocol")
@Produces(MediaType.APPLICATION_JSON)
public class ProtocolResource {
    private final PeopleService people;
    private final PlanService plan;
    private final CurrentAccount current;

    ProtocolResource(PeopleService people, PlanService plan, CurrentAccount current) {
        this.people = people;
        this.plan = plan;
        this.current = current;
    }

    /** The edition in force and whether the account has acknowledged it. */
    public record Protocol(String version, String text, boolean acknowledged) {}

    /** Which edition was shown. */
    public record Shown(
            @NotBlank(message = "name the edition that was shown")
            String version) {}

    @GET
    @PermissionsAllowed(Act.OWN_ACCOUNT)
    public Protocol protocol() {
        return new Protocol(
                people.protocolVersion(),
                plan.settings().everywhere(PlanSetting.PROTOCOL_TEXT),
                people.acknowledged(current.get()));
    }

    @POST
    @Path("acknowledgement")
    @PermissionsAllowed(Act.OWN_ACCOUNT)
    public Protocol acknowledge(@NotNull @Valid Shown shown) {
        if (!people.protocolVersion().equals(shown.version())) {
            throw new RuleBroken(
                    "PROTOCOL_CHANGED",
                    "Edition " + people.protocolVersion() + " is in force, not " + shown.version()
                            + "; read it and acknowledge it");
        }
        people.acknowledge(current.get());
        return protocol();
    }
}
