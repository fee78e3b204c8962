package org.dentary.result.notification;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.ETags;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;
import org.dentary.platform.table.Page;
import org.dentary.result.notification.letter.LetterService;

/** Who is to be told what was released of the animal they brought, and every try. */
@Path("/api/v1/notifications")
public class NotificationsResource {
    private static final int MOST = 1_000;

    private final NotificationService notifications;
    private final LetterService letters;

    NotificationsResource(NotificationService notifications, LetterService letters) {
        this.notifications = notifications;
        this.letters = letters;
    }

    /**
     * The work list, as JSON by pages or whole as CSV.
     *
     * @param state OPEN for all that is to be done, one state, or nothing for everything
     * @param after where the page before ended, from its Link
     */
    @GET
    @Produces({MediaType.APPLICATION_JSON, "text/csv"})
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response list(
            @QueryParam("state") String state,
            @QueryParam("season") String season,
            @QueryParam("disease") String disease,
            @QueryParam("after") String after,
            @QueryParam("limit") @DefaultValue("200") int limit,
            @Context HttpHeaders headers,
            @Context UriInfo address) {
        NotificationFilter filter = new NotificationFilter(state, season, disease);
        if (CsvTable.isAsked(headers)) {
            return csv(notifications, filter);
        }
        NotificationService.Items page = notifications.page(filter, after, Page.size(limit, MOST));
        return Page.linked(Response.ok(new ItemList<>(page.items())), address, "after", page.next())
                .build();
    }

    static Response csv(NotificationService notifications, NotificationFilter filter) {
        StreamingOutput body = out -> notifications.write(filter, out);
        return Reply.file(body, CsvTable.MEDIA_TYPE, "telling.csv");
    }

    /** One animal's released outcome, what to say, and every try. */
    @GET
    @Path("{kit}/{disease}")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.NOTIFICATION_READ)
    public Response one(@PathParam("kit") String kit, @PathParam("disease") String disease) {
        return answer(Response.ok(), notifications.told(kit, disease));
    }

    /** Records a try. */
    @PUT
    @Path("{kit}/{disease}/attempts/{id}")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.NOTIFY)
    public Response record(
            @PathParam("kit") String kit,
            @PathParam("disease") String disease,
            @PathParam("id") UUID id,
            @NotNull @Valid RecordAttempt attempt) {
        NotificationService.Recorded recorded = notifications.record(kit, disease, id, attempt);
        return answer(
                Response.status(recorded.fresh() ? 201 : 200).header(HttpHeaders.ETAG, ETags.of(0)), recorded.told());
    }

    /** The letter, made anew; the contact is read and audited. */
    @GET
    @Path("{kit}/{disease}/letter.pdf")
    @Produces("application/pdf")
    @PermissionsAllowed(Act.NOTIFY)
    public Response letter(
            @PathParam("kit") String kit, @PathParam("disease") String disease, @QueryParam("purpose") String purpose) {
        return pdf(letters.letter(kit, disease, purpose));
    }

    static Response pdf(byte[] letter) {
        return Response.ok(letter, "application/pdf")
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"letter.pdf\"")
                .build();
    }

    private static Response answer(Response.ResponseBuilder answer, NotificationService.Told told) {
        return answer.entity(told).build();
    }
}
