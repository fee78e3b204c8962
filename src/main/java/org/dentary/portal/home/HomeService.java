package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.prevalence.detection.TakeNext;
import org.dentary.prevalence.detection.TakeNextBoard;

/** What each role finds when it opens the house. */
@ApplicationScoped
public class HomeService {
    private final SamplerHome sampler;
    private final LiaisonHome liaison;
    private final EpidemiologistHome epidemiologist;
    private final CoordinatorHome coordinator;
    private final ReaderHome reader;
    private final NotifierHome notifier;
    private final TakeNextBoard board;
    private final PlanClock clock;
    private final PlanService plan;
    private final PeopleService people;
    private final CurrentAccount current;

    HomeService(
            SamplerHome sampler,
            LiaisonHome liaison,
            EpidemiologistHome epidemiologist,
            CoordinatorHome coordinator,
            ReaderHome reader,
            NotifierHome notifier,
            TakeNextBoard board,
            PlanClock clock,
            PlanService plan,
            PeopleService people,
            CurrentAccount current) {
        this.sampler = sampler;
        this.liaison = liaison;
        this.epidemiologist = epidemiologist;
        this.coordinator = coordinator;
        this.reader = reader;
        this.notifier = notifier;
        this.board = board;
        this.clock = clock;
        this.plan = plan;
        this.people = people;
        this.current = current;
    }

    /** The home page of the account at hand. */
    public Home home() {
        Visit visit = visit(current.get());
        return switch (visit.account().role()) {
            case SAMPLER -> taking(sampler.of(visit), visit);
            case LIAISON -> liaison.of(visit);
            case EPIDEMIOLOGIST -> epidemiologist.of(visit);
            case COORDINATOR -> taking(coordinator.of(visit), visit);
            case NOTIFIER -> notifier.of(reader.of(visit));
            case AUDITOR -> reader.of(visit);
        };
    }

    /** With what to take next; a plan that does not allow the figures leaves the list out, its report says why. */
    private Home taking(Home home, Visit visit) {
        if (visit.season().isEmpty()) {
            return home;
        }
        TakeNextBoard.Board list = board.of(visit.season());
        List<TakeNext> items = list.items().stream()
                .filter(next -> next.isFor(visit.account().stations()))
                .toList();
        return home.taking(
                visit.season(),
                items,
                "As of " + clock.told(list.asOf()) + "; counted anew when older than " + board.keptMinutes()
                        + " minutes. The CSV is of the moment.");
    }

    private Visit visit(Account account) {
        Optional<SeasonView> season = season();
        return new Visit(
                account,
                account.person() == null
                        ? account.username()
                        : people.person(account.person()).name(),
                season.map(SeasonView::code).orElse(""),
                season.map(SeasonView::name).orElse("No season is set up"));
    }

    private Optional<SeasonView> season() {
        return plan.seasonOn(clock.today())
                .or(() -> plan.seasons().stream()
                        .filter(s -> s.state().equals("OPEN"))
                        .reduce((earlier, later) -> later));
    }
}
