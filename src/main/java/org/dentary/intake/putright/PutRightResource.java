package org.dentary.intake.putright;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.jaw.AgeDesignationService;
import org.dentary.jaw.DesignateAge;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.request.Reply;
import org.dentary.story.StoryService;

/** Decisions about an animal that somebody else entered: which age stands, which kits are one animal. */
@Path("/api/v1/animals")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class PutRightResource {
    private final PutRightService putRight;
    private final StoryService stories;
    private final CurrentAccount current;

    PutRightResource(PutRightService putRight, StoryService stories, CurrentAccount current) {
        this.putRight = putRight;
        this.stories = stories;
        this.current = current;
    }

    /** Decides which age stands, by a person who gave none of the readings. */
    @PUT
    @Path("{kit}/designated-age")
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response designate(
            @PathParam("kit") String kit,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            @NotNull @Valid DesignateAge decision) {
        AgeDesignationService.Decided decided = putRight.designate(kit, decision, ifMatch);
        return answer(kit, decided.first() ? 201 : 200, decided.version());
    }

    /** Says that this kit is the same animal as another, which from then on is the one counted. */
    @PUT
    @Path("{kit}/same-as/{other}")
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response link(@PathParam("kit") String kit, @PathParam("other") String other, @NotNull @Valid SayWhy why) {
        boolean isNew = putRight.link(kit, other, why);
        return answer(kit, isNew ? 201 : 200, null);
    }

    /** Undoes the link, by a new row with its reason. */
    @POST
    @Path("{kit}/same-as/undoing")
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response unlink(@PathParam("kit") String kit, @NotNull @Valid SayWhy why) {
        putRight.unlink(kit, why.reason());
        return answer(kit, 200, null);
    }

    private Response answer(String kit, int status, Integer version) {
        var story = stories.story(kit, current.get());
        return Reply.versioned(status, story, version == null ? story.version() : version);
    }
}
