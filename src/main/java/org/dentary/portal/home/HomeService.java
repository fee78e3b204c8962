package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.dentary.custody.handover.OpenOffers;
import org.dentary.people.PeopleService;
import org.dentary.plan.DiseaseView;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.Act;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.portal.StationStock;
import org.dentary.portal.StockService;
import org.dentary.prevalence.ReportZone;
import org.dentary.prevalence.detection.TakeNext;
import org.dentary.prevalence.detection.TakeNextBoard;
import org.dentary.submission.SubmissionService;

/** What each role finds when it opens the house. */
@ApplicationScoped
public class HomeService {
    private final HomeQueries queries;
    private final StockService stock;
    private final OpenOffers offers;
    private final SubmissionService submissions;
    private final TakeNextBoard board;
    private final ReportZone zone;
    private final HomeOfTelling telling;
    private final PlanService plan;
    private final PeopleService people;
    private final CurrentAccount current;
    private final Clock clock;

    HomeService(
            HomeQueries queries,
            StockService stock,
            OpenOffers offers,
            SubmissionService submissions,
            TakeNextBoard board,
            ReportZone zone,
            HomeOfTelling telling,
            PlanService plan,
            PeopleService people,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.stock = stock;
        this.offers = offers;
        this.submissions = submissions;
        this.board = board;
        this.zone = zone;
        this.telling = telling;
        this.plan = plan;
        this.people = people;
        this.current = current;
        this.clock = clock;
    }

    /** The home page of the account at hand. */
    public Home home() {
        Account account = current.get();
        Optional<SeasonView> season = season();
        return switch (account.role()) {
            case SAMPLER -> taking(sampler(account, season), account, season);
            case LIAISON -> liaison(account, season);
            case EPIDEMIOLOGIST -> epidemiologist(account, season);
            case COORDINATOR -> taking(coordinator(account, season), account, season);
            case NOTIFIER -> telling.notifier(reader(account, season));
            case AUDITOR -> reader(account, season);
        };
    }

    private Home sampler(Account account, Optional<SeasonView> season) {
        boolean everywhere = account.stations().contains("*");
        Map<String, Long> n = queries.sampler(account.actor(), everywhere, account.stations(), code(season));
        return new Home(
                name(account),
                where(season) + ", " + stationWords(account),
                List.of(
                        new Home.Deed("Take in a deer", "/intake"),
                        new Home.Deed("Read a jaw", "/jaws"),
                        new Home.Deed("Hand over", "/custody")),
                List.of(
                        Tile.todo(n.get("jaws"), "jaw to read", "jaws to read", "kept or photographed", "/jaws"),
                        Tile.todo(
                                offers.countToMe(),
                                "hand-over to accept",
                                "hand-overs to accept",
                                "offered to you or to whom you act for",
                                "/custody"),
                        Tile.todo(
                                n.get("discrepancies"),
                                "discrepancy to clear up",
                                "discrepancies to clear up",
                                "yours",
                                "/custody/discrepancies")),
                List.of(
                        Tile.fact(n.get("held"), "specimen you hold", "specimens you hold", "", "/custody"),
                        Tile.fact(
                                n.get("offering"),
                                "hand-over not accepted yet",
                                "hand-overs not accepted yet",
                                "offered by you",
                                "/custody"),
                        Tile.fact(
                                n.get("taken"),
                                "animal this season",
                                "animals this season",
                                "your stations",
                                "/animals")),
                lowStock(account));
    }

    /** With what to take next; a plan that does not allow the figures leaves the list out, its report says why. */
    private Home taking(Home home, Account account, Optional<SeasonView> season) {
        if (season.isEmpty()) {
            return home;
        }
        TakeNextBoard.Board list = board.of(season.get().code());
        List<TakeNext> items = list.items().stream()
                .filter(next -> next.isFor(account.stations()))
                .toList();
        return home.taking(
                season.get().code(),
                items,
                "As of " + zone.told(list.asOf()) + "; counted anew when older than " + board.keptMinutes()
                        + " minutes. The CSV is of the moment.");
    }

    private Home liaison(Account account, Optional<SeasonView> season) {
        Map<String, Long> n = queries.liaison();
        SubmissionService.Waits waits = submissions.waits();
        return new Home(
                name(account),
                where(season),
                List.of(
                        new Home.Deed("Pack a submission", "/submissions"),
                        new Home.Deed("Bring in results", "/results"),
                        new Home.Deed("Hand over", "/custody")),
                List.of(
                        Tile.todo(
                                waits.unsent(),
                                "specimen to be sent",
                                "specimens to be sent",
                                "on no submission",
                                "/submissions"),
                        Tile.todo(
                                waits.overdue(),
                                "specimen overdue",
                                "specimens overdue",
                                "past the laboratory's own time",
                                "/submissions"),
                        Tile.todo(n.get("imports"), "import to post", "imports to post", "previewed only", "/results"),
                        Tile.todo(
                                offers.countToMe(),
                                "hand-over to accept",
                                "hand-overs to accept",
                                "offered to you or to whom you act for",
                                "/custody"),
                        Tile.todo(
                                n.get("discrepancies"),
                                "open discrepancy",
                                "open discrepancies",
                                "each has an owner",
                                "/custody/discrepancies")),
                List.of(
                        Tile.fact(
                                n.get("packing"),
                                "submission being packed",
                                "submissions being packed",
                                "",
                                "/submissions"),
                        Tile.fact(
                                n.get("expected"),
                                "specimen awaiting results",
                                "specimens awaiting results",
                                "sent, nothing reported",
                                "/submissions")),
                List.of());
    }

    private Home epidemiologist(Account account, Optional<SeasonView> season) {
        String disease =
                plan.diseases().stream().findFirst().map(DiseaseView::code).orElse("");
        Map<String, Long> n = queries.epidemiologist(code(season), disease);
        return new Home(
                name(account),
                where(season)
                        + plan.diseases().stream()
                                .findFirst()
                                .map(d -> ", " + d.name())
                                .orElse(""),
                List.of(
                        new Home.Deed("Prevalence", "/prevalence"),
                        new Home.Deed("Line list", "/line-list"),
                        new Home.Deed("Data cuts", "/data-cuts")),
                List.of(Tile.todo(
                        n.get("disputed"),
                        "age in dispute",
                        "ages in dispute",
                        "readers differ; none designated",
                        "/jaws")),
                List.of(
                        Tile.fact(n.get("taken"), "animal taken", "animals taken", "all sources", "/line-list"),
                        Tile.fact(
                                n.get("counted"),
                                "with a result",
                                "with a result",
                                "detected or not detected",
                                "/prevalence"),
                        Tile.fact(n.get("detected"), "detected", "detected", "released", "/prevalence"),
                        Tile.fact(
                                n.get("pending"),
                                "pending",
                                "pending",
                                "ordered, not reported or not released",
                                "/line-list"),
                        Tile.fact(n.get("cuts"), "data cut", "data cuts", "this season", "/data-cuts")),
                List.of());
    }

    private Home coordinator(Account account, Optional<SeasonView> season) {
        Map<String, Long> n = queries.coordinator(clock.instant());
        List<String> notices = new ArrayList<>(setUp(n));
        notices.addAll(lowStock(account));
        return new Home(
                name(account),
                where(season),
                List.of(
                        new Home.Deed("Set up the season", "/season"),
                        new Home.Deed("Issue kits", "/kits/issue"),
                        new Home.Deed("Take in a deer", "/intake")),
                List.of(
                        Tile.todo(
                                n.get("releases"),
                                "detection to release",
                                "detections to release",
                                "seen by few until then",
                                "/results"),
                        Tile.todo(
                                n.get("attributions"),
                                "swapped label to confirm",
                                "swapped labels to confirm",
                                "not counted until then",
                                "/animals"),
                        Tile.todo(
                                n.get("discrepancies"),
                                "open discrepancy",
                                "open discrepancies",
                                "each has an owner",
                                "/custody/discrepancies"),
                        Tile.todo(
                                n.get("cautions"),
                                "caution to review",
                                "cautions to review",
                                "unreviewed or past its date",
                                "/season")),
                List.of(
                        Tile.fact(n.get("suspects"), "suspect", "suspects", "awaiting confirmation", "/results"),
                        Tile.fact(
                                n.get("unaccepted"),
                                "hand-over not accepted",
                                "hand-overs not accepted",
                                "",
                                "/custody"),
                        Tile.fact(n.get("stations"), "station", "stations", "set up", "/season"),
                        Tile.fact(n.get("laboratories"), "laboratory", "laboratories", "set up", "/season"),
                        Tile.fact(n.get("persons"), "person", "persons", "on the roster", "/season")),
                notices);
    }

    private Home reader(Account account, Optional<SeasonView> season) {
        Map<String, Long> n = queries.reader(code(season));
        List<Tile> facts = new ArrayList<>(List.of(
                Tile.fact(n.get("taken"), "animal this season", "animals this season", "", "/animals"),
                Tile.fact(n.get("released"), "detection released", "detections released", "this season", "/animals")));
        if (account.may(Act.LEDGER_READ)) {
            facts.add(Tile.fact(
                    n.get("discrepancies"), "open discrepancy", "open discrepancies", "", "/custody/discrepancies"));
        }
        return new Home(
                name(account),
                where(season),
                List.of(new Home.Deed("Look up an animal", "/animals")),
                List.of(),
                facts,
                List.of());
    }

    private static List<String> setUp(Map<String, Long> n) {
        List<String> missing = new ArrayList<>();
        if (n.get("stations") == 0) {
            missing.add("No station is set up yet. Bring the season's plan in under Season.");
        }
        if (n.get("laboratories") == 0) {
            missing.add("No laboratory is set up yet. Bring the season's plan in under Season.");
        }
        if (n.get("open") == 0) {
            missing.add("No season is open, so no animal can be taken in. Open one under Season.");
        }
        return missing;
    }

    /** One notice a season, however many stations run low. */
    private List<String> lowStock(Account account) {
        Map<String, String> bySeason = stock.stations().stream()
                .filter(StationStock::low)
                .filter(s -> account.may(Act.KIT_ISSUE) || account.serves(s.station()))
                .collect(Collectors.groupingBy(
                        StationStock::season,
                        TreeMap::new,
                        Collectors.mapping(s -> s.stationName() + " has " + s.left(), Collectors.joining(", "))));
        return bySeason.entrySet().stream()
                .map(season -> "Few kits left for season " + season.getKey() + ": " + season.getValue() + ".")
                .toList();
    }

    private String stationWords(Account account) {
        if (account.stations().contains("*")) {
            return "all stations";
        }
        String names = plan.stations().stream()
                .filter(s -> account.stations().contains(s.code()))
                .map(StationView::name)
                .collect(Collectors.joining(", "));
        return names.isEmpty() ? "no station" : names;
    }

    private Optional<SeasonView> season() {
        return plan.seasonOn(LocalDate.now(clock.withZone(ZoneOffset.UTC)))
                .or(() -> plan.seasons().stream()
                        .filter(s -> s.state().equals("OPEN"))
                        .reduce((earlier, later) -> later));
    }

    private String name(Account account) {
        return account.person() == null
                ? account.username()
                : people.person(account.person()).name();
    }

    private static String code(Optional<SeasonView> season) {
        return season.map(SeasonView::code).orElse("");
    }

    private static String where(Optional<SeasonView> season) {
        return season.map(SeasonView::name).orElse("No season is set up");
    }
}
