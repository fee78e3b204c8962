package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What waits for the coordinator: releases, swapped labels, discrepancies, cautions, and what is not set up yet. */
@ApplicationScoped
class CoordinatorHome {
    private final HomeQueries queries;
    private final LowStock lowStock;
    private final Clock clock;

    CoordinatorHome(HomeQueries queries, LowStock lowStock, Clock clock) {
        this.queries = queries;
        this.lowStock = lowStock;
        this.clock = clock;
    }

    Home of(Visit visit) {
        Map<String, Long> n = queries.coordinator(visit.account().actor(), clock.instant());
        List<String> notices = new ArrayList<>(setUp(n));
        notices.addAll(lowStock.notices(visit.account()));
        return new Home(
                visit.name(),
                visit.where(),
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
                        Tile.exceptions(n),
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
}
