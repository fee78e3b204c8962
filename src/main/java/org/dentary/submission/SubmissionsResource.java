package org.dentary.submission;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.UUID;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.ItemList;
import org.dentary.platform.table.Page;
import org.dentary.platform.table.StreamedCsv;
import org.dentary.submission.packing.PackSpecimen;

/** Submissions to laboratories. */
@Path("/api/v1/submissions")
@Produces(MediaType.APPLICATION_JSON)
public class SubmissionsResource {
    private static final List<String> STATES = List.of("PACKING", "DISPATCHED", "RECEIVED");
    private static final int MOST = 1_000;

    private final SubmissionService submissions;
    private final SubmissionLists lists;
    private final DispatchService leaving;
    private final ReceiptService receipts;
    private final RecallService recalls;
    private final PlanService plan;
    private final StreamedCsv files;

    SubmissionsResource(
            SubmissionService submissions,
            SubmissionLists lists,
            DispatchService leaving,
            ReceiptService receipts,
            RecallService recalls,
            PlanService plan,
            StreamedCsv files) {
        this.submissions = submissions;
        this.lists = lists;
        this.leaving = leaving;
        this.receipts = receipts;
        this.recalls = recalls;
        this.plan = plan;
        this.files = files;
    }

    @PUT
    @Path("{id}")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response put(
            @PathParam("id") UUID id,
            @NotNull @Valid OpenSubmission command,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        return answer(submissions.put(id, command, ifMatch));
    }

    @PUT
    @Path("{id}/specimens/{code}")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response pack(
            @PathParam("id") UUID id, @PathParam("code") String code, @NotNull @Valid PackSpecimen command) {
        SubmissionService.Packed packed = submissions.pack(id, code, command);
        return answer(new SubmissionService.Done(packed.submission(), packed.fresh()));
    }

    @DELETE
    @Path("{id}/specimens/{code}")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response takeOut(@PathParam("id") UUID id, @PathParam("code") String code) {
        return answer(new SubmissionService.Done(submissions.takeOut(id, code), false));
    }

    @POST
    @Path("{id}/dispatch")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response dispatch(@PathParam("id") UUID id, @NotNull @Valid Dispatch command) {
        return answer(new SubmissionService.Done(leaving.dispatch(id, command), false));
    }

    /** One thing that speaks against sending a tube that is packed, and whether a reason passes it. */
    public record Objection(String code, String rule, String message, boolean passable) {}

    /** What would speak against sending it now: much may have become known since it was packed. */
    @GET
    @Path("{id}/objections")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public ItemList<Objection> objections(@PathParam("id") UUID id) {
        return new ItemList<>(leaving.standing(id).stream()
                .flatMap(verdict -> verdict.all().stream()
                        .map(fault -> new Objection(
                                verdict.code(),
                                fault.rule(),
                                fault.message(),
                                verdict.unlessReasoned().contains(fault))))
                .toList());
    }

    @GET
    @Path("{id}/objections.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response objectionsCsv(@PathParam("id") UUID id) {
        return Reply.csv(
                "objections.csv",
                List.of("code", "rule", "message", "passable"),
                objections(id).items().stream()
                        .map(one -> new Object[] {one.code(), one.rule(), one.message(), one.passable()})
                        .toList());
    }

    @POST
    @Path("{id}/recall")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response recall(@PathParam("id") UUID id, @NotNull @Valid Recall command) {
        return answer(new SubmissionService.Done(recalls.recall(id, command), false));
    }

    @PUT
    @Path("{id}/receipt")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response receive(
            @PathParam("id") UUID id,
            @NotNull @Valid Receipt command,
            @HeaderParam(HttpHeaders.IF_MATCH) String ifMatch) {
        return answer(receipts.receive(id, command, ifMatch));
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response get(@PathParam("id") UUID id) {
        return answer(new SubmissionService.Done(submissions.view(id), false));
    }

    /**
     * Submissions, newest first.
     *
     * @param before the number at which the page before ended, from its Link
     */
    @GET
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response list(
            @QueryParam("state") String state,
            @QueryParam("laboratory") String laboratory,
            @QueryParam("before") Long before,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context UriInfo address) {
        if (state != null && !STATES.contains(state)) {
            throw InvalidInput.field(
                    "state", "INVALID_VALUE", "'" + state + "' is not one of " + String.join(", ", STATES));
        }
        if (laboratory != null) {
            plan.laboratory(laboratory);
        }
        return lists.list(state == null ? List.of() : List.of(state), laboratory, before, Page.size(limit, MOST))
                .answer(address, "before", SubmissionQueries.Head::number);
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public Response listCsv() {
        return files.<SubmissionQueries.Head>file(
                "submissions.csv",
                List.of(
                        "number",
                        "id",
                        "laboratory",
                        "state",
                        "packed",
                        "received",
                        "missing",
                        "carrier",
                        "waybill",
                        "dispatchedAt"),
                lists.all(),
                one -> new Object[] {
                    one.number(),
                    one.id(),
                    one.laboratory(),
                    one.state(),
                    one.packed(),
                    one.received(),
                    one.missing(),
                    one.carrier(),
                    one.waybill(),
                    one.dispatchedAt()
                });
    }

    private static Response answer(SubmissionService.Done done) {
        SubmissionView submission = done.submission();
        return submission.version() == null
                ? Reply.ok(submission)
                : Reply.versioned(done.fresh() ? 201 : 200, submission, submission.version());
    }
}
