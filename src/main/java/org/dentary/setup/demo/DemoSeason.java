package org.dentary.setup.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/** One season of the demo, played in the order in which it would have happened. */
final class DemoSeason {
    static final String RUNNING = "SY2026";
    private static final int AT_ONCE = 4;

    private final DemoApi api;
    private final String season;
    private final List<Deer> deer;

    DemoSeason(DemoApi api, String season, List<Deer> deer) {
        this.api = api;
        this.season = season;
        this.deer = deer;
    }

    void play() {
        DemoKits kits = new DemoKits(api, season, deer);
        DemoIntake stations = new DemoIntake(api, season, kits);
        DemoTissue tissue = new DemoTissue(api, season, kits);
        all(deer, stations::takeIn);
        all(deer.stream().filter(d -> d.jaw().equals("LATER")).toList(), stations::readJawLater);
        all(deer.stream().filter(d -> d.jaw().equals("BLIND_TWICE")).toList(), stations::readAgain);
        all(deer.stream().filter(DemoSeason::isMarked).toList(), stations::lookUpMark);
        all(tissue.batches(deer), tissue::carry);
        DemoCorrections corrections = new DemoCorrections(api, season, kits);
        corrections.putRight(deer);
        corrections.vouch(tissue.batches(deer).stream()
                .map(batch -> batch.getValue().get(0))
                .toList());
        api.put(
                "epidemiologist",
                "/data-cuts/" + DemoApi.key(season, "cut"),
                Map.of(
                        "season",
                        season,
                        "name",
                        season.equals(RUNNING) ? "End of " + RUNNING + " so far" : "End of season"));
    }

    private static boolean isMarked(Deer d) {
        return !d.season().equals(RUNNING)
                && d.number() % 11 == 0
                && d.jaw().equals("AT_INTAKE")
                && !d.ageClass().equals("UNKNOWN");
    }

    /** Runs independent steps a few at a time; the first fault stops the season. */
    private static <T> void all(List<T> things, Consumer<T> step) {
        ExecutorService hands = Executors.newFixedThreadPool(AT_ONCE);
        try {
            List<Future<?>> done = new ArrayList<>();
            things.forEach(thing -> done.add(hands.submit(() -> step.accept(thing))));
            for (Future<?> one : done) {
                one.get();
            }
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } finally {
            hands.shutdownNow();
        }
    }
}
