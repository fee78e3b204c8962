package org.dentary.custody.identity;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.desk.DeskReading;
import org.dentary.custody.desk.FormChecks;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.photo.PhotoReader;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.table.Page;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** Vouching for a mislabeled specimen, and the second person's decision. */
@Path("/identity-exceptions")
@Produces(MediaType.TEXT_HTML)
public class IdentityExceptionPages {
    private static final int PAGE = 500;

    private final IdentityExceptionService exceptions;
    private final IdentityExceptionViews views;
    private final EvidenceService evidence;
    private final FormChecks checks;
    private final DeskReading desks;
    private final CurrentAccount current;

    IdentityExceptionPages(
            IdentityExceptionService exceptions,
            IdentityExceptionViews views,
            EvidenceService evidence,
            FormChecks checks,
            DeskReading desks,
            CurrentAccount current) {
        this.exceptions = exceptions;
        this.views = views;
        this.evidence = evidence;
        this.checks = checks;
        this.desks = desks;
        this.current = current;
    }

    /** What the second person typed; every field may be null. */
    record Typed(String granted, String reason) {
        static final Typed NOTHING = new Typed(null, null);
    }

    @CheckedTemplate(basePath = "identity")
    static class Templates {
        static native TemplateInstance exceptions(
                List<IdentityExceptionView> exceptions, String first, String next, boolean all);

        static native TemplateInstance ask(
                IdentityExceptionForm form, List<LabelProblem> problems, String statement, Faults faults);

        static native TemplateInstance exception(
                IdentityExceptionView one, boolean decides, boolean own, String statement, Typed typed, Faults faults);
    }

    /** What waits for a second person; with {@code all} those that are decided too. */
    @GET
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance page(@QueryParam("all") boolean all, @QueryParam("before") String before) {
        Mark after = Mark.read("before", before, Instant::parse);
        Page<IdentityExceptionView> page = Page.of(
                views.list(
                        new IdentityExceptionQueries.Filter(all ? null : IdentityExceptionView.OPEN, null, null, after),
                        PAGE + 1),
                PAGE);
        String address = "/identity-exceptions" + (all ? "?all=true" : "");
        Mark next = page.next(IdentityExceptionView::mark);
        return Templates.exceptions(
                page.items(),
                after == null ? null : address,
                next == null ? null : address + (all ? "&" : "?") + "before=" + next,
                all);
    }

    @GET
    @Path("new")
    @PermissionsAllowed(Act.IDENTITY_EXCEPTION_ASK)
    public TemplateInstance form(@QueryParam("code") String code, @QueryParam("discrepancy") String discrepancy) {
        return form(IdentityExceptionForm.fresh(code, discrepancy), Faults.NONE);
    }

    @POST
    @Path("new")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @PermissionsAllowed(Act.IDENTITY_EXCEPTION_ASK)
    public Response ask(@BeanParam IdentityExceptionForm form, @RestForm("photo") FileUpload photo) {
        try {
            keep(form, photo);
            exceptions.ask(form.id(), checks.checked(form.command()));
            return Response.seeOther(URI.create("/identity-exceptions/" + form.id()))
                    .build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(form(form, FormChecks.shown(fault, desks.zones().get(0))))
                    .build();
        }
    }

    @GET
    @Path("{id}")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance one(@PathParam("id") UUID id) {
        return one(views.view(id), Typed.NOTHING, Faults.NONE);
    }

    @POST
    @Path("{id}/decision")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.IDENTITY_EXCEPTION_DECIDE)
    public Response decide(
            @PathParam("id") UUID id, @RestForm String granted, @RestForm String reason, @RestForm String password) {
        try {
            Boolean answer = "true".equals(granted) ? Boolean.TRUE : "false".equals(granted) ? Boolean.FALSE : null;
            exceptions.decide(id, checks.checked(new DecideIdentityException(answer, reason, password)));
            return Response.seeOther(URI.create("/identity-exceptions/" + id)).build();
        } catch (DomainException fault) {
            IdentityExceptionView view = views.view(id);
            return Response.status(fault.status())
                    .entity(one(view, new Typed(granted, reason), FormChecks.shown(fault, view.zone())))
                    .build();
        }
    }

    /** Keeps the photo first, so that a form shown again does not ask for it twice. */
    private void keep(IdentityExceptionForm form, FileUpload photo) {
        if (photo == null || photo.size() == 0) {
            return;
        }
        UUID id =
                UUID.nameUUIDFromBytes((form.id() + " " + form.getPhotoIds().size()).getBytes(StandardCharsets.UTF_8));
        try (InputStream in = Files.newInputStream(photo.uploadedFile())) {
            evidence.keep(id, PhotoReader.read(in.readNBytes(PhotoReader.MOST_BYTES + 1), null));
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        form.addPhoto(id);
    }

    private static TemplateInstance form(IdentityExceptionForm form, Faults faults) {
        return Templates.ask(form, List.of(LabelProblem.values()), IdentityRules.ASKED, faults);
    }

    private TemplateInstance one(IdentityExceptionView view, Typed typed, Faults faults) {
        Account account = current.get();
        boolean own = view.askedBy().equals(account.actor());
        boolean decides = view.isOpen() && !own && account.may(Act.IDENTITY_EXCEPTION_DECIDE);
        return Templates.exception(view, decides, own, IdentityRules.DECIDED, typed, faults);
    }
}
