package org.dentary.plan;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.ItemList;

/** The set-up lists, in set-up order; seasons oldest first. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
public class PlanResource {
    private final PlanService plan;

    PlanResource(PlanService plan) {
        this.plan = plan;
    }

    @GET
    @Path("seasons")
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<SeasonView> seasons() {
        return new ItemList<>(plan.seasons());
    }

    @GET
    @Path("stations")
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<StationView> stations() {
        return new ItemList<>(plan.stations());
    }

    @GET
    @Path("management-units")
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<UnitView> units() {
        return new ItemList<>(plan.units());
    }

    @GET
    @Path("laboratories")
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<LaboratoryView> laboratories() {
        return new ItemList<>(plan.laboratories());
    }

    @GET
    @Path("test-methods")
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<TestMethodView> methods() {
        return new ItemList<>(plan.methods());
    }

    @GET
    @Path("diseases")
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<DiseaseView> diseases() {
        return new ItemList<>(plan.diseases());
    }

    @GET
    @Path("species")
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<SpeciesView> species() {
        return new ItemList<>(plan.species());
    }
}
