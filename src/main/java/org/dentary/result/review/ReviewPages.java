package org.dentary.result.review;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.Validator;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.dentary.platform.account.Act;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.request.Reply;
import org.dentary.platform.table.CsvTable;
import org.dentary.platform.table.Page;
import org.dentary.platform.table.StreamedCsv;
import org.dentary.result.WaitingView;
import org.jboss.resteasy.reactive.RestForm;

/** Odd outcomes as a page: what nobody looked at yet, each with a line to say what was found, and who looked at what. */
@Path("/reviews")
@Produces(MediaType.TEXT_HTML)
public class ReviewPages {
    private static final int SHOWN = 50;

    private final ReviewService reviews;
    private final Validator validator;
    private final StreamedCsv files;

    ReviewPages(ReviewService reviews, Validator validator, StreamedCsv files) {
        this.reviews = reviews;
        this.validator = validator;
        this.files = files;
    }

    /** What was typed for one of them; every field may be null. */
    record Typed(String kit, String disease, String note) {
        static final Typed NOTHING = new Typed(null, null, null);

        /** Whether it was typed for that animal and disease. */
        public boolean isOf(String other, String ofDisease) {
            return other.equals(kit) && ofDisease.equals(disease);
        }
    }

    @CheckedTemplate(basePath = "result/review")
    static class Templates {
        static native TemplateInstance reviews(
                Page<WaitingView> waiting,
                String next,
                long count,
                Page<LookView> looks,
                String earlier,
                Typed typed,
                Faults faults);
    }

    @GET
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response all(@QueryParam("after") String after, @QueryParam("before") UUID before) {
        return show(200, after, before, Typed.NOTHING, Faults.NONE);
    }

    @POST
    @PermissionsAllowed(Act.RESULT_WRITE)
    public Response look(
            @RestForm String kit, @RestForm String disease, @RestForm String since, @RestForm String note) {
        try {
            LookedAt look = new LookedAt(kit, disease, moment(since), note == null ? null : note.strip());
            var violations = validator.validate(look);
            if (!violations.isEmpty()) {
                throw InvalidInput.of(Faults.of(violations).all());
            }
            reviews.put(UUID.randomUUID(), look);
            return Response.seeOther(URI.create("/reviews")).build();
        } catch (DomainException refusal) {
            return show(refusal.status(), null, null, new Typed(kit, disease, note), Faults.of(refusal));
        }
    }

    @GET
    @Path("waiting.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response waiting() {
        return files.<WaitingView>file("reviews.csv", WaitingView.COLUMNS, reviews.waiting(), WaitingView::row);
    }

    @GET
    @Path("looks.csv")
    @Produces(CsvTable.MEDIA_TYPE)
    @PermissionsAllowed(Act.DERIVED_OUTCOME)
    public Response looks() {
        return files.<LookView>file(
                "looks.csv",
                List.of("kit", "disease", "review", "note", "looked_by", "looked_at", "since", "reads_so_still"),
                reviews.looks(),
                k -> new Object[] {
                    k.kit(), k.disease(), k.review(), k.note(), k.lookedBy(), k.lookedAt(), k.since(), k.current()
                });
    }

    private Response show(int status, String after, UUID before, Typed typed, Faults faults) {
        Page<WaitingView> waiting = reviews.waiting(after, SHOWN);
        Page<LookView> looks = reviews.looks(before, SHOWN);
        return Reply.page(
                status,
                Templates.reviews(
                        waiting,
                        waiting.next(ReviewService::mark),
                        reviews.count(),
                        looks,
                        looks.next(LookView::id),
                        typed,
                        faults));
    }

    private static OffsetDateTime moment(String since) {
        try {
            return OffsetDateTime.parse(since == null ? "" : since);
        } catch (DateTimeException e) {
            throw InvalidInput.field("since", "INVALID_VALUE", "The list is of another time; read it again");
        }
    }
}
