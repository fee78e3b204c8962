package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import org.dentary.custody.handover.OpenOffers;
import org.dentary.result.imports.held.HeldLineService;
import org.dentary.submission.outstanding.OutstandingLists;

/** What waits for the lab liaison: specimens to be sent, overdue results, imports to post. */
@ApplicationScoped
class LiaisonHome {
    private final HomeQueries queries;
    private final OpenOffers offers;
    private final OutstandingLists outstanding;
    private final HeldLineService held;

    LiaisonHome(HomeQueries queries, OpenOffers offers, OutstandingLists outstanding, HeldLineService held) {
        this.queries = queries;
        this.offers = offers;
        this.outstanding = outstanding;
        this.held = held;
    }

    Home of(Visit visit) {
        Map<String, Long> n = queries.liaison();
        OutstandingLists.Waits waits = outstanding.waits();
        return new Home(
                visit.name(),
                visit.where(),
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
                                held.count(false),
                                "line left out",
                                "lines left out",
                                "of files posted, not reported since",
                                "/results/held-lines"),
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
                                n.get("exceptions"),
                                "identity exception waiting",
                                "identity exceptions waiting",
                                "for a second person",
                                "/identity-exceptions"),
                        Tile.fact(
                                n.get("expected"),
                                "specimen awaiting results",
                                "specimens awaiting results",
                                "sent, nothing reported",
                                "/submissions")),
                List.of());
    }
}
