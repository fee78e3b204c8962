package org.dentary.prevalence.comparison;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.dentary.platform.table.CsvTable;

/** The comparisons as CSV, one line each with its first figure and the test that decides; empty where there is none. */
final class ComparisonCsv {
    private static final List<String> COLUMNS = List.of(
            "kind",
            "about",
            "firstGroup",
            "firstCounted",
            "firstDetected",
            "secondGroup",
            "secondCounted",
            "secondDetected",
            "thirdGroup",
            "thirdCounted",
            "thirdDetected",
            "measure",
            "estimate",
            "lower",
            "upper",
            "test",
            "p",
            "adjustedP",
            "secondTest",
            "secondP",
            "verdict",
            "sentence");

    private ComparisonCsv() {}

    static String of(Comparisons answer) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, COLUMNS)) {
            for (Comparison one : answer.comparisons()) {
                Object[] row = new Object[COLUMNS.size()];
                row[0] = one.kind();
                row[1] = one.about();
                for (int i = 0; i < one.groups().size(); i++) {
                    Group group = one.groups().get(i);
                    row[2 + 3 * i] = group.label();
                    row[3 + 3 * i] = group.counted();
                    row[4 + 3 * i] = group.detected();
                }
                if (one.figure() != null) {
                    row[11] = one.figure().measure();
                    row[12] = one.figure().estimate();
                    row[13] = one.figure().lower();
                    row[14] = one.figure().upper();
                }
                if (one.test() != null) {
                    row[15] = one.test().test();
                    row[16] = one.test().p();
                    row[17] = one.test().adjustedP();
                }
                if (one.tests().size() > 1) {
                    row[18] = one.tests().get(1).test();
                    row[19] = one.tests().get(1).p();
                }
                row[20] = one.verdict();
                row[21] = one.sentence();
                csv.row(row);
            }
        }
        return out.toString(StandardCharsets.UTF_8);
    }
}
