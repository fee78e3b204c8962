package org.dentary.story;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;

/** The list of animals as a file under an address of its own, for links. */
@Path("/api/v1/animals.csv")
public class AnimalsFileResource {
    private final AnimalListService list;
    private final CurrentAccount current;

    AnimalsFileResource(AnimalListService list, CurrentAccount current) {
        this.list = list;
        this.current = current;
    }

    /** All animals of the filter as CSV, streamed. */
    @GET
    @Produces("text/csv")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public Response csv(@BeanParam AnimalListParameters asked) {
        return file(list, asked.filter(current.get()));
    }

    static Response file(AnimalListService list, AnimalFilter filter) {
        StreamingOutput stream = out -> list.write(filter, out);
        return Reply.file(stream, CsvTable.MEDIA_TYPE, "animals.csv");
    }
}
