package org.dentary.setup.demo;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What was put right: a swapped label, kits of one animal, a jar without a label. */
final class DemoCorrections {
    private final DemoApi api;
    private final String season;
    private final DemoKits kits;

    DemoCorrections(DemoApi api, String season, DemoKits kits) {
        this.api = api;
        this.season = season;
        this.kits = kits;
    }

    /**
     * A jar that came without a label and cannot be filled again: granted by a second person in the season before, in the
     * running one still waiting.
     *
     * @param deer whose jars the laboratory has
     */
    void vouch(List<Deer> deer) {
        boolean running = season.equals(DemoSeason.RUNNING);
        if (!running && !season.equals("SY2025")) {
            return;
        }
        deer.stream()
                .filter(d -> !d.station().equals("ALDER")
                        && "NOT_DETECTED".equals(d.finding())
                        && d.diedOn().isBefore(DemoCalendar.TODAY.minusDays(30)))
                .findFirst()
                .ifPresent(d -> {
                    String path = "/identity-exceptions/" + DemoApi.key(season, "exception");
                    api.put(
                            "liaison",
                            path,
                            Map.of(
                                    "code",
                                    kits.code(d, "NODE_LEFT"),
                                    "problem",
                                    "UNLABELED",
                                    "irreplaceable",
                                    "the hunter has left with the carcass; no tissue was kept",
                                    "evidence",
                                    "the only jar of its box without a label, and the only code of the list"
                                            + " without a jar; the kit's stub lay in the same bag",
                                    "password",
                                    DemoApi.PASSWORD));
                    if (!running) {
                        api.post(
                                "coordinator",
                                path + "/decision",
                                Map.of(
                                        "granted",
                                        true,
                                        "reason",
                                        "compared jar, list, stub and form; every other jar of the box was accounted for",
                                        "password",
                                        DemoApi.PASSWORD));
                    }
                });
    }

    /** A label swap put right by two people, in the running season still asked for; and two kits found to be of one animal. */
    void putRight(List<Deer> deer) {
        List<Deer> two = deer.stream()
                .filter(d -> d.station().equals("ALDER")
                        && d.tissue()
                        && d.diedOn().isBefore(DemoCalendar.TODAY.minusDays(30)))
                .limit(4)
                .toList();
        if (two.size() < 4) {
            return;
        }
        if (season.equals("SY2025") || season.equals(DemoSeason.RUNNING)) {
            String swapped = kits.code(two.get(0), "NODE_LEFT");
            UUID id = DemoApi.key(season, "swap");
            api.put(
                    "liaison",
                    "/specimens/" + swapped + "/re-attribution/" + id,
                    Map.of(
                            "kit", kits.kit(two.get(1)),
                            "reason", "two trays stood side by side; the jar was filled from the second animal",
                            "evidence", "photograph of both trays, tissue compared with both jaws"));
            if (!season.equals(DemoSeason.RUNNING)) {
                api.post("coordinator", "/specimens/" + swapped + "/re-attribution/" + id + "/confirmation", Map.of());
            }
        }
        api.put(
                "epidemiologist",
                "/animals/" + kits.kit(two.get(3)) + "/same-as/" + kits.kit(two.get(2)),
                Map.of(
                        "reason", "head and nodes of one animal were taken in under two kits",
                        "evidence", "same registration number on both forms"));
    }
}
