package org.dentary.submission;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.dentary.custody.desk.FormChecks;
import org.dentary.custody.desk.HandOverForm;
import org.dentary.custody.evidence.PhotoForms;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.request.ETags;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** What a laboratory counted in, on the page of the submission. */
@Path("/submissions")
@Produces(MediaType.TEXT_HTML)
public class ReceiptPages {
    private final SubmissionService submissions;
    private final ReceiptService receipts;
    private final BenchPage bench;
    private final PhotoForms photos;
    private final FormChecks checks;
    private final CurrentAccount account;
    private final Clock clock;

    ReceiptPages(
            SubmissionService submissions,
            ReceiptService receipts,
            BenchPage bench,
            PhotoForms photos,
            FormChecks checks,
            CurrentAccount account,
            Clock clock) {
        this.submissions = submissions;
        this.receipts = receipts;
        this.bench = bench;
        this.photos = photos;
        this.checks = checks;
        this.account = account;
        this.clock = clock;
    }

    @POST
    @Path("{id}/receipt")
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    @PermissionsAllowed(Act.SUBMISSION_WRITE)
    public Response receive(
            @PathParam("id") UUID id,
            @RestForm String codes,
            @RestForm String damaged,
            @RestForm String fromList,
            @RestForm String occurredAt,
            @RestForm String zone,
            @RestForm String reason,
            @RestForm("photos") List<String> before,
            @RestForm("photo") FileUpload photo) {
        AtomicReference<Bench.Counted> typed = new AtomicReference<>(
                new Bench.Counted(codes, damaged, fromList != null, occurredAt, zone, reason, PhotoForms.ids(before)));
        return bench.answer(id, () -> Bench.counting(typed.get()), () -> {
            SubmissionView present = submissions.view(id);
            List<UUID> kept = photos.keep(formKey(id), before, photo);
            typed.set(new Bench.Counted(codes, damaged, fromList != null, occurredAt, zone, reason, kept));
            List<String> broken = SubmissionPages.codes(damaged);
            Receipt receipt = checks.checked(new Receipt(
                    HandOverForm.time(occurredAt, zone, clock.instant().atOffset(ZoneOffset.UTC)),
                    SubmissionPages.codes(codes),
                    broken.isEmpty() ? null : broken,
                    fromList == null ? Receipt.Source.SCAN : Receipt.Source.LABORATORY_LIST,
                    null,
                    HandOverForm.said(reason),
                    kept));
            receipts.receive(id, receipt, present.receivedAt() == null ? null : ETags.of(present.version()));
            return "";
        });
    }

    /** Several people may count one parcel; each one's photographs have ids of their own. */
    private UUID formKey(UUID submission) {
        return UUID.nameUUIDFromBytes(
                (submission + " counted by " + account.get().actor()).getBytes(StandardCharsets.UTF_8));
    }
}
