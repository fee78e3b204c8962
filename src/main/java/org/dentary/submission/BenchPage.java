package org.dentary.submission;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.dentary.custody.desk.DeskReading;
import org.dentary.custody.desk.FormChecks;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.platform.page.Faults;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.table.Page;
import org.dentary.specimen.Preservation;
import org.dentary.specimen.SpecimenService;
import org.dentary.specimen.SpecimenView;
import org.dentary.submission.outstanding.OutstandingLists;
import org.dentary.submission.outstanding.OutstandingQueries;
import org.dentary.submission.packing.Verdict;

/** The page of one submission, shown again with what was typed where something is refused. */
@ApplicationScoped
class BenchPage {
    /** Of what waits to be sent, so many stand beside the bench: those that have waited longest. */
    private static final int WAITING = 5;

    private static final OutstandingLists.Part<OutstandingQueries.Waiting> NOTHING =
            new OutstandingLists.Part<>(new Page<>(List.of(), false), 0);

    private final SubmissionService submissions;
    private final DispatchService leaving;
    private final OutstandingLists outstanding;
    private final SpecimenService specimens;
    private final PlanService plan;
    private final DeskReading desk;
    private final PlanClock planClock;
    private final Clock clock;

    BenchPage(
            SubmissionService submissions,
            DispatchService leaving,
            OutstandingLists outstanding,
            SpecimenService specimens,
            PlanService plan,
            DeskReading desk,
            PlanClock planClock,
            Clock clock) {
        this.submissions = submissions;
        this.leaving = leaving;
        this.outstanding = outstanding;
        this.specimens = specimens;
        this.plan = plan;
        this.desk = desk;
        this.planClock = planClock;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "submission")
    static class Templates {
        static native TemplateInstance submission(
                SubmissionView submission,
                String laboratory,
                Receiving receiving,
                List<Verdict> objections,
                String packed,
                String cut,
                List<Preservation> preservations,
                List<String> zones,
                OutstandingLists.Part<OutstandingQueries.Waiting> waiting,
                Bench typed,
                Faults faults);
    }

    /**
     * The page.
     *
     * @param packed code that was packed just now, or null
     * @param cut code that an address says was cut just now, or null; what is no piece is not said
     */
    TemplateInstance show(UUID id, String packed, String cut, Bench typed, Faults faults) {
        SubmissionView view = submissions.view(id);
        LocalDate today = LocalDate.ofInstant(clock.instant(), planClock.zone());
        return Templates.submission(
                view,
                plan.laboratory(view.laboratory()).name(),
                Receiving.of(plan.laboratoryProfile(view.laboratory(), today), today),
                leaving.standing(id),
                packed,
                cut == null
                        ? null
                        : specimens.byCode(List.of(cut)).stream()
                                .filter(one -> one.parent() != null)
                                .map(SpecimenView::code)
                                .findFirst()
                                .orElse(null),
                List.of(Preservation.values()),
                desk.zones(),
                view.state().equals("PACKING") ? outstanding.waiting(null, WAITING) : NOTHING,
                typed,
                faults);
    }

    /**
     * Acts and goes on, or shows the page again with what was typed.
     *
     * @param typed asked after the act, which may have kept photographs
     * @param act answers what is appended to the page's address
     */
    Response answer(UUID id, Supplier<Bench> typed, Supplier<String> act) {
        try {
            return Response.seeOther(URI.create("/submissions/" + id + act.get()))
                    .build();
        } catch (DomainException fault) {
            return Response.status(fault.status() == 404 || fault.status() == 409 ? fault.status() : 422)
                    .entity(show(
                            id,
                            null,
                            null,
                            typed.get(),
                            FormChecks.shown(fault, desk.zones().get(0))))
                    .build();
        }
    }

    Response answer(UUID id, Bench typed, Supplier<String> act) {
        return answer(id, () -> typed, act);
    }
}
