package org.dentary.prevalence.ageing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.dentary.prevalence.PrevalenceCell;
import org.dentary.prevalence.ageing.AgePattern.Between;
import org.dentary.prevalence.ageing.AgePattern.ClassFigures;
import org.dentary.prevalence.ageing.AgePattern.Read;
import org.dentary.prevalence.ageing.AgePattern.Way;
import org.dentary.prevalence.ageing.AgePattern.WhatIf;
import org.dentary.statistics.Misclassification;

/**
 * The age pattern behind counts by read class. Animals in which it was detected and those in which it was not are taken back
 * to true classes each by themselves, so that no class holds more detected than animals. Pure.
 */
final class AgePatterns {
    private static final int AGES = ErrorMatrix.CLASSES.size();

    private AgePatterns() {}

    /** Counted and detected by class; the last of each is unknown age. */
    private record Counts(int[] counted, int[] detected) {}

    /** Animals by class in which it was detected, and the others. */
    private record Split(double[] detected, double[] other) {
        WhatIf of(int age) {
            return whatIf(detected[age] + other[age], detected[age]);
        }
    }

    /** A pattern by sex in the order of the cells, then all of them added up; unknown sex only where somebody is of it. */
    static List<AgePattern> of(List<PrevalenceCell> cells, ErrorMatrix matrix) {
        List<AgePattern> patterns = new ArrayList<>();
        counts(cells).forEach((sex, counts) -> {
            if (!sex.equals("UNKNOWN") || Arrays.stream(counts.counted()).sum() > 0) {
                patterns.add(pattern(sex, counts, matrix.table(sex)));
            }
        });
        patterns.add(addedUp(patterns));
        return patterns;
    }

    private static Map<String, Counts> counts(List<PrevalenceCell> cells) {
        Map<String, Counts> sexes = new LinkedHashMap<>();
        for (PrevalenceCell cell : cells) {
            Counts counts = sexes.computeIfAbsent(
                    cell.group().get("sex"), sex -> new Counts(new int[AGES + 1], new int[AGES + 1]));
            int age = ErrorMatrix.CLASSES.indexOf(cell.group().get("ageClass"));
            counts.counted()[age < 0 ? AGES : age] += cell.counted();
            counts.detected()[age < 0 ? AGES : age] += cell.detected();
        }
        return sexes;
    }

    private static AgePattern pattern(String sex, Counts counts, ErrorMatrix.Table table) {
        double[] detected = new double[AGES];
        double[] other = new double[AGES];
        for (int i = 0; i < AGES; i++) {
            detected[i] = counts.detected()[i];
            other[i] = counts.counted()[i] - counts.detected()[i];
        }
        Read unknown = Read.of(counts.counted()[AGES], counts.detected()[AGES]);
        List<Read> read = new ArrayList<>();
        for (int i = 0; i < AGES; i++) {
            read.add(Read.of(counts.counted()[i], counts.detected()[i]));
        }
        boolean nobody = read.stream().allMatch(one -> one.counted() == 0);
        if (nobody || table == null) {
            Split asRead = new Split(detected, other);
            return whole(sex, nobody ? Way.NOBODY : Way.AS_READ, classes(read, asRead, asRead, asRead), unknown, 0);
        }
        Misclassification error = Misclassification.of(ErrorMatrix.shares(table));
        Misclassification.Behind found = error.behind(detected);
        Misclassification.Behind rest = error.behind(other);
        return whole(
                sex,
                found.solved() && rest.solved() ? Way.SOLVED : Way.LIKELIEST,
                classes(
                        read,
                        new Split(found.counts(), rest.counts()),
                        new Split(found.solution(), rest.solution()),
                        new Split(error.told(detected), error.told(other))),
                unknown,
                found.unexplained() + rest.unexplained());
    }

    private static List<ClassFigures> classes(List<Read> read, Split whatIf, Split solution, Split again) {
        List<ClassFigures> classes = new ArrayList<>();
        for (int i = 0; i < AGES; i++) {
            classes.add(figures(ErrorMatrix.CLASSES.get(i), read.get(i), whatIf.of(i), solution.of(i), again.of(i)));
        }
        return classes;
    }

    /** The sexes added up; where a sex was left as read, its animals are in it as read. */
    private static AgePattern addedUp(List<AgePattern> patterns) {
        List<ClassFigures> classes = new ArrayList<>();
        for (int i = 0; i < AGES; i++) {
            int at = i;
            List<ClassFigures> ones =
                    patterns.stream().map(pattern -> pattern.classes().get(at)).toList();
            classes.add(figures(
                    ErrorMatrix.CLASSES.get(i),
                    added(ones.stream().map(ClassFigures::read).toList()),
                    sum(ones.stream().map(ClassFigures::whatIf).toList()),
                    sum(ones.stream().map(ClassFigures::solution).toList()),
                    sum(ones.stream().map(ClassFigures::readAgain).toList())));
        }
        return whole(
                "ALL",
                patterns.stream().allMatch(one -> one.way() == Way.NOBODY) ? Way.NOBODY : Way.ADDED_UP,
                classes,
                added(patterns.stream().map(AgePattern::unknownAge).toList()),
                patterns.stream().mapToDouble(AgePattern::unexplained).sum());
    }

    private static AgePattern whole(String sex, Way way, List<ClassFigures> classes, Read unknown, double unexplained) {
        List<Read> everybody =
                new ArrayList<>(classes.stream().map(ClassFigures::read).toList());
        everybody.add(unknown);
        Double[] yearling = prevalences(classes.get(ErrorMatrix.CLASSES.indexOf("YEARLING")));
        Double[] adult = prevalences(classes.get(ErrorMatrix.CLASSES.indexOf("ADULT")));
        return new AgePattern(
                sex,
                way,
                classes,
                unknown,
                added(everybody),
                between(adult, yearling, (a, y) -> y == 0 ? null : rounded(a / y)),
                between(adult, yearling, (a, y) -> rounded(100 * (a - y))),
                rounded(unexplained));
    }

    private static ClassFigures figures(String ageClass, Read read, WhatIf whatIf, WhatIf solution, WhatIf readAgain) {
        Double change = read.prevalence() == null || whatIf.prevalence() == null
                ? null
                : rounded(100 * (whatIf.prevalence() - read.prevalence()));
        return new ClassFigures(ageClass, read, whatIf, change, solution, readAgain);
    }

    private static Double[] prevalences(ClassFigures one) {
        return new Double[] {
            one.read().prevalence(), one.whatIf().prevalence(), one.readAgain().prevalence()
        };
    }

    private static Between between(
            Double[] adult, Double[] yearling, java.util.function.BinaryOperator<Double> figure) {
        Double[] figures = new Double[3];
        for (int i = 0; i < 3; i++) {
            figures[i] = adult[i] == null || yearling[i] == null ? null : figure.apply(adult[i], yearling[i]);
        }
        return new Between(figures[0], figures[1], figures[2]);
    }

    private static Read added(List<Read> reads) {
        return Read.of(
                reads.stream().mapToInt(Read::counted).sum(),
                reads.stream().mapToInt(Read::detected).sum());
    }

    private static WhatIf sum(List<WhatIf> ones) {
        return whatIf(
                ones.stream().mapToDouble(WhatIf::counted).sum(),
                ones.stream().mapToDouble(WhatIf::detected).sum());
    }

    /** Counts to a millionth, the share to a billionth, so that no figure hangs on the last bits of a solution. */
    private static WhatIf whatIf(double counted, double detected) {
        double c = rounded(counted);
        double d = rounded(detected);
        return new WhatIf(c, d, c < 1 || d < 0 || d > c ? null : Math.round(detected / counted * 1e9) / 1e9);
    }

    /** Never a minus before 0. */
    private static double rounded(double value) {
        return Math.round(value * 1e6) / 1e6;
    }
}
