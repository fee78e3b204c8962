package org.dentary.people;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.dentary.platform.account.Act;
import org.dentary.platform.table.ItemList;

/** The roster, in set-up order. */
@Path("/api/v1/persons")
@Produces(MediaType.APPLICATION_JSON)
public class PeopleResource {
    private final PeopleService people;

    PeopleResource(PeopleService people) {
        this.people = people;
    }

    @GET
    @PermissionsAllowed(Act.READ_COMMON)
    public ItemList<PersonView> persons() {
        return new ItemList<>(people.persons());
    }
}
