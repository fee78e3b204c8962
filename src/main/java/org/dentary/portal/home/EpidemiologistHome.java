package org.dentary.portal.home;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import org.dentary.plan.DiseaseView;
import org.dentary.plan.PlanService;

/** What waits for the epidemiologist, and where the season stands. */
@ApplicationScoped
class EpidemiologistHome {
    private final HomeQueries queries;
    private final PlanService plan;

    EpidemiologistHome(HomeQueries queries, PlanService plan) {
        this.queries = queries;
        this.plan = plan;
    }

    Home of(Visit visit) {
        String disease =
                plan.diseases().stream().findFirst().map(DiseaseView::code).orElse("");
        Map<String, Long> n = queries.epidemiologist(visit.account().actor(), visit.season(), disease);
        return new Home(
                visit.name(),
                visit.where()
                        + plan.diseases().stream()
                                .findFirst()
                                .map(d -> ", " + d.name())
                                .orElse(""),
                List.of(
                        new Home.Deed("Prevalence", "/prevalence"),
                        new Home.Deed("Line list", "/line-list"),
                        new Home.Deed("Data cuts", "/data-cuts")),
                List.of(
                        Tile.todo(
                                n.get("disputed"),
                                "age in dispute",
                                "ages in dispute",
                                "readers differ; none designated",
                                "/jaws"),
                        Tile.exceptions(n)),
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
}
