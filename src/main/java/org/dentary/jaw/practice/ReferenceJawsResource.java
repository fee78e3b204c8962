package org.dentary.jaw.practice;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import java.util.UUID;
import org.dentary.kit.KitService;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;

/** The reference panel's jaws of known or agreed age. */
@Path("/api/v1/reference-jaws")
@Produces(MediaType.APPLICATION_JSON)
public class ReferenceJawsResource {
    private final ReferencePanelService panel;
    private final KitService kits;

    ReferenceJawsResource(ReferencePanelService panel, KitService kits) {
        this.panel = panel;
        this.kits = kits;
    }

    /** Which animal's jaw goes on the panel: its kit, or any label of it. */
    public record PutOnPanel(
            @NotBlank(message = "give the kit whose jaw goes on the panel")
            String kit) {}

    /** Why a jaw leaves the panel. */
    public record Retire(
            @NotBlank(message = "say why it leaves the panel") @Size(max = 500)
            String reason) {}

    /** The panel, jaws in use first, then the newest. */
    @GET
    @PermissionsAllowed(Act.REFERENCE_PANEL_READ)
    public Response all() {
        return answer(200, new ItemList<>(panel.all()));
    }

    /** The same as a table. */
    @GET
    @Path("panel.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.REFERENCE_PANEL_READ)
    public Response table() {
        List<ReferenceJawView> jaws = panel.all();
        StreamingOutput stream = out -> {
            try (CsvTable table = CsvTable.on(
                    out,
                    List.of(
                            "id",
                            "kit",
                            "kind",
                            "ageClass",
                            "source",
                            "photos",
                            "addedBy",
                            "addedAt",
                            "retiredAt",
                            "retiredReason"))) {
                jaws.forEach(jaw -> table.row(
                        jaw.id(),
                        jaw.kit(),
                        jaw.kind(),
                        jaw.ageClass(),
                        jaw.source(),
                        jaw.photos(),
                        jaw.addedBy(),
                        jaw.addedAt(),
                        jaw.retiredAt(),
                        jaw.retiredReason()));
            }
        };
        return Reply.file(stream, CsvTable.MEDIA_TYPE, "panel.csv");
    }

    /** Puts an animal's jaw on the panel; its class comes from its mark or its readers, never from the request. */
    @PUT
    @Path("{id}")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response add(@PathParam("id") UUID id, @NotNull @Valid PutOnPanel given) {
        boolean isNew = panel.add(id, kits.kit(given.kit()));
        return answer(isNew ? 201 : 200, panel.reference(id));
    }

    /** Takes a jaw off the panel; rounds that had it keep it. */
    @PUT
    @Path("{id}/retirement")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.PUT_RIGHT)
    public Response retire(@PathParam("id") UUID id, @NotNull @Valid Retire given) {
        panel.retire(id, given.reason());
        return answer(200, panel.reference(id));
    }

    private static Response answer(int status, Object entity) {
        return Reply.versioned(status, entity, 0);
    }
}
