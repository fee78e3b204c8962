package org.dentary.setup.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.season.SeasonStateService;

/** Closes the demo's past seasons, after what happened in them was loaded. */
@ApplicationScoped
class DemoPastSeasons implements DemoPart {
    private final PlanService plan;
    private final SeasonStateService states;
    private final Clock clock;

    DemoPastSeasons(PlanService plan, SeasonStateService states, Clock clock) {
        this.plan = plan;
        this.states = states;
        this.clock = clock;
    }

    @Override
    public int order() {
        return 90;
    }

    @Override
    public String words() {
        return "the end of the past seasons";
    }

    @Override
    public boolean isLoaded() {
        return past().isEmpty();
    }

    @Override
    public void load(Path demoData) {
        past().forEach(season -> states.close(season.code()));
    }

    private List<SeasonView> past() {
        List<SeasonView> seasons = plan.seasons();
        SeasonView running = DemoSetUp.running(seasons, clock);
        return seasons.stream()
                .filter(season -> season.startsOn().isBefore(running.startsOn())
                        && season.state().equals("OPEN"))
                .toList();
    }
}
