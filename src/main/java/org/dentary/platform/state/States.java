package org.dentary.platform.state;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.platform.problem.RuleBroken;

/** Answers from {@code states.csv} what may happen to a thing in a state; code, docs and tests read the same file. */
public final class States {
    private static final List<Transition> ALL = read();

    private States() {}

    /** Every allowed transition in the file's order. */
    public static List<Transition> all() {
        return ALL;
    }

    /**
     * Whether the event may happen now.
     *
     * @throws RuleBroken (409) naming the state found and what is possible in it
     */
    public static void require(String thing, String name, String state, String event) {
        boolean allowed = ALL.stream()
                .anyMatch(t -> t.thing().equals(thing)
                        && t.from().equals(state)
                        && t.event().equals(event));
        if (!allowed) {
            throw new RuleBroken("WRONG_STATE", sentence(thing, name, state, event));
        }
    }

    /** The state after the event; where several are possible the one named must be among them. */
    public static String after(String thing, String name, String state, String event, String to) {
        require(thing, name, state, event);
        boolean leads = ALL.stream()
                .anyMatch(t -> t.thing().equals(thing)
                        && t.from().equals(state)
                        && t.event().equals(event)
                        && t.to().equals(to));
        if (!leads) {
            throw new IllegalArgumentException(thing + ": " + event + " does not lead from " + state + " to " + to);
        }
        return to;
    }

    private static String sentence(String thing, String name, String state, String event) {
        String possible = ALL.stream()
                .filter(t -> t.thing().equals(thing) && t.from().equals(state))
                .map(Transition::event)
                .distinct()
                .collect(Collectors.joining(", "));
        return thing + " " + name + " is " + state + "; '" + event + "' is not possible now, "
                + (possible.isEmpty() ? "nothing more is" : "only: " + possible);
    }

    private static List<Transition> read() {
        try (InputStreamReader file =
                        new InputStreamReader(States.class.getResourceAsStream("/states.csv"), StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(file)) {
            return csv.stream()
                    .map(line -> new Transition(
                            line.getField("thing"),
                            line.getField("from"),
                            line.getField("event"),
                            line.getField("to"),
                            line.getField("act"),
                            line.getField("route")))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
