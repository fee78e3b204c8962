package org.dentary.submission;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.table.Page;
import org.dentary.submission.outstanding.OutstandingLists;
import org.dentary.submission.outstanding.OutstandingQueries;
import org.dentary.submission.packing.PackSpecimen;
import org.jboss.resteasy.reactive.RestForm;

/** Submissions as pages: what is where, and the packing bench of one. What is done on a page is done now. */
@Path("/submissions")
@Produces(MediaType.TEXT_HTML)
public class SubmissionPages {
    private static final List<String> OPEN = List.of("PACKING", "DISPATCHED");
    private static final List<String> RECEIVED = List.of("RECEIVED");
    private static final int MOST_OPEN = 200;
    private static final int A_PAGE = 25;
    /** Of what waits to be sent or reported, so many are shown at first: those that have waited longest. */
    private static final int FIRST_WAITING = 50;

    private final SubmissionService submissions;
    private final SubmissionLists lists;
    private final OutstandingLists outstanding;
    private final BenchPage bench;
    private final DispatchService leaving;
    private final RecallService recalls;
    private final PlanService plan;
    private final Clock clock;

    SubmissionPages(
            SubmissionService submissions,
            SubmissionLists lists,
            OutstandingLists outstanding,
            BenchPage bench,
            DispatchService leaving,
            RecallService recalls,
            PlanService plan,
            Clock clock) {
        this.submissions = submissions;
        this.lists = lists;
        this.outstanding = outstanding;
        this.bench = bench;
        this.leaving = leaving;
        this.recalls = recalls;
        this.plan = plan;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "submission")
    static class Templates {
        static native TemplateInstance submissions(
                Page<SubmissionQueries.Head> open,
                Page<SubmissionQueries.Head> received,
                OutstandingLists.Part<OutstandingQueries.Waiting> waiting,
                OutstandingLists.Part<OutstandingQueries.Overdue> overdue,
                Next next,
                List<OutstandingQueries.Turnaround> turnaround,
                List<LaboratoryView> laboratories,
                Faults faults);
    }

    /** Where the next page of each list begins; null where nothing follows. */
    record Next(Long open, Long received, String waiting, String overdue) {}

    @GET
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public TemplateInstance list(
            @QueryParam("open") Long open,
            @QueryParam("before") Long before,
            @QueryParam("waiting") String waiting,
            @QueryParam("overdue") String overdue) {
        return list(new Next(open, before, waiting, overdue), Faults.NONE);
    }

    private TemplateInstance list(Next from, Faults faults) {
        Page<SubmissionQueries.Head> open = lists.list(OPEN, null, from.open(), MOST_OPEN);
        Page<SubmissionQueries.Head> received = lists.list(RECEIVED, null, from.received(), A_PAGE);
        OutstandingLists.Part<OutstandingQueries.Waiting> waiting = outstanding.waiting(from.waiting(), FIRST_WAITING);
        OutstandingLists.Part<OutstandingQueries.Overdue> overdue = outstanding.overdue(from.overdue(), FIRST_WAITING);
        return Templates.submissions(
                open,
                received,
                waiting,
                overdue,
                new Next(
                        open.next(SubmissionQueries.Head::number),
                        received.next(SubmissionQueries.Head::number),
                        waiting.page().next(OutstandingQueries.Waiting::code),
                        overdue.page().next(OutstandingLists::mark)),
                outstanding.turnaround(),
                plan.laboratories(),
                faults);
    }

    @POST
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response begin(@RestForm String laboratory, @RestForm String purpose) {
        UUID id = UUID.randomUUID();
        try {
            if (laboratory == null || laboratory.isBlank()) {
                throw InvalidInput.field("laboratory", "REQUIRED", "Choose the laboratory that it goes to");
            }
            submissions.put(id, new OpenSubmission(laboratory, purpose(purpose)), null);
            return Response.seeOther(URI.create("/submissions/" + id)).build();
        } catch (DomainException fault) {
            return Response.status(422)
                    .entity(list(new Next(null, null, null, null), Faults.of(fault)))
                    .build();
        }
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.SUBMISSION_READ)
    public TemplateInstance bench(
            @PathParam("id") UUID id,
            @QueryParam("packed") String packed,
            @QueryParam("cut") String cut,
            @QueryParam("box") String box) {
        // Only what is in the submission is said to be packed, whatever the address says.
        boolean isIn = submissions.view(id).specimens().stream()
                .anyMatch(piece -> piece.code().equals(packed));
        return bench.show(id, isIn ? packed : null, cut, Bench.packing(null, box, null), Faults.NONE);
    }

    @POST
    @Path("{id}/pack")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response pack(
            @PathParam("id") UUID id, @RestForm String code, @RestForm String box, @RestForm String overrideReason) {
        return bench.answer(id, Bench.packing(code, box, overrideReason), () -> {
            if (code == null || code.isBlank()) {
                throw InvalidInput.field("code", "REQUIRED", "Scan the code on the tube");
            }
            SubmissionService.Packed packed =
                    submissions.pack(id, code, new PackSpecimen(now(), empty(box), empty(overrideReason), null, null));
            return "?packed=" + packed.code() + (packed.box() == null ? "" : "&box=" + packed.box());
        });
    }

    @POST
    @Path("{id}/take-out")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response takeOut(@PathParam("id") UUID id, @RestForm String code) {
        return bench.answer(id, Bench.EMPTY, () -> {
            submissions.takeOut(id, code == null ? "" : code);
            return "";
        });
    }

    @POST
    @Path("{id}/dispatch")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response dispatch(
            @PathParam("id") UUID id,
            @RestForm String carrier,
            @RestForm String waybill,
            @RestForm String shipper,
            @RestForm String leavingReason) {
        return bench.answer(id, Bench.leaving(carrier, waybill, shipper, leavingReason), () -> {
            if (carrier == null || carrier.isBlank()) {
                throw InvalidInput.field("carrier", "REQUIRED", "Say who carries it");
            }
            leaving.dispatch(
                    id,
                    new Dispatch(
                            now(), carrier.strip(), empty(waybill), empty(shipper), empty(leavingReason), null, null));
            return "";
        });
    }

    /** Some or all come back: another laboratory is meant, or the parcel was stopped on its way. */
    @POST
    @Path("{id}/recall")
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response recall(@PathParam("id") UUID id, @RestForm String recalled, @RestForm String recallReason) {
        return bench.answer(id, Bench.keeping(recalled, recallReason), () -> {
            if (recallReason == null || recallReason.isBlank()) {
                throw InvalidInput.field("recallReason", "REQUIRED", "Say why it comes back");
            }
            List<String> codes = codes(recalled);
            recalls.recall(id, new Recall(codes.isEmpty() ? null : codes, now(), recallReason.strip(), null));
            return "";
        });
    }

    static List<String> codes(String typed) {
        return typed == null
                ? List.of()
                : Arrays.stream(typed.split("[\\r\\n,;]+"))
                        .filter(code -> !code.isBlank())
                        .toList();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private static OpenSubmission.Purpose purpose(String typed) {
        if (typed == null || typed.isBlank()) {
            return null;
        }
        try {
            return OpenSubmission.Purpose.valueOf(typed);
        } catch (IllegalArgumentException unknown) {
            throw InvalidInput.field(
                    "purpose",
                    "NOT_ALLOWED",
                    "\"" + typed + "\" is none of " + Arrays.toString(OpenSubmission.Purpose.values()));
        }
    }

    private static String empty(String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }
}
