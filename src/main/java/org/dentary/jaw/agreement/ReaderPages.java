package org.dentary.jaw.agreement;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.PermissionsAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.request.Reply;

/** Readers side by side, and one reader's agreement; a sampler finds only their own. */
@Path("/readers")
@Produces(MediaType.TEXT_HTML)
public class ReaderPages {
    private final ReaderAgreementService agreements;
    private final PlanService plan;
    private final CurrentAccount current;

    ReaderPages(ReaderAgreementService agreements, PlanService plan, CurrentAccount current) {
        this.agreements = agreements;
        this.plan = plan;
        this.current = current;
    }

    /** A reader as a row of the list. */
    public record Reader(
            String person,
            String name,
            int readings,
            ReaderView.Line drawn,
            ReaderView.Line panel,
            ReaderView.Line known) {}

    @CheckedTemplate(basePath = "jaw")
    static class Templates {
        static native TemplateInstance readers(List<Reader> readers);

        static native TemplateInstance reader(ReaderView reader);
    }

    @GET
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response readers() {
        return page(Templates.readers(agreements.all(current.get()).stream()
                .map(reader -> new Reader(
                        reader.person(),
                        reader.name(),
                        reader.readings(),
                        ReaderView.Line.of("", ReaderAgreement.Group.DRAWN, reader.drawn()),
                        ReaderView.Line.of("", ReaderAgreement.Group.PANEL, reader.panel()),
                        ReaderView.Line.of("", ReaderAgreement.Group.KNOWN_AGE, reader.knownAge())))
                .toList()));
    }

    @GET
    @Path("{person}")
    @PermissionsAllowed(Act.READER_AGREEMENT)
    public Response reader(@PathParam("person") String person, @QueryParam("season") String season) {
        String one = season == null || season.isBlank() ? null : season.trim();
        return page(Templates.reader(ReaderView.of(
                agreements.of(current.get(), person, one),
                plan.seasons().stream().map(SeasonView::code).toList())));
    }

    private static Response page(TemplateInstance page) {
        return Reply.ok(page);
    }
}
