package org.dentary.result.imports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.page.Faults;
import org.dentary.platform.request.Reply;
import org.dentary.result.WaitingView;
import org.dentary.result.imports.held.HeldLineService;
import org.dentary.result.release.ReleaseService;
import org.dentary.result.review.ReviewService;

/** The page of results, shown by itself and again where a file is refused. */
@ApplicationScoped
class ResultsPage {
    /** So many of each list are shown at first. */
    private static final int FIRST = 50;

    private final ImportService imports;
    private final ReleaseService releases;
    private final ReviewService reviews;
    private final HeldLineService held;
    private final PlanService plan;
    private final CurrentAccount account;

    ResultsPage(
            ImportService imports,
            ReleaseService releases,
            ReviewService reviews,
            HeldLineService held,
            PlanService plan,
            CurrentAccount account) {
        this.imports = imports;
        this.releases = releases;
        this.reviews = reviews;
        this.held = held;
        this.plan = plan;
        this.account = account;
    }

    @CheckedTemplate(basePath = "result/imports")
    static class Templates {
        static native TemplateInstance results(
                List<ImportView> imports,
                List<LaboratoryView> laboratories,
                String laboratory,
                List<WaitingView> open,
                List<WaitingView> reviews,
                long toLookAt,
                long held,
                int shown,
                Faults faults);
    }

    /** @param laboratory chosen before, or null */
    Response show(int status, String laboratory, Faults faults) {
        return show(status, laboratory, FIRST, faults);
    }

    /** The page with every list whole. */
    Response whole() {
        return show(200, null, Integer.MAX_VALUE - 1, Faults.NONE);
    }

    private Response show(int status, String laboratory, int shown, Faults faults) {
        boolean mayKnow = account.get().may(Act.DERIVED_OUTCOME);
        return Reply.page(
                status,
                Templates.results(
                        imports.newest(shown + 1),
                        plan.laboratories(),
                        laboratory == null ? "" : laboratory,
                        mayKnow ? releases.open() : List.of(),
                        mayKnow ? reviews.waiting(null, FIRST).items() : List.of(),
                        mayKnow ? reviews.count() : 0,
                        held.count(false),
                        shown,
                        faults));
    }
}
