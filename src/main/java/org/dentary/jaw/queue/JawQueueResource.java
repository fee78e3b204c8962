package org.dentary.jaw.queue;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.ItemList;

/** Jaws to read, to read again and to decide, longest waiting first; no class is given away. */
@Path("/api/v1/jaws")
public class JawQueueResource {
    private final JawQueueService jaws;

    JawQueueResource(JawQueueService jaws) {
        this.jaws = jaws;
    }

    /** At most 500 jaws of each task. */
    @GET
    @Path("queue")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.ANIMAL_READ)
    public Response queue(@QueryParam("station") String station, @QueryParam("task") String task) {
        if (task != null && !task.isBlank() && !JawQueueService.TASKS.contains(task)) {
            throw InvalidInput.field("task", "INVALID_VALUE", "'" + task + "' is not one of READ, READ_AGAIN, DECIDE");
        }
        return Reply.ok(new ItemList<>(jaws.queue(blank(station), blank(task))));
    }

    /** How many jaws wait, with those that wait only because the plan sends probable ages to a second reader. */
    @GET
    @Path("queue/sizes")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.ANIMAL_READ)
    public Response sizes(@QueryParam("station") String station) {
        return Reply.ok(new ItemList<>(jaws.sizes(blank(station))));
    }

    /** All of them, as CSV. */
    @GET
    @Path("queue.csv")
    @Produces("text/csv")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public Response csv(@QueryParam("station") String station) {
        String one = blank(station);
        StreamingOutput stream = out -> {
            try (CsvTable table = CsvTable.on(
                    out,
                    List.of(
                            "kit",
                            "task",
                            "since",
                            "season",
                            "station",
                            "diedOn",
                            "jawStatus",
                            "whereabouts",
                            "readers",
                            "why",
                            "photo"))) {
                jaws.each(
                        one,
                        jaw -> table.row(
                                jaw.kit(),
                                jaw.task(),
                                jaw.since(),
                                jaw.season(),
                                jaw.station(),
                                jaw.diedOn(),
                                jaw.jawStatus(),
                                jaw.whereabouts(),
                                jaw.readers(),
                                jaw.why(),
                                jaw.photo()));
            }
        };
        return Reply.file(stream, CsvTable.MEDIA_TYPE, "jaws.csv");
    }

    private static String blank(String typed) {
        return typed == null || typed.isBlank() ? null : typed.trim();
    }
}
