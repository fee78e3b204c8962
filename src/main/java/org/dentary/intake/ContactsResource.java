package org.dentary.intake;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.animal.vault.ContactService;
import org.dentary.kit.KitService;
import org.dentary.platform.account.Act;

/** What is private of an animal; every read is audited with its purpose. */
@Path("/api/v1/animals")
@Produces(MediaType.APPLICATION_JSON)
public class ContactsResource {
    private final ContactService contacts;
    private final KitService kits;

    ContactsResource(ContactService contacts, KitService kits) {
        this.contacts = contacts;
        this.kits = kits;
    }

    @GET
    @Path("{kit}/contact")
    @PermissionsAllowed(Act.CONTACT_READ)
    public Response read(@PathParam("kit") String kit, @QueryParam("purpose") String purpose) {
        return Response.ok(contacts.read(kits.kit(kit), purpose))
                .header(HttpHeaders.CACHE_CONTROL, "private, no-store")
                .build();
    }

    /** Erases it for good. */
    @DELETE
    @Path("{kit}/contact")
    @PermissionsAllowed(Act.SET_UP)
    public void erase(@PathParam("kit") String kit) {
        contacts.erase(kits.kit(kit));
    }
}
