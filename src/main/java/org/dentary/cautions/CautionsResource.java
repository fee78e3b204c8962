package org.dentary.cautions;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.ItemList;

/** The cautions, in set-up order. */
@Path("/api/v1/cautions")
@Produces(MediaType.APPLICATION_JSON)
public class CautionsResource {
    private final CautionService cautions;

    CautionsResource(CautionService cautions) {
        this.cautions = cautions;
    }

    /** Those in force; with {@code hazard} those shown at that step, with {@code disease} not those of other diseases. */
    @GET
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<CautionView> cautions(@QueryParam("hazard") Hazard hazard, @QueryParam("disease") String disease) {
        List<CautionView> found = hazard == null ? cautions.inForce() : cautions.at(hazard);
        return new ItemList<>(found.stream()
                .filter(caution -> disease == null
                        || caution.disease() == null
                        || caution.disease().equals(disease))
                .toList());
    }
}
