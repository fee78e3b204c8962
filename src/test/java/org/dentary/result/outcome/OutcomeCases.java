package org.dentary.result.outcome;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;

/**
 * The table of outcome cases, {@code result/outcomes.csv}. Tissues read {@code code[<parent] kind orders/reports
 * [archived]}, findings {@code stage word status day specimens [unaccepted|pool|counts|corrects=n]}; the day is of
 * November 2026, {@code -} for none; several are parted by a bar.
 */
final class OutcomeCases {
    private OutcomeCases() {}

    /** One line of the table. */
    record OutcomeCase(
            String desc,
            String source,
            List<TestFact> findings,
            List<TissueFact> tissues,
            PlanFacts plan,
            Outcome outcome,
            String review,
            String footnotes) {
        Derived derive() {
            return OutcomeRules.derive(findings, tissues, plan);
        }
    }

    static List<OutcomeCase> all() {
        try (InputStream file = OutcomeCases.class.getResourceAsStream("/result/outcomes.csv");
                CsvReader<NamedCsvRecord> rows =
                        CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(file, StandardCharsets.UTF_8))) {
            return rows.stream().map(OutcomeCases::read).toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static OutcomeCase read(NamedCsvRecord row) {
        String plan = row.getField("plan");
        return new OutcomeCase(
                row.getField("desc"),
                row.getField("source"),
                findings(row.getField("findings")),
                split(row.getField("tissues"), "\\|").stream()
                        .map(OutcomeCases::tissue)
                        .toList(),
                new PlanFacts(plan.contains("alone"), plan.contains("pools"), List.of()),
                Outcome.valueOf(row.getField("outcome")),
                row.getField("review"),
                row.getField("footnotes"));
    }

    private static List<String> split(String text, String by) {
        return text.isBlank() ? List.of() : Arrays.asList(text.split(by));
    }

    private static TissueFact tissue(String text) {
        String[] words = text.split(" ");
        String[] code = words[0].split("<");
        String[] counts = words[2].split("/");
        return new TissueFact(
                code[0],
                code.length > 1 ? code[1] : null,
                words.length > 3 && words[3].equals("archived"),
                Integer.parseInt(counts[0]),
                Integer.parseInt(counts[1]),
                words[1].equals("node"),
                words[1].equals("obex"));
    }

    private static List<TestFact> findings(String text) {
        List<TestFact> findings = new ArrayList<>();
        for (String one : split(text, "\\|")) {
            String[] words = one.split(" ");
            List<String> flags = Arrays.asList(words).subList(5, words.length);
            String corrects = flags.stream()
                    .filter(flag -> flag.startsWith("corrects="))
                    .findFirst()
                    .orElse(null);
            findings.add(new TestFact(
                    id(findings.size() + 1),
                    "METHOD_" + words[0],
                    Stage.valueOf(words[0]),
                    FindingWord.valueOf(words[1]),
                    FindingStatus.valueOf(words[2]),
                    words[3].equals("-") ? null : LocalDate.of(2026, 11, Integer.parseInt(words[3])),
                    Set.of(words[4].split("\\+")),
                    !flags.contains("unaccepted"),
                    flags.contains("pool"),
                    flags.contains("counts"),
                    corrects == null ? null : id(Integer.parseInt(corrects.substring("corrects=".length()))),
                    words[4]));
        }
        return findings;
    }

    private static UUID id(int number) {
        return new UUID(0, number);
    }
}
