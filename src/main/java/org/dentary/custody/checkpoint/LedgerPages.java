package org.dentary.custody.checkpoint;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.dentary.ledger.Checkpoint;
import org.dentary.ledger.CheckpointService;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.jboss.resteasy.reactive.RestForm;

/** The chain of checkpoints, newest first; sealing now; what to take away. */
@Path("/ledger")
@Produces(MediaType.TEXT_HTML)
public class LedgerPages {
    private static final int PAGE = 50;
    private static final String NEWEST = "9223372036854775807";

    private final CheckpointService checkpoints;
    private final PlanService plan;

    LedgerPages(CheckpointService checkpoints, PlanService plan) {
        this.checkpoints = checkpoints;
        this.plan = plan;
    }

    @CheckedTemplate(basePath = "custody")
    static class Templates {
        static native TemplateInstance ledger(
                List<Checkpoint> checkpoints,
                long unsealed,
                String zone,
                String fingerprint,
                String key,
                Checkpoint made,
                String first,
                String next,
                Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.LEDGER_READ)
    public TemplateInstance page(
            @QueryParam("before") @DefaultValue(NEWEST) long before, @QueryParam("made") @DefaultValue("0") long made) {
        return page(before, checkpoints.find(made).orElse(null), Faults.NONE);
    }

    /** Seals everything recorded since the last checkpoint; the key is the page's, so that a second click seals once. */
    @POST
    @Path("checkpoints")
    @PermissionsAllowed(Act.CHECKPOINT)
    public Response seal(@RestForm String key) {
        UUID id;
        try {
            id = UUID.fromString(key);
        } catch (IllegalArgumentException | NullPointerException fault) {
            return Response.status(422)
                    .entity(page(
                            Long.MAX_VALUE,
                            null,
                            Faults.of(InvalidInput.field("key", "NO_KEY", "This form is broken; load the page again"))))
                    .build();
        }
        long number = checkpoints.checkpoint(id).checkpoint().number();
        return Response.seeOther(URI.create("/ledger?made=" + number)).build();
    }

    @GET
    @Path("checkpoints.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.LEDGER_READ)
    public Response csv() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(
                out, List.of("number", "id", "made_at", "entries", "root", "previous", "hash", "key", "signature"))) {
            checkpoints
                    .checkpoints(Long.MAX_VALUE, Integer.MAX_VALUE)
                    .forEach(one -> csv.row(
                            one.number(),
                            one.id(),
                            one.madeAt(),
                            one.treeSize(),
                            one.root(),
                            one.previous(),
                            one.hash(),
                            one.key(),
                            one.signature()));
        }
        return Reply.file(out.toByteArray(), CsvTable.MEDIA_TYPE, "checkpoints.csv");
    }

    private TemplateInstance page(long before, Checkpoint made, Faults faults) {
        List<Checkpoint> page = checkpoints.checkpoints(before, PAGE);
        String next = page.size() < PAGE || page.get(PAGE - 1).number() == 1
                ? null
                : "/ledger?before=" + page.get(PAGE - 1).number();
        String zone = plan.stations().stream()
                .findFirst()
                .map(station -> station.timeZone())
                .orElse("UTC");
        return Templates.ledger(
                page,
                checkpoints.unsealed(),
                zone,
                checkpoints.keyFingerprint(),
                UUID.randomUUID().toString(),
                made,
                before == Long.MAX_VALUE ? null : "/ledger",
                next,
                faults);
    }
}
