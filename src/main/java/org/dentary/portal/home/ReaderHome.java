package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dentary.platform.account.Act;

/** What whoever only reads finds. */
@ApplicationScoped
class ReaderHome {
    private final HomeQueries queries;

    ReaderHome(HomeQueries queries) {
        this.queries = queries;
    }

    Home of(Visit visit) {
        Map<String, Long> n = queries.reader(visit.season());
        List<Tile> facts = new ArrayList<>(List.of(
                Tile.fact(n.get("taken"), "animal this season", "animals this season", "", "/animals"),
                Tile.fact(n.get("released"), "detection released", "detections released", "this season", "/animals")));
        List<Home.Deed> deeds = new ArrayList<>(List.of(new Home.Deed("Look up an animal", "/animals")));
        if (visit.account().may(Act.LEDGER_READ)) {
            deeds.add(new Home.Deed("Ledger and proofs", "/ledger"));
            deeds.add(new Home.Deed("Audit sample", "/ledger/audit-sample"));
            facts.add(Tile.fact(
                    n.get("discrepancies"), "open discrepancy", "open discrepancies", "", "/custody/discrepancies"));
        }
        return new Home(visit.name(), visit.where(), deeds, List.of(), facts, List.of());
    }
}
