package org.dentary.jaw.photo;

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
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.util.List;
import java.util.UUID;
import org.dentary.animal.AnimalService;
import org.dentary.animal.AnimalView;
import org.dentary.kit.KitService;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.photo.PhotoReader;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.request.Reply;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;

/** An animal's photographs of the jaw as a page: look at them, add one from a phone, erase one. */
@Path("/animals")
@Produces(MediaType.TEXT_HTML)
public class JawPhotoPages {
    private final JawPhotoService photos;
    private final AnimalService animals;
    private final KitService kits;
    private final PlanService plan;
    private final CurrentAccount current;

    JawPhotoPages(
            JawPhotoService photos, AnimalService animals, KitService kits, PlanService plan, CurrentAccount current) {
        this.photos = photos;
        this.animals = animals;
        this.kits = kits;
        this.plan = plan;
        this.current = current;
    }

    /**
     * A photograph as the page shows it.
     *
     * @param mayErase whether who looks at it may erase it
     */
    public record Shown(JawPhotoView photo, boolean mayErase) {}

    @CheckedTemplate(basePath = "jaw")
    static class Templates {
        static native TemplateInstance photos(
                String kit, List<Shown> photos, String zone, String newId, Faults faults, boolean toRead);
    }

    @GET
    @Path("{kit}/photos")
    @PermissionsAllowed(Act.JAW_PHOTO_READ)
    public Response photos(@PathParam("kit") String kit) {
        return page(200, kits.kit(kit), Faults.NONE);
    }

    @POST
    @Path("{kit}/photos")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @PermissionsAllowed(Act.INTAKE)
    public Response add(@PathParam("kit") String typed, @RestForm("id") String id, @RestForm("photo") FileUpload file) {
        String kit = kits.kit(typed);
        try {
            photos.add(kit, id(id), null, PhotoReader.read(bytes(file), null));
            return back(kit);
        } catch (DomainException refusal) {
            return page(422, kit, Faults.of(refusal));
        }
    }

    @POST
    @Path("{kit}/photos/{id}/erasure")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @PermissionsAllowed(Act.INTAKE)
    public Response erase(@PathParam("kit") String typed, @PathParam("id") UUID id, @RestForm("reason") String reason) {
        String kit = kits.kit(typed);
        try {
            photos.erase(kit, id, reason);
            return back(kit);
        } catch (DomainException refusal) {
            return page(refusal.status(), kit, Faults.of(refusal));
        }
    }

    private Response page(int status, String kit, Faults faults) {
        AnimalView animal = animals.animal(kit);
        Account account = current.get();
        List<Shown> shown = photos.ofKit(kit).stream()
                .map(photo -> new Shown(
                        photo,
                        account.may(Act.INTAKE)
                                && (account.may(Act.PUT_RIGHT)
                                        || photo.addedBy().equals(account.actor()))))
                .toList();
        String zone = plan.station(animal.facts().station()).timeZone();
        boolean toRead = account.may(Act.INTAKE);
        return Reply.answer(
                status, Templates.photos(kit, shown, zone, UUID.randomUUID().toString(), faults, toRead));
    }

    private static Response back(String kit) {
        return Response.seeOther(URI.create("/animals/" + kit + "/photos")).build();
    }

    /** The form's own number, so that a page sent twice keeps one photo. */
    private static UUID id(String given) {
        try {
            return UUID.fromString(given);
        } catch (IllegalArgumentException | NullPointerException e) {
            return UUID.randomUUID();
        }
    }

    private static byte[] bytes(FileUpload file) {
        if (file == null) {
            return new byte[0];
        }
        try (InputStream in = Files.newInputStream(file.uploadedFile())) {
            return in.readNBytes(PhotoReader.MOST_BYTES + 1);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
