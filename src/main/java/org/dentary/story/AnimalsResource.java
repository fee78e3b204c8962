package org.dentary.story;

import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.request.ETags;
import org.dentary.platform.table.Page;

/** Animals: the list, and one whole story. */
@Path("/api/v1/animals")
public class AnimalsResource {
    private final AnimalListService list;
    private final StoryService stories;
    private final CurrentAccount current;

    AnimalsResource(AnimalListService list, StoryService stories, CurrentAccount current) {
        this.list = list;
        this.stories = stories;
        this.current = current;
    }

    /** A page of animals, newest first; {@code Link} with {@code rel="next"} leads on. */
    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.ANIMAL_READ)
    public Response list(@BeanParam AnimalListParameters asked, @Context UriInfo address) {
        int limit = asked.limit();
        return Page.of(list.page(asked.filter(current.get()), asked.after(), limit + 1), limit)
                .answer(address, "after", AnimalListItem::kit);
    }

    /** All animals of the filter as CSV, streamed, for those who ask for {@code text/csv}. */
    @GET
    @Produces("text/csv;qs=0.5")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public Response csv(@BeanParam AnimalListParameters asked) {
        return AnimalsFileResource.file(list, asked.filter(current.get()));
    }

    /** The whole story of one animal, as far as the account may know it. */
    @GET
    @Path("{kit}")
    @Produces(MediaType.APPLICATION_JSON)
    @PermissionsAllowed(Act.ANIMAL_READ)
    public Response story(@PathParam("kit") String kit) {
        AnimalStory story = stories.story(kit, current.get());
        return Response.ok(story)
                .header(HttpHeaders.ETAG, ETags.of(story.version()))
                .build();
    }
}
