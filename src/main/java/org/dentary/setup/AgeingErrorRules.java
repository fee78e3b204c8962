package org.dentary.setup;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.dentary.setup.SetUpRules.Row;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;
import org.dentary.setup.list.Vocabulary;

/** What an ageing-error matrix must hold beyond its cells: every pair of classes, of jaws or of shares that sum to 1. */
final class AgeingErrorRules {
    /** Three shares with six decimals, each rounded, sum to 1 within this. */
    private static final BigDecimal ROUNDING = new BigDecimal("0.000002");
    /** Names the matrix that the service counts itself. */
    private static final String RESERVED = "KNOWN_AGE";

    private AgeingErrorRules() {}

    /** Adds what is wrong with the lines, in their order. */
    static void check(List<Row> rows, Known known, List<LineProblem> problems) {
        ReferenceRules.wholeAndFixed(SetUpList.AGEING_ERROR, rows, known, problems);
        Set<String> there =
                known.present().values().stream().map(row -> row.get("code")).collect(Collectors.toSet());
        Map<String, Map<String, Map<String, Map<String, Row>>>> matrices = new LinkedHashMap<>();
        for (Row row : rows) {
            if (!there.contains(row.cell("code")) && either(row, problems)) {
                matrices.computeIfAbsent(row.cell("code"), code -> new LinkedHashMap<>())
                        .computeIfAbsent(row.cell("sex"), sex -> new LinkedHashMap<>())
                        .computeIfAbsent(row.cell("true_class"), age -> new LinkedHashMap<>())
                        .put(row.cell("read_class"), row);
            }
        }
        matrices.forEach((code, tables) -> {
            sexes(code, tables, problems);
            tables.forEach((sex, table) -> table(code, sex, table, problems));
        });
    }

    /** Jaws or a share, and the code not that of the service's own. */
    private static boolean either(Row row, List<LineProblem> problems) {
        if (row.cell("code").equals(RESERVED)) {
            problems.add(new LineProblem(
                    row.line(),
                    "code",
                    "CODE_RESERVED",
                    "'" + RESERVED
                            + "' names the matrix that is counted from jaws of known age here; give another code"));
            return false;
        }
        boolean jaws = !row.cell("jaws").isEmpty();
        boolean share = !row.cell("share").isEmpty();
        if (jaws == share || jaws && row.cell("kind").equals("STATED")) {
            problems.add(new LineProblem(
                    row.line(),
                    jaws ? "jaws" : "share",
                    "JAWS_OR_SHARE",
                    row.cell("kind").equals("STATED")
                            ? "A stated what-if has no jaws behind it; give 'share' and leave 'jaws' empty"
                            : "Give 'jaws', or 'share' where the publication prints shares only; one of the two"));
            return false;
        }
        return true;
    }

    private static void sexes(
            String code, Map<String, Map<String, Map<String, Row>>> tables, List<LineProblem> problems) {
        Set<String> sexes = new TreeSet<>(tables.keySet());
        if (!sexes.equals(Set.of("BOTH")) && !sexes.equals(Set.of("MALE", "FEMALE"))) {
            problems.add(new LineProblem(
                    line(tables.values().iterator().next()),
                    "sex",
                    "SEXES_INCOMPLETE",
                    "Matrix " + code + " has rows for " + String.join(" and ", sexes)
                            + "; give one matrix for BOTH, or one for MALE and one for FEMALE"));
        }
    }

    private static void table(
            String code, String sex, Map<String, Map<String, Row>> table, List<LineProblem> problems) {
        for (String age : Vocabulary.AGE_CLASSES) {
            Map<String, Row> reads = table.getOrDefault(age, Map.of());
            if (!reads.keySet().containsAll(Vocabulary.AGE_CLASSES)) {
                problems.add(new LineProblem(
                        reads.isEmpty()
                                ? line(table)
                                : reads.values().iterator().next().line(),
                        "read_class",
                        "MATRIX_INCOMPLETE",
                        "Matrix " + code + ", " + sex + ", true class " + age + " needs three rows, read as FAWN,"
                                + " YEARLING and ADULT; give 0 where none was read so"));
            } else {
                sums(code, sex, age, reads, problems);
            }
        }
    }

    private static void sums(String code, String sex, String age, Map<String, Row> reads, List<LineProblem> problems) {
        Row first = reads.values().iterator().next();
        String at = "Matrix " + code + ", " + sex + ", true class " + age;
        boolean jaws = !first.cell("jaws").isEmpty();
        String column = jaws ? "jaws" : "share";
        if (reads.values().stream().anyMatch(row -> row.cell(column).isEmpty())) {
            problems.add(new LineProblem(
                    first.line(), column, "JAWS_OR_SHARE", at + " mixes jaws and shares; give one of the two"));
            return;
        }
        BigDecimal sum = reads.values().stream()
                .map(row -> new BigDecimal(row.cell(column)))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        if (jaws && sum.signum() == 0) {
            problems.add(
                    new LineProblem(
                            first.line(),
                            "jaws",
                            "CLASS_WITHOUT_JAWS",
                            at
                                    + " has no jaw, so nothing is known of how that class is read; leave the matrix out until it has"));
        } else if (!jaws && sum.subtract(BigDecimal.ONE).abs().compareTo(ROUNDING) > 0) {
            problems.add(new LineProblem(
                    first.line(),
                    "share",
                    "SHARES_DO_NOT_SUM",
                    at + ": the shares sum to " + sum.stripTrailingZeros().toPlainString()
                            + ", not 1; every jaw of the class is read as one of the three"));
        }
    }

    private static int line(Map<String, Map<String, Row>> table) {
        return table.values().iterator().next().values().iterator().next().line();
    }
}
