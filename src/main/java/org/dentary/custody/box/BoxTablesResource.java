package org.dentary.custody.box;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Consumer;
import org.dentary.custody.chain.Answers;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** A box's contents and movements as tables. */
@Path("/api/v1/boxes")
public class BoxTablesResource {
    private final BoxService boxes;
    private final MovementQueries movements;

    BoxTablesResource(BoxService boxes, MovementQueries movements) {
        this.boxes = boxes;
        this.movements = movements;
    }

    @GET
    @Path("{code}/contents.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "What is in a box, boxes in it included, as CSV")
    public Response contents(@PathParam("code") String code) {
        BoxView box = boxes.view(code);
        return table(
                box.code() + "-contents",
                List.of("box", "code", "part", "depth"),
                csv -> box.contents().forEach(one -> csv.row(one.box(), one.code(), one.part(), one.depth())));
    }

    @GET
    @Path("{code}/movements.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.ANIMAL_READ)
    @Operation(summary = "What went into a box and came out of it, newest first, as CSV")
    public Response movements(@PathParam("code") String code) {
        String box = boxes.view(code).code();
        return table(
                box + "-movements",
                List.of("box", "movement", "at", "by", "count", "codes"),
                csv -> Answers.whole(
                        (after, most) -> movements.of(box, after, most),
                        Movement::mark,
                        one -> csv.row(
                                box,
                                one.packed() ? "PUT_IN" : "TAKEN_OUT",
                                one.at()
                                        .truncatedTo(ChronoUnit.SECONDS)
                                        .atZone(ZoneId.of(one.zone()))
                                        .toOffsetDateTime(),
                                one.by(),
                                one.count(),
                                one.codes())));
    }

    private static Response table(String name, List<String> columns, Consumer<CsvTable> rows) {
        StreamingOutput body = out -> {
            try (CsvTable csv = CsvTable.on(out, columns)) {
                rows.accept(csv);
            }
        };
        return Reply.file(body, CsvTable.MEDIA_TYPE, "box-" + name + ".csv");
    }
}
