package org.dentary.intake;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.dentary.jaw.ReadJaw;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.request.Reply;
import org.dentary.specimen.TakeSpecimen;
import org.dentary.story.AnimalStory;
import org.dentary.story.StoryService;

/** Intake, and what comes later: every write can be sent again, and answers with the animal's story. */
@Path("/api/v1/animals")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class IntakeResource {
    private final IntakeService intake;
    private final StoryService stories;
    private final CurrentAccount current;

    IntakeResource(IntakeService intake, StoryService stories, CurrentAccount current) {
        this.intake = intake;
        this.stories = stories;
        this.current = current;
    }

    /** Takes an animal in, or corrects its facts with {@code If-Match} and a reason. */
    @PUT
    @Path("{kit}")
    @PermissionsAllowed(Act.INTAKE)
    public Response take(
            @PathParam("kit") String kit,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            @NotNull @Valid TakeInAnimal given) {
        return answer(intake.take(kit, given, ifMatch));
    }

    /** Adds one person's reading of the jaw. */
    @PUT
    @Path("{kit}/jaw-readings/{id}")
    @PermissionsAllowed(Act.INTAKE)
    public Response read(@PathParam("kit") String kit, @PathParam("id") UUID id, @NotNull @Valid ReadJaw given) {
        return answer(intake.read(kit, id, given));
    }

    /** Adds a specimen, or corrects one with {@code If-Match} and a reason. */
    @PUT
    @Path("{kit}/specimens/{code}")
    @PermissionsAllowed(Act.SPECIMEN_WRITE)
    public Response specimen(
            @PathParam("kit") String kit,
            @PathParam("code") String code,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch,
            @NotNull @Valid TakeSpecimen given) {
        return answer(intake.specimen(kit, code, given, ifMatch));
    }

    private Response answer(Taken taken) {
        AnimalStory story = stories.answer(taken.kit(), current.get(), taken.warnings());
        return Reply.versioned(taken.isNew() ? 201 : 200, story, taken.version());
    }
}
