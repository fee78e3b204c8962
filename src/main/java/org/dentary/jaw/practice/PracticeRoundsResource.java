package org.dentary.jaw.practice;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import java.util.UUID;
import org.dentary.jaw.key.AgeClass;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Blinded rounds of practice in reading jaws, and their scores. */
@Path("/api/v1/practice-rounds")
@Produces(MediaType.APPLICATION_JSON)
public class PracticeRoundsResource {
    private final PracticeService practice;

    PracticeRoundsResource(PracticeService practice) {
        this.practice = practice;
    }

    /**
     * The class given for a jaw.
     *
     * @param ageClass {@code UNKNOWN} where what is seen allows no class
     */
    public record GiveClass(
            @NotNull(message = "give FAWN, YEARLING, ADULT or UNKNOWN")
            AgeClass ageClass) {}

    /** Rounds without their jaws, newest first: one's own; everybody's for those who may see them. */
    @GET
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response rounds() {
        return answer(200, new ItemList<>(practice.rounds()));
    }

    /** The same as a table. */
    @GET
    @Path("rounds.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response table() {
        List<PracticeView> rounds = practice.rounds();
        StreamingOutput stream = out -> {
            try (CsvTable table = CsvTable.on(
                    out,
                    List.of("id", "person", "ruleSetVersion", "jaws", "answered", "right", "begunAt", "finishedAt"))) {
                rounds.forEach(round -> table.row(
                        round.id(),
                        round.person(),
                        round.ruleSetVersion(),
                        round.jaws(),
                        round.answered(),
                        round.right(),
                        round.begunAt(),
                        round.finishedAt()));
            }
        };
        return Reply.file(stream, CsvTable.MEDIA_TYPE, "practice.csv");
    }

    /** Begins a round of as many jaws as the plan says. */
    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.PRACTICE)
    @Operation(
            summary = "Begin a round of practice",
            description = "No body. Jaws come in a random order, those met least first; no class is told before all are"
                    + " answered.")
    public Response begin(@PathParam("id") UUID id) {
        boolean isNew = practice.begin(id);
        return answer(isNew ? 201 : 200, practice.round(id));
    }

    /** A round; once it is finished, with the right classes and the key's steps. */
    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response round(@PathParam("id") UUID id) {
        return answer(200, practice.round(id));
    }

    /** Gives a class for a jaw; it is not changed once given. */
    @PUT
    @Path("{id}/answers/{position}")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.PRACTICE)
    public Response give(
            @PathParam("id") UUID id, @PathParam("position") int position, @NotNull @Valid GiveClass given) {
        practice.answer(id, position, given.ageClass());
        return answer(200, practice.round(id));
    }

    /** A photo of a jaw of one's own round, as JPEG. */
    @GET
    @Path("{id}/jaws/{position}/photos/{number}")
    @Produces("image/jpeg")
    @PermissionsAllowed(Act.PRACTICE)
    public Response photo(
            @PathParam("id") UUID id, @PathParam("position") int position, @PathParam("number") int number) {
        return answer(200, practice.photo(id, position, number));
    }

    private static Response answer(int status, Object entity) {
        Response.ResponseBuilder answer = Response.status(status);
        if (entity instanceof PracticeView round) {
            answer.header(HttpHeaders.ETAG, ETags.of(round.answered()));
        }
        return answer.entity(entity).build();
    }
}
