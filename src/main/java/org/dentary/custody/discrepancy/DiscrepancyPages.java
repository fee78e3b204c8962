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
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.dentary.custody.desk.DeskReading;
import org.dentary.custody.desk.FormChecks;
import org.dentary.custody.evidence.PhotoForms;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.ETags;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** What does not add up, the next due first, and settling it. A sampler sees their own. */
@Path("/custody")
@Produces(MediaType.TEXT_HTML)
public class DiscrepancyPages {
    private static final int MOST = 500;
    private static final List<String> OUTCOMES =
            Arrays.stream(PutDiscrepancy.Outcome.values()).map(Enum::name).toList();

    private final DiscrepancyService discrepancies;
    private final PhotoForms photos;
    private final DeskReading desks;

    DiscrepancyPages(DiscrepancyService discrepancies, PhotoForms photos, DeskReading desks) {
        this.discrepancies = discrepancies;
        this.photos = photos;
        this.desks = desks;
    }

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
    public TemplateInstance page(@QueryParam("all") boolean all, @QueryParam("settled") String settled) {
        return page(all, settled, Typed.NOTHING, Faults.NONE);
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
            DiscrepancyView one = discrepancies.view(id);
            boolean again = one.outcome() != null && one.outcome().equals(outcome);
            if (!again) {
                kept = photos.keep(id, before, photo);
                discrepancies.put(id, settled(one, outcome, evidence, kept), ETags.of(number(version)));
            }
            return Response.seeOther(URI.create("/custody/discrepancies?settled=" + one.code()))
                    .build();
        } catch (DomainException fault) {
            return Response.status(fault.status())
                    .entity(page(
                            false,
                            null,
                            new Typed(id.toString(), outcome, evidence, kept),
                            FormChecks.shown(fault, desks.zones().get(0))))
                    .build();
        }
    }

    private static PutDiscrepancy settled(DiscrepancyView one, String outcome, String evidence, List<UUID> photos) {
        if (outcome == null || !OUTCOMES.contains(outcome)) {
            throw InvalidInput.field("outcome", "REQUIRED", "Say how it was settled: choose one");
        }
        String said = evidence == null || evidence.isBlank() ? null : evidence.strip();
        if (said != null && said.length() > 2000) {
            throw InvalidInput.field("evidence", "TOO_LONG", "Evidence has up to 2000 characters");
        }
        String whole = one.evidence() == null ? said : said == null ? one.evidence() : one.evidence() + ". " + said;
        return new PutDiscrepancy(
                one.code(),
                PutDiscrepancy.Kind.valueOf(one.kind()),
                one.owner(),
                one.dueOn(),
                whole,
                PutDiscrepancy.Outcome.valueOf(outcome),
                null,
                null,
                photos);
    }

    private static int number(String version) {
        return version != null && version.matches("[0-9]{1,9}") ? Integer.parseInt(version) : -1;
    }

    private TemplateInstance page(boolean all, String settled, Typed typed, Faults faults) {
        return Templates.discrepancies(
                discrepancies.mine(all ? null : true, MOST),
                all,
                OUTCOMES,
                settled,
                desks.zones().get(0),
                typed,
                faults);
    }
}
