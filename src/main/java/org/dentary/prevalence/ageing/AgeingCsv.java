package org.dentary.prevalence.ageing;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.dentary.platform.table.CsvTable;
import org.dentary.prevalence.ageing.AgePattern.ClassFigures;
import org.dentary.prevalence.ageing.AgePattern.Read;

/** A what-if as CSV: a line for each sex and age class, each saying that it is one. */
final class AgeingCsv {
    private static final List<String> COLUMNS = List.of(
            "label",
            "matrix",
            "matrixKind",
            "season",
            "disease",
            "species",
            "sex",
            "ageClass",
            "readCounted",
            "readDetected",
            "readPrevalence",
            "whatIfCounted",
            "whatIfDetected",
            "whatIfPrevalence",
            "changeInPoints",
            "readAgainCounted",
            "readAgainDetected",
            "readAgainPrevalence",
            "solutionCounted",
            "solutionDetected",
            "way",
            "unexplained");

    private AgeingCsv() {}

    static String of(AgeingWhatIf answer) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (CsvTable csv = CsvTable.on(out, COLUMNS)) {
            for (AgePattern pattern : answer.patterns()) {
                pattern.classes().forEach(one -> csv.row(row(answer, pattern, one)));
                Read unknown = pattern.unknownAge();
                Object[] row = head(answer, pattern, "UNKNOWN", unknown);
                row[20] = AgePattern.Way.AS_READ;
                csv.row(row);
            }
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    private static Object[] row(AgeingWhatIf answer, AgePattern pattern, ClassFigures one) {
        Object[] row = head(answer, pattern, one.ageClass(), one.read());
        row[11] = one.whatIf().counted();
        row[12] = one.whatIf().detected();
        row[13] = one.whatIf().prevalence();
        row[14] = one.changeInPoints();
        row[15] = one.readAgain().counted();
        row[16] = one.readAgain().detected();
        row[17] = one.readAgain().prevalence();
        row[18] = one.solution().counted();
        row[19] = one.solution().detected();
        row[20] = pattern.way();
        row[21] = pattern.unexplained();
        return row;
    }

    private static Object[] head(AgeingWhatIf answer, AgePattern pattern, String ageClass, Read read) {
        Object[] row = new Object[COLUMNS.size()];
        row[0] = answer.label();
        row[1] = answer.matrix().code();
        row[2] = answer.matrix().kind();
        row[3] = answer.season();
        row[4] = answer.disease();
        row[5] = answer.species();
        row[6] = pattern.sex();
        row[7] = ageClass;
        row[8] = read.counted();
        row[9] = read.detected();
        row[10] = read.prevalence();
        return row;
    }
}
