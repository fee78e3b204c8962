package org.dentary.portal;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The problem codes that are explained at length, kept in {@code problems.csv}, in the order of the file. */
final class Explanations {
    private static final Map<String, Explanation> ALL = read();

    private Explanations() {}

    /** The explanation of a code; empty for a code whose message says it all. */
    static Optional<Explanation> of(String code) {
        return Optional.ofNullable(ALL.get(code));
    }

    static Collection<Explanation> all() {
        return ALL.values();
    }

    private static Map<String, Explanation> read() {
        Map<String, Explanation> all = new LinkedHashMap<>();
        try (InputStreamReader file = new InputStreamReader(
                        Explanations.class.getResourceAsStream("problems.csv"), StandardCharsets.UTF_8);
                CsvReader<NamedCsvRecord> lines = CsvReader.builder().ofNamedCsvRecord(file)) {
            for (NamedCsvRecord line : lines) {
                String code = line.getField("code");
                all.put(code, new Explanation(code, line.getField("meaning"), line.getField("remedy")));
            }
            return all;
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }
}
