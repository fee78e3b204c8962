package org.dentary.custody.discrepancy;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.desk.DeskReading;
import org.dentary.custody.desk.FormChecks;
import org.dentary.custody.desk.HandOverForm;
import org.dentary.custody.evidence.PhotoForms;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.request.ETags;
import org.dentary.platform.table.Page;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** What does not add up, the next due first, and settling it. A sampler sees their own. */
@Path("/custody")
@Produces(MediaType.TEXT_HTML)
public class DiscrepancyPages {
    private static final int PAGE = 500;
    private static final String ADDRESS = "/custody/discrepancies";
    private static final List<String> OUTCOMES =
            Arrays.stream(PutDiscrepancy.Outcome.values()).map(Enum::name).toList();

    private final DiscrepancyService discrepancies;
    private final DiscrepancyViews views;
    private final PhotoForms photos;
    private final DeskReading desks;

    DiscrepancyPages(DiscrepancyService discrepancies, DiscrepancyViews views, PhotoForms photos, DeskReading desks) {
        this.discrepancies = discrepancies;
        this.views = views;
        this.photos = photos;
        this.desks = desks;
    }

    /** What a form said of how it was settled. */
    record Settlement(String outcome, String evidence, List<UUID> photos) {}

    /** What was typed, and for which; every field may be null. */
    record Typed(String id, String outcome, String evidence, List<UUID> photos) {
        static final Typed NOTHING = new Typed(null, null, null, List.of());

        public boolean isFor(String one) {
            return one.equals(id);
        }

        public List<UUID> photosFor(String one) {
            return isFor(one) ? photos : List.of();
        }
    }

    @CheckedTemplate(basePath = "custody")
    static class Templates {
        static native TemplateInstance discrepancies(
                List<DiscrepancyView> discrepancies,
                String first,
                String next,
                boolean all,
                List<String> outcomes,
                String settled,
                String zone,
                Typed typed,
                Faults faults);
    }

    @GET
    @Path("discrepancies")
    @PermissionsAllowed({Act.DISCREPANCY, Act.AUDIT_READ})
    public TemplateInstance page(
            @QueryParam("all") boolean all, @QueryParam("after") String after, @QueryParam("settled") String settled) {
        return page(all, Mark.read("after", after, LocalDate::parse), settled, Typed.NOTHING, Faults.NONE);
    }

    /** Settles one as it stands on the page; what it is about stays. */
    @POST
    @Path("discrepancies/{id}")
    @Consumes({MediaType.MULTIPART_FORM_DATA, MediaType.APPLICATION_FORM_URLENCODED})
    @PermissionsAllowed(Act.DISCREPANCY)
    public Response settle(
            @PathParam("id") UUID id,
            @RestForm String outcome,
            @RestForm String evidence,
            @RestForm String version,
            @RestForm("photos") List<String> before,
            @RestForm("photo") FileUpload photo) {
        List<UUID> kept = List.of();
        try {
            DiscrepancyView one = views.view(id);
            kept = photos.keep(id, before, photo);
            Settlement said = new Settlement(outcome, HandOverForm.said(evidence), kept);
            discrepancies.settleForm(id, settled(one, said), said, ETags.of(HandOverForm.version(version)));
            return Response.seeOther(URI.create("/custody/discrepancies?settled=" + one.code()))
                    .build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(page(
                            false,
                            before(id),
                            null,
                            new Typed(id.toString(), outcome, evidence, kept),
                            FormChecks.shown(fault, desks.zones().get(0))))
                    .build();
        }
    }

    private static PutDiscrepancy settled(DiscrepancyView one, Settlement said) {
        if (HandOverForm.said(said.outcome()) == null) {
            throw InvalidInput.field("outcome", "REQUIRED", "Say how it was settled: choose one");
        }
        if (said.evidence() != null && said.evidence().length() > 2000) {
            throw InvalidInput.field("evidence", "TOO_LONG", "Evidence has up to 2000 characters");
        }
        return new PutDiscrepancy(
                one.code(),
                PutDiscrepancy.Kind.valueOf(one.kind()),
                one.owner(),
                one.dueOn(),
                Stream.of(one.evidence(), said.evidence())
                        .filter(Objects::nonNull)
                        .reduce((before, since) -> before + ". " + since)
                        .orElse(null),
                HandOverForm.oneOf("outcome", said.outcome(), PutDiscrepancy.Outcome.values()),
                null,
                null,
                said.photos());
    }

    /** The page that begins with the one that was to be settled, so that what was typed is in sight. */
    private Mark before(UUID id) {
        try {
            return new Mark(views.view(id).dueOn().toString(), id.toString().substring(0, 35));
        } catch (NotFound none) {
            return null;
        }
    }

    private TemplateInstance page(boolean all, Mark after, String settled, Typed typed, Faults faults) {
        Page<DiscrepancyView> page = Page.of(views.mine(all ? null : true, after, PAGE + 1), PAGE);
        String address = ADDRESS + (all ? "?all=true" : "");
        Mark next = page.next(DiscrepancyView::mark);
        return Templates.discrepancies(
                page.items(),
                after == null ? null : address,
                next == null ? null : address + (all ? "&" : "?") + "after=" + next,
                all,
                OUTCOMES,
                settled,
                desks.zones().get(0),
                typed,
                faults);
    }
}
