package org.dentary.plan.season;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;

/** Opening and closing a season. */
@Path("/api/v1/seasons/{code}")
@Produces(MediaType.APPLICATION_JSON)
public class SeasonStatesResource {
    private final SeasonStateService states;

    SeasonStatesResource(SeasonStateService states) {
        this.states = states;
    }

    @POST
    @Path("opening")
    @PermissionsAllowed(Act.SET_UP)
    public SeasonView open(@PathParam("code") String code) {
        return states.open(code);
    }

    @POST
    @Path("closing")
    @PermissionsAllowed(Act.SET_UP)
    public SeasonView close(@PathParam("code") String code) {
        return states.close(code);
    }
}
