package org.dentary.prevalence.ageing;

import io.quarkus.qute.RawString;
import java.util.ArrayList;
import java.util.List;
import org.dentary.plan.PlanClock;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.ageing.AgePattern.ClassFigures;
import org.dentary.prevalence.ageing.AgePattern.Read;
import org.dentary.prevalence.ageing.AgeingAnswers.Answer;

/**
 * A what-if as the page and the document show it: words for codes, numbers rounded.
 *
 * @param standsOn live or which cut, on people's clocks
 * @param superseded why the cut should no longer be used, or null
 */
public record AgeingTable(
        AgeingWhatIf answer,
        String standsOn,
        String superseded,
        String digest,
        List<Row> rows,
        List<Step> steps,
        List<MatrixRow> matrix) {
    /** One class of one sex; of unknown age there is no what-if. */
    public record Row(
            String sex, String age, String read, String readShare, String whatIf, String whatIfShare, String change) {}

    /** Adults held against yearlings, one line for each sex. */
    public record Step(
            String sex, String points, String whatIfPoints, String again, String ratio, String whatIfRatio) {}

    /** A row of the matrix; {@code readings} is empty where only shares are given. */
    public record MatrixRow(String sex, String trueClass, List<String> reads, String readings) {}

    /** The answer in words. */
    public static AgeingTable of(Answer told, PlanClock clocks) {
        AgeingWhatIf answer = told.whatIf();
        List<Row> rows = new ArrayList<>();
        List<Step> steps = new ArrayList<>();
        for (AgePattern pattern : answer.patterns()) {
            String sex = sex(pattern);
            pattern.classes().forEach(one -> rows.add(row(sex, one)));
            if (pattern.unknownAge().counted() > 0) {
                Read unknown = pattern.unknownAge();
                rows.add(new Row(sex, "Unknown age", count(unknown), share(unknown), "left as it is", "", ""));
            }
            steps.add(new Step(
                    sex,
                    points(pattern.step().read()),
                    points(pattern.step().whatIf()),
                    points(pattern.step().readAgain()),
                    ratio(pattern.ratio().read()),
                    ratio(pattern.ratio().whatIf())));
        }
        return new AgeingTable(
                answer,
                answer.cut() == null
                        ? "live, as of " + clocks.told(answer.asOf())
                        : "data cut “" + answer.cut().name() + "” of " + clocks.told(answer.asOf()),
                told.superseded(),
                told.digest(),
                rows,
                steps,
                matrix(answer.matrix()));
    }

    private static String sex(AgePattern pattern) {
        return pattern.sex().equals("ALL") ? "All" : Words.of(pattern.sex());
    }

    private static Row row(String sex, ClassFigures one) {
        return new Row(
                sex,
                Words.of(one.ageClass()),
                count(one.read()),
                share(one.read()),
                AgeingWords.animals(one.whatIf().detected()) + " of "
                        + AgeingWords.animals(one.whatIf().counted()),
                AgeingWords.share(one.whatIf()),
                points(one.changeInPoints()));
    }

    private static String count(Read read) {
        return read.detected() + " of " + read.counted();
    }

    private static String share(Read read) {
        return read.prevalence() == null ? "not sampled" : Words.percent(read.prevalence(), read.counted());
    }

    private static String points(Double points) {
        return points == null ? "" : AgeingWords.points(points);
    }

    private static String ratio(Double figure) {
        return figure == null ? "undefined" : AgeingWords.number(figure);
    }

    private static List<MatrixRow> matrix(ErrorMatrix matrix) {
        List<MatrixRow> rows = new ArrayList<>();
        for (ErrorMatrix.Table table : matrix.tables()) {
            for (ErrorMatrix.Row row : table.rows()) {
                rows.add(new MatrixRow(
                        table.sex().equals(ErrorMatrix.BOTH) ? "Both" : Words.of(table.sex()),
                        Words.of(row.trueClass()),
                        row.reads().stream()
                                .map(read -> String.format(java.util.Locale.ROOT, "%.1f %%", 100 * read.share())
                                        + (read.readings() == null ? "" : " (" + read.readings() + ")"))
                                .toList(),
                        readings(row)));
            }
        }
        return rows;
    }

    private static String readings(ErrorMatrix.Row row) {
        if (row.readings() == null) {
            return "none given";
        }
        return row.readings()
                + (row.jaws() == null ? "" : " of " + row.jaws() + (row.jaws() == 1 ? " jaw" : " jaws"))
                + (row.withoutClass() == null || row.withoutClass() == 0
                        ? ""
                        : ", and " + row.withoutClass() + " without a class");
    }

    /** The kind of the matrix as people say it. */
    public String getKind() {
        return switch (answer.matrix().kind()) {
            case "CITED" -> "Cited";
            case ErrorMatrix.STATED -> "Stated, not measured";
            default -> "Counted from jaws of known age here";
        };
    }

    /** The picture for a wide screen. */
    public RawString getWide() {
        return new RawString(AgeingPicture.svg(answer, org.dentary.prevalence.chart.PrevalenceChart.Use.PAGE));
    }

    /** The picture for a narrow screen. */
    public RawString getNarrow() {
        return new RawString(AgeingPicture.svg(answer, org.dentary.prevalence.chart.PrevalenceChart.Use.NARROW_PAGE));
    }
}
