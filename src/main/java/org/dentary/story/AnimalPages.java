package org.dentary.story;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateData;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.InvalidInput;

/** The list of animals and the story of one. */
@Path("/animals")
@Produces(MediaType.TEXT_HTML)
public class AnimalPages {
    private static final List<String> OUTCOMES =
            List.of("DETECTED", "PENDING", "NOT_DETECTED", "INCONCLUSIVE", "UNSUITABLE", "NOT_TESTED");

    private final AnimalListService list;
    private final StoryService stories;
    private final PlanService plan;
    private final PeopleService people;
    private final CurrentAccount current;

    AnimalPages(
            AnimalListService list,
            StoryService stories,
            PlanService plan,
            PeopleService people,
            CurrentAccount current) {
        this.list = list;
        this.stories = stories;
        this.plan = plan;
        this.people = people;
        this.current = current;
    }

    @CheckedTemplate(basePath = "story")
    static class Templates {
        static native TemplateInstance animals(
                List<AnimalListItem> animals,
                Filters filters,
                AnimalListParameters asked,
                String csv,
                String first,
                String next,
                Faults faults);

        static native TemplateInstance animal(AnimalStory story, Names names, String zone, String species);
    }

    /** What the list can be narrowed by. */
    @TemplateData
    public record Filters(
            List<String> seasons,
            List<String> stations,
            List<String> units,
            List<String> sexes,
            List<String> ages,
            List<String> outcomes) {}

    @GET
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance list(@BeanParam AnimalListParameters asked, @Context UriInfo address) {
        Filters filters = new Filters(
                plan.seasons().stream().map(season -> season.code()).toList(),
                plan.stations().stream().map(station -> station.code()).toList(),
                java.util.stream.Stream.concat(
                                plan.units().stream().map(unit -> unit.code()), java.util.stream.Stream.of("UNKNOWN"))
                        .toList(),
                List.of("MALE", "FEMALE", "UNKNOWN"),
                List.of("FAWN", "YEARLING", "ADULT", "UNKNOWN"),
                OUTCOMES);
        try {
            int limit = asked.limit();
            List<AnimalListItem> page = list.page(asked.filter(current.get()), asked.after(), limit);
            String next = page.size() < limit
                    ? null
                    : here(address)
                            .replaceQueryParam("after", page.get(limit - 1).kit())
                            .build()
                            .toString();
            String first = asked.after() == null
                    ? null
                    : here(address).replaceQueryParam("after").build().toString();
            String csv = here(address)
                    .replacePath("/api/v1/animals.csv")
                    .replaceQueryParam("after")
                    .build()
                    .toString();
            return Templates.animals(page, filters, asked, csv, first, next, Faults.NONE);
        } catch (InvalidInput refusal) {
            return Templates.animals(List.of(), filters, asked, "/api/v1/animals.csv", null, null, Faults.of(refusal));
        }
    }

    @GET
    @Path("{kit}")
    @PermissionsAllowed(Act.ANIMAL_READ)
    public TemplateInstance animal(@PathParam("kit") String kit) {
        AnimalStory story = stories.story(kit, current.get());
        return Templates.animal(
                story,
                Names.in(story, people),
                plan.station(story.facts().station()).timeZone(),
                plan.species(story.facts().species()).name());
    }

    private static UriBuilder here(UriInfo address) {
        String query = address.getRequestUri().getRawQuery();
        return UriBuilder.fromUri("/animals" + (query == null ? "" : "?" + query));
    }
}
