package org.dentary.jaw.photo;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.UUID;
import org.dentary.kit.KitService;
import org.dentary.platform.account.Act;
import org.dentary.platform.photo.PhotoReader;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.ItemList;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** Photographs of an animal's jaw. */
@Path("/api/v1/animals")
public class JawPhotosResource {
    private static final List<String> SIZES = List.of("large", "small");

    private final JawPhotoService photos;
    private final KitService kits;

    JawPhotosResource(JawPhotoService photos, KitService kits) {
        this.photos = photos;
        this.kits = kits;
    }

    /** The photographs, oldest first, without their pixels. */
    @GET
    @Path("{kit}/jaw-photos")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.JAW_PHOTO_READ)
    public Response list(@PathParam("kit") String kit) {
        return Reply.ok(new ItemList<>(photos.ofKit(kits.kit(kit))));
    }

    /**
     * Keeps a photograph: JPEG or PNG, at most 15 MB and 52 million pixels.
     *
     * @param reading a reading of the animal that it goes with
     */
    @PUT
    @Path("{kit}/jaw-photos/{id}")
    @Consumes({PhotoReader.JPEG, PhotoReader.PNG})
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.INTAKE)
    @Operation(
            summary = "Keep a photo of the jaw",
            description = "The picture is made anew as JPEG, upright and at most 2,560 pixels long; nothing else of the"
                    + " file is kept, neither place nor time nor device.")
    public Response add(
            @PathParam("kit") String kit,
            @PathParam("id") UUID id,
            @QueryParam("reading") UUID reading,
            @HeaderParam(HttpHeaders.CONTENT_TYPE) MediaType type,
            InputStream file)
            throws IOException {
        byte[] bytes = file == null ? new byte[0] : file.readNBytes(PhotoReader.MOST_BYTES + 1);
        PhotoReader.Photo photo = PhotoReader.read(bytes, type.getType() + "/" + type.getSubtype());
        JawPhotoService.Added added = photos.add(kits.kit(kit), id, reading, photo);
        return Reply.versioned(added.isNew() ? 201 : 200, added.photo(), 0);
    }

    /**
     * The picture, as JPEG.
     *
     * @param size {@code large} (the longest side at most 2,560 pixels) or {@code small} (400); large when left out
     */
    @GET
    @Path("{kit}/jaw-photos/{id}")
    @Produces(PhotoReader.JPEG)
    @PermissionsAllowed(Act.JAW_PHOTO_READ)
    public Response picture(@PathParam("kit") String kit, @PathParam("id") UUID id, @QueryParam("size") String size) {
        if (size != null && !SIZES.contains(size)) {
            throw InvalidInput.field("size", "INVALID_VALUE", "'" + size + "' is not one of large, small");
        }
        return Response.ok(photos.picture(kits.kit(kit), id, "small".equals(size)))
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"jaw.jpg\"")
                .build();
    }

    /** Erases a photograph; who added it or a coordinator may. */
    @DELETE
    @Path("{kit}/jaw-photos/{id}")
    @PermissionsAllowed(Act.INTAKE)
    public Response erase(@PathParam("kit") String kit, @PathParam("id") UUID id, @QueryParam("reason") String reason) {
        photos.erase(kits.kit(kit), id, reason);
        return Response.noContent().build();
    }
}
