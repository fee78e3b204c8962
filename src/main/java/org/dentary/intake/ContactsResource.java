package org.dentary.intake;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.dentary.animal.vault.ContactService;
import org.dentary.kit.KitService;
import org.dentary.platform.account.Act;
import org.dentary.platform.request.Reply;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;

/** What is private of an animal; every read is audited with its purpose. */
@Path("/api/v1/animals")
@Produces(MediaType.APPLICATION_JSON)
public class ContactsResource {
    private final ContactService contacts;
    private final PrivateService privates;
    private final KitService kits;

    ContactsResource(ContactService contacts, PrivateService privates, KitService kits) {
        this.contacts = contacts;
        this.privates = privates;
        this.kits = kits;
    }

    @GET
    @Path("{kit}/contact")
    @PermissionsAllowed(Act.CONTACT_READ)
    public Response read(@PathParam("kit") String kit, @QueryParam("purpose") String purpose) {
        return Reply.ok(contacts.read(kits.kit(kit), purpose));
    }

    /** Keeps whom to tell and where the animal died, for one that was taken in; a part that is left out stays as it is kept. */
    @PUT
    @Path("{kit}/contact")
    @Consumes(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.CONTACT_WRITE)
    @Operation(
            summary = "Keep whom to tell, and where the animal died",
            description =
                    "Kept encrypted; reading it is audited. A point must lie in the animal's unit, as far as it is certain.")
    public void write(
            @PathParam("kit") String kit,
            @NotNull
                    @Valid
                    @RequestBody(
                            content =
                                    @Content(
                                            examples =
                                                    @ExampleObject(name = "A hunter who may be messaged", value = """
                        {"contact": {"name": "Ida Hollowell", "phone": "(555) 0100", "mayBeMessaged": true},
                         "point": {"words": "north shore of the second pond"}}
                        """)))
                    WritePrivate given) {
        privates.write(kit, given);
    }

    /** Erases it for good. */
    @DELETE
    @Path("{kit}/contact")
    @PermissionsAllowed(Act.SET_UP)
    public void erase(@PathParam("kit") String kit) {
        contacts.erase(kits.kit(kit));
    }
}
