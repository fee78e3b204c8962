package org.dentary.setup.demo;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Takes the drawn deer through four seasons over the public API: kits, intake, hand-overs, laboratory, release, cuts. */
@ApplicationScoped
class DemoSeasons implements DemoPart {
    private static final Logger LOG = Logger.getLogger(DemoSeasons.class);

    private final DemoQueries queries;
    private final ObjectMapper json;
    private final int port;

    DemoSeasons(
            DemoQueries queries,
            ObjectMapper json,
            @ConfigProperty(name = "quarkus.http.port", defaultValue = "8080") int port) {
        this.queries = queries;
        this.json = json;
        this.port = port;
    }

    @Override
    public int order() {
        return 50;
    }

    @Override
    public String words() {
        return "two thousand deer in four seasons";
    }

    @Override
    public boolean isLoaded() {
        return queries.hasCut("End of " + DemoSeason.RUNNING + " so far");
    }

    @Override
    public void load(Path demoData) {
        DemoApi api = new DemoApi(json, port);
        for (String outcome : List.of(
                "DETECTED",
                "NOT_DETECTED",
                "INCONCLUSIVE",
                "UNSUITABLE",
                "NOT_TESTED",
                "NOT_ATTRIBUTABLE",
                "CORRECTION")) {
            api.post("coordinator", "/letter-wordings/" + outcome + "/1/review", Map.of());
        }
        Map<String, List<Deer>> seasons = DeerDraw.draw(DeerDraw.SEED).stream()
                .collect(Collectors.groupingBy(Deer::season, java.util.TreeMap::new, Collectors.toList()));
        seasons.forEach((season, deer) -> {
            LOG.info("Loading the demo: " + deer.size() + " deer of " + season);
            new DemoSeason(api, season, deer).play();
        });
    }
}
