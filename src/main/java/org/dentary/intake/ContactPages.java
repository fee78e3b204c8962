package org.dentary.intake;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Map;
import org.dentary.animal.AnimalService;
import org.dentary.kit.KitService;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;

/** Whom to tell of an animal that is in already, and where it died. What is kept is not shown here: reading it is an act of its own. */
@Path("/animals")
@Produces(MediaType.TEXT_HTML)
public class ContactPages {
    private final PrivateService privates;
    private final KitService kits;
    private final AnimalService animals;
    private final BodyReader bodies;
    private final ObjectMapper json;

    ContactPages(
            PrivateService privates, KitService kits, AnimalService animals, BodyReader bodies, ObjectMapper json) {
        this.privates = privates;
        this.kits = kits;
        this.animals = animals;
        this.bodies = bodies;
        this.json = json;
    }

    @CheckedTemplate(basePath = "intake")
    static class Templates {
        static native TemplateInstance contact(String kit, boolean kept, IntakeForm form, Faults faults);
    }

    @GET
    @Path("{kit}/contact")
    @PermissionsAllowed(Act.CONTACT_WRITE)
    public Response contact(@PathParam("kit") String typed) {
        String kit = kits.kit(typed);
        animals.animal(kit);
        return show(200, kit, new IntakeForm(Map.of()), Faults.NONE);
    }

    /** Keeps what was typed and shows the animal. */
    @POST
    @Path("{kit}/contact")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.CONTACT_WRITE)
    public Response keep(@PathParam("kit") String typed, MultivaluedMap<String, String> fields) {
        String kit = kits.kit(typed);
        IntakeForm form = IntakeForm.of(fields);
        try {
            ObjectNode body = json.createObjectNode();
            PrivateForm.add(form, body, json);
            privates.write(kit, bodies.read(body, WritePrivate.class));
        } catch (DomainException refusal) {
            return show(422, kit, form, FormFaults.of(refusal));
        }
        return Response.seeOther(URI.create("/animals/" + kit)).build();
    }

    private Response show(int status, String kit, IntakeForm form, Faults faults) {
        return Reply.page(status, Templates.contact(kit, privates.isKept(kit), form, faults));
    }
}
