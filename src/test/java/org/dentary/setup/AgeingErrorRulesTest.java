package org.dentary.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.setup.SetUpRules.Checked;
import org.dentary.setup.list.Known;
import org.dentary.setup.list.SetUpList;
import org.junit.jupiter.api.Test;

class AgeingErrorRulesTest {
    private static final String HEAD = "code,name,species,kind,source,as_of,sex,true_class,read_class,jaws,share\n";
    private static final List<String> AGES = List.of("FAWN", "YEARLING", "ADULT");

    @Test
    void aMatrixOfJawsAndOneOfSharesAreTaken() {
        assertEquals(
                List.of(),
                told(matrix("A", "CITED", "BOTH", "50,,0,,0,,1,,60,,4,,0,,9,,91,")
                        + matrix("B", "STATED", "MALE", ",.985,,.015,,0,,.333333,,.333333,,.333333,,0,,.05,,.95")
                        + matrix("B", "STATED", "FEMALE", ",1,,0,,0,,0,,1,,0,,0,,0,,1")));
    }

    @Test
    void aClassWithoutJawsAndSharesThatDoNotSumAreNamed() {
        assertEquals(
                List.of("5 jaws CLASS_WITHOUT_JAWS"),
                told(matrix("A", "CITED", "BOTH", "50,,0,,0,,0,,0,,0,,0,,9,,91,")));
        List<LineProblem> sums = problems(matrix("A", "STATED", "BOTH", ",.9,,.05,,0,,0,,1,,0,,0,,0,,1"));
        assertEquals("2 share SHARES_DO_NOT_SUM", words(sums.get(0)));
        assertTrue(
                sums.get(0).message().contains("the shares sum to 0.95, not 1"),
                sums.get(0).message());
    }

    @Test
    void everyPairOfClassesAndBothSexesOrNoneAreNeeded() {
        String whole = matrix("A", "CITED", "BOTH", "50,,0,,0,,1,,60,,4,,0,,9,,91,");
        assertEquals(
                List.of("5 read_class MATRIX_INCOMPLETE"),
                told(whole.replaceFirst("A,m,D1,CITED,s,2026-08-01,BOTH,YEARLING,FAWN,1,\n", "")));
        assertEquals(
                List.of("2 read_class MATRIX_INCOMPLETE"),
                told(whole.lines().filter(row -> !row.contains("BOTH,ADULT")).reduce("", (a, b) -> a + b + "\n")));
        assertEquals(List.of("2 sex SEXES_INCOMPLETE"), told(whole.replace("BOTH", "MALE")));
        assertEquals(List.of("2 sex SEXES_INCOMPLETE"), told(whole + whole.replace("BOTH", "MALE")));
    }

    @Test
    void jawsOrSharesAndNoJawsBehindWhatIsStated() {
        assertEquals(
                List.of("2 jaws JAWS_OR_SHARE"), told(matrix("A", "CITED", "BOTH", "50,,,1,,0,,0,,1,,0,,0,,0,,1")));
        String both = matrix("A", "CITED", "BOTH", "50,.5,0,,0,,1,,60,,4,,0,,9,,91,");
        assertEquals(List.of("2 jaws JAWS_OR_SHARE", "3 read_class MATRIX_INCOMPLETE"), told(both));
        assertTrue(problems(matrix("A", "STATED", "BOTH", "50,,0,,0,,1,,60,,4,,0,,9,,91,")).stream()
                .allMatch(problem -> problem.message().contains("has no jaws behind it")));
    }

    @Test
    void theNameOfTheMatrixCountedHereIsKept() {
        assertEquals(
                "2 code CODE_RESERVED",
                words(problems(matrix("KNOWN_AGE", "CITED", "BOTH", "50,,0,,0,,1,,60,,4,,0,,9,,91,"))
                        .get(0)));
    }

    @Test
    void rowsOfACodeSayTheSameOfTheWhole() {
        String whole = matrix("A", "CITED", "BOTH", "50,,0,,0,,1,,60,,4,,0,,9,,91,");
        assertEquals(
                List.of("3 source ROWS_DISAGREE"),
                told(whole.replaceFirst(
                        "CITED,s,2026-08-01,BOTH,FAWN,YEARLING", "CITED,other,2026-08-01,BOTH,FAWN,YEARLING")));
    }

    /** Rows of a matrix; cells as {@code jaws,share} for each pair of classes. */
    private static String matrix(String code, String kind, String sex, String cells) {
        String[] each = cells.split(",", -1);
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < 9; i++) {
            rows.append(String.join(
                            ",",
                            code,
                            "m",
                            "D1",
                            kind,
                            "s",
                            "2026-08-01",
                            sex,
                            AGES.get(i / 3),
                            AGES.get(i % 3),
                            each[2 * i],
                            each[2 * i + 1].startsWith(".") ? "0" + each[2 * i + 1] : each[2 * i + 1]))
                    .append("\n");
        }
        return rows.toString();
    }

    private static List<LineProblem> problems(String rows) {
        Checked checked = SetUpRules.check(
                SetUpList.AGEING_ERROR,
                SetUpFile.read(SetUpList.AGEING_ERROR, (HEAD + rows).getBytes(StandardCharsets.UTF_8)),
                Known.of(SetUpList.AGEING_ERROR, Map.of(SetUpList.SPECIES, Set.of("D1")), List.of(), Set.of()));
        return checked.problems();
    }

    private static List<String> told(String rows) {
        return problems(rows).stream().map(AgeingErrorRulesTest::words).toList();
    }

    private static String words(LineProblem problem) {
        return problem.line() + " " + problem.field() + " " + problem.rule();
    }
}
