package org.dentary.portal.problem;

import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.StreamingOutput;
import java.util.List;
import org.dentary.platform.table.CsvTable;

/** The problems of the page as a file. */
@Path("/problems.csv")
@PermitAll
public class ProblemTableResource {
    private static final List<String> COLUMNS = List.of("room", "code", "meaning", "remedy");

    @GET
    @Produces(CsvTable.MEDIA_TYPE)
    public StreamingOutput problems() {
        return out -> {
            try (CsvTable csv = CsvTable.on(out, COLUMNS)) {
                Explanations.all().forEach(one -> csv.row(one.room(), one.code(), one.meaning(), one.remedy()));
            }
        };
    }
}
