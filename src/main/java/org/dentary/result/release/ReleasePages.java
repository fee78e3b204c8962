package org.dentary.result.release;

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
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.result.FindingService;
import org.dentary.result.FindingView;
import org.dentary.result.WaitingView;
import org.jboss.resteasy.reactive.RestForm;

/** One animal's unreleased outcome, what it rests on, and its release by a second person. */
@Path("/results/release")
@Produces(MediaType.TEXT_HTML)
public class ReleasePages {
    private final ReleaseService releases;
    private final FindingService findings;
    private final CurrentAccount account;

    ReleasePages(ReleaseService releases, FindingService findings, CurrentAccount account) {
        this.releases = releases;
        this.findings = findings;
        this.account = account;
    }

    @CheckedTemplate(basePath = "result")
    static class Templates {
        static native TemplateInstance release(
                String kit,
                String disease,
                List<WaitingView> waiting,
                ReleaseView released,
                String timeZone,
                List<FindingView> findings,
                String hindrance,
                String reason,
                Faults faults);
    }

    @GET
    @Path("{kit}")
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response look(@PathParam("kit") String kit, @QueryParam("disease") String disease) {
        return show(200, kit, disease, "", Faults.NONE);
    }

    @POST
    @Path("{kit}")
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response release(@PathParam("kit") String kit, @RestForm String disease, @RestForm String reason) {
        String why = reason == null ? "" : reason.strip();
        try {
            releases.release(kit, disease, why.isEmpty() ? null : why);
            return Response.seeOther(URI.create("/results/release/" + kit + "?disease=" + disease))
                    .build();
        } catch (DomainException refusal) {
            return show(refusal.status(), kit, disease, why, Faults.of(refusal));
        }
    }

    @GET
    @Path("{kit}/findings.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.RESULT_READ)
    public Response findings(@PathParam("kit") String kit) {
        return Reply.csv(
                "findings.csv",
                List.of(
                        "tested_on",
                        "specimens",
                        "method",
                        "stage",
                        "finding",
                        "status",
                        "laboratory",
                        "accession",
                        "item",
                        "recorded_by",
                        "corrects",
                        "corrected_by"),
                findings.ofKit(kit).stream()
                        .map(f -> new Object[] {
                            f.testedOn(),
                            f.specimens(),
                            f.method(),
                            f.stage(),
                            f.finding(),
                            f.status(),
                            f.laboratory(),
                            f.accession(),
                            f.item(),
                            f.recordedBy(),
                            f.corrects(),
                            f.correctedBy()
                        })
                        .toList());
    }

    private Response show(int status, String typed, String disease, String reason, Faults faults) {
        ReleaseService.Standing standing = releases.standing(typed, disease);
        return Reply.page(
                status,
                Templates.release(
                        standing.kit(),
                        standing.disease(),
                        standing.waiting(),
                        standing.released(),
                        standing.timeZone(),
                        account.get().may(Act.RESULT_READ) ? findings.ofKit(standing.kit()) : List.of(),
                        standing.hindrance(),
                        reason,
                        faults));
    }
}
