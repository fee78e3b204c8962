package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.custody.handover.OpenOffers;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.platform.account.Account;
import org.dentary.result.feedback.FeedbackService;

/** What waits for a sampler: jaws, hand-overs and kits of the stations served. */
@ApplicationScoped
class SamplerHome {
    private final HomeQueries queries;
    private final OpenOffers offers;
    private final LowStock lowStock;
    private final FeedbackService feedback;
    private final PlanService plan;

    SamplerHome(HomeQueries queries, OpenOffers offers, LowStock lowStock, FeedbackService feedback, PlanService plan) {
        this.queries = queries;
        this.offers = offers;
        this.lowStock = lowStock;
        this.feedback = feedback;
        this.plan = plan;
    }

    Home of(Visit visit) {
        Account account = visit.account();
        boolean everywhere = account.stations().contains("*");
        FeedbackService.Own own = feedback.own(visit.season());
        Map<String, Long> n = queries.sampler(account.actor(), everywhere, account.stations(), visit.season());
        return new Home(
                visit.name(),
                visit.where() + ", " + stationWords(visit.account()),
                List.of(
                        new Home.Deed("Take in a deer", "/intake"),
                        new Home.Deed("Read a jaw", "/jaws"),
                        new Home.Deed("Hand over", "/custody"),
                        new Home.Deed("Close the day", "/day")),
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
                                own.unsuitable(),
                                "specimen of yours unsuitable",
                                "specimens of yours unsuitable",
                                "of " + own.reported() + " that laboratories reported this season",
                                "/unsuitable-tissue?season=" + visit.season()),
                        Tile.fact(
                                n.get("taken"),
                                "animal this season",
                                "animals this season",
                                "your stations",
                                "/animals")),
                lowStock.notices(visit.account()));
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
}
