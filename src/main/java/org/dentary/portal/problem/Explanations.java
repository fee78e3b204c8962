package org.dentary.portal.problem;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Every problem code of the service explained, kept in {@code problems.csv}, in the order of the file. */
final class Explanations {
    private static final Map<String, String> TITLES = Map.ofEntries(
            Map.entry("platform", "Any request, page or photo"),
            Map.entry("plan", "Plan, places and seasons"),
            Map.entry("people", "People and the protocol"),
            Map.entry("kit", "Kits and labels"),
            Map.entry("animal", "Animals and contacts"),
            Map.entry("jaw", "Jaws and age"),
            Map.entry("specimen", "Specimens and their labels"),
            Map.entry("custody", "Custody, boxes and hand-overs"),
            Map.entry("submission", "Submissions to laboratories"),
            Map.entry("result", "Results from laboratories, and telling them"),
            Map.entry("prevalence", "Reports and data cuts"),
            Map.entry("ledger", "Seals over the records"),
            Map.entry("cautions", "Cautions"),
            Map.entry("setup", "Files that set up the program"),
            Map.entry("intake", "Intake"),
            Map.entry("calculators", "Calculators"),
            Map.entry("portal", "Search and scanning"));

    private static final Map<String, Explanation> ALL = read();

    private static final List<ProblemGroup> GROUPS = grouped();

    private Explanations() {}

    /** The explanation of a code; empty where the service answers no such code. */
    static Optional<Explanation> of(String code) {
        return Optional.ofNullable(ALL.get(code));
    }

    static Collection<Explanation> all() {
        return ALL.values();
    }

    /** All of them by room, rooms in the order of the file. */
    static List<ProblemGroup> groups() {
        return GROUPS;
    }

    private static List<ProblemGroup> grouped() {
        Map<String, List<Explanation>> rooms = ALL.values().stream()
                .collect(Collectors.groupingBy(Explanation::room, LinkedHashMap::new, Collectors.toList()));
        return rooms.entrySet().stream()
                .map(room -> new ProblemGroup(room.getKey(), title(room.getKey()), List.copyOf(room.getValue())))
                .toList();
    }

    private static String title(String room) {
        String title = TITLES.get(room);
        if (title == null) {
            throw new IllegalStateException("problems.csv names room '" + room + "', which has no title");
        }
        return title;
    }

    private static Map<String, Explanation> read() {
        Map<String, Explanation> all = new LinkedHashMap<>();
        try (InputStreamReader file = new InputStreamReader(
                        Explanations.class.getResourceAsStream("problems.csv"), StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> lines = CsvReader.builder().ofNamedCsvRecord(file)) {
            for (NamedCsvRecord line : lines) {
                String code = line.getField("code");
                all.put(
                        code,
                        new Explanation(
                                line.getField("room"), code, line.getField("meaning"), line.getField("remedy")));
            }
            return all;
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }
}
