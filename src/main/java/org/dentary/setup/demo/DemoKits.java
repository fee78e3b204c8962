package org.dentary.setup.demo;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The kits issued to the stations of a season, and the codes on their labels. */
final class DemoKits {
    private static final List<String> PARTS = List.of("JAW", "NODE_LEFT", "NODE_RIGHT", "FORM", "STUB");
    private static final int SPARE = 40;
    /** So few kits are left at this station that it is told. */
    private static final String RUNS_LOW = "BRINDLE";

    private static final int FEW = 12;

    private final Map<String, List<String>> kits = new HashMap<>();
    private final Map<String, String> codes = new HashMap<>();

    /** Issues as many kits to each station as deer will come, and some more. */
    DemoKits(DemoApi api, String season, List<Deer> deer) {
        Map<String, Long> needed = deer.stream().collect(Collectors.groupingBy(Deer::station, Collectors.counting()));
        needed.forEach((station, count) -> {
            JsonNode block = api.put(
                    "coordinator",
                    "/kit-blocks/" + DemoApi.key(season, station, "block"),
                    Map.of(
                            "season",
                            season,
                            "station",
                            station,
                            "kits",
                            count + (station.equals(RUNS_LOW) ? FEW : SPARE),
                            "parts",
                            PARTS));
            List<String> stems = new ArrayList<>();
            block.get("kits").forEach(kit -> stems.add(kit.textValue()));
            kits.put(station, stems);
            block.get("labels")
                    .forEach(label -> codes.put(
                            label.get("kit").textValue() + label.get("part").textValue(),
                            label.get("code").textValue()));
        });
    }

    String kit(Deer d) {
        return kits.get(d.station()).get(d.kit());
    }

    String code(Deer d, String part) {
        return codes.get(kit(d) + part);
    }
}
