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
        List<Home.Notice> notices = new ArrayList<>(setUp(n));
        notices.addAll(lowStock.notices(visit.account()));
        return new Home(
                visit.name(),
                visit.where(),
                deeds(n.get("open") > 0),
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
                                "/animals/mix-ups"),
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
                                "/season/review")),
                List.of(
                        Tile.fact(n.get("suspects"), "suspect", "suspects", "awaiting confirmation", "/results"),
                        Tile.fact(
                                n.get("unaccepted"),
                                "hand-over not accepted",
                                "hand-overs not accepted",
                                "",
                                "/custody"),
                        Tile.fact(n.get("stations"), "station", "stations", "set up", "/season/lists/stations"),
                        Tile.fact(
                                n.get("laboratories"),
                                "laboratory",
                                "laboratories",
                                "set up",
                                "/season/lists/laboratories"),
                        Tile.fact(n.get("persons"), "person", "persons", "on the roster", "/season/lists/persons")),
                notices);
    }

    /** What is to be done first: the season until one is open, then kits. */
    private static List<Home.Deed> deeds(boolean open) {
        Home.Deed season = new Home.Deed("Set up the season", "/season");
        Home.Deed kits = new Home.Deed("Issue kits", "/kits/issue");
        Home.Deed deer = new Home.Deed("Take in a deer", "/intake");
        return open ? List.of(kits, deer, season) : List.of(season);
    }

    private static List<Home.Notice> setUp(Map<String, Long> n) {
        if (n.get("open") == 0) {
            return List.of(new Home.Notice(
                    "No season is open, so no animal can be taken in.", "/season", "What is still to do"));
        }
        List<Home.Notice> missing = new ArrayList<>();
        if (n.get("stations") == 0) {
            missing.add(new Home.Notice("No station is set up yet.", "/season/lists/stations", "Stations"));
        }
        if (n.get("laboratories") == 0) {
            missing.add(new Home.Notice("No laboratory is set up yet.", "/season/lists/laboratories", "Laboratories"));
        }
        return missing;
    }
}
