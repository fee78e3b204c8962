package org.dentary.prevalence.ageing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.ageing.AgePattern.ClassFigures;
import org.dentary.prevalence.ageing.AgePattern.Way;
import org.dentary.prevalence.ageing.AgePattern.WhatIf;
import org.dentary.statistics.Misclassification;

/** What a what-if says in words, what it takes for granted, and what makes it weak. */
final class AgeingWords {
    /** Fewer readings of a true class than this are told as few; our own bound, no source. */
    static final int FEW = 30;
    /** A condition above this is told as reading classes nearly alike; our own bound, no source. */
    static final double HARDLY = 5;

    /** From so many animals on that would have been read otherwise the misfit is warned of; our own bound, no source. */
    static final double MISFIT = 1;

    private AgeingWords() {}

    /** One paragraph for each sex that was sampled, then for all. */
    static List<String> sentences(List<AgePattern> patterns, ErrorMatrix matrix) {
        return patterns.stream()
                .filter(AgePattern::sampled)
                .map(pattern -> sentence(pattern, matrix))
                .toList();
    }

    private static String sentence(AgePattern pattern, ErrorMatrix matrix) {
        String head = "What-if, " + pattern.sexWords() + ". As read: " + read(pattern) + ". ";
        if (pattern.way() == Way.AS_READ) {
            return head + "Matrix “" + matrix.name() + "” has no table for them; they are left as read.";
        }
        StringBuilder told = new StringBuilder(head)
                .append("If jaws were misread as ")
                .append('“')
                .append(matrix.name())
                .append("” says: ")
                .append(whatIf(pattern))
                .append(". ")
                .append(step(pattern));
        if (pattern.unexplained() > 0) {
            told.append(" ").append(misfit(pattern));
        }
        return told.append(" No interval is claimed.").toString();
    }

    private static String read(AgePattern pattern) {
        return pattern.classes().stream()
                .filter(one -> one.read().counted() > 0)
                .map(one -> one.read().detected() + " of " + one.read().counted() + " " + plural(one.ageClass()) + " ("
                        + Words.percent(one.read().prevalence(), one.read().counted()) + ")")
                .collect(Collectors.joining(", "));
    }

    private static String whatIf(AgePattern pattern) {
        return pattern.classes().stream()
                .map(one -> animals(one.whatIf().detected()) + " of "
                        + animals(one.whatIf().counted()) + " " + plural(one.ageClass()) + " ("
                        + share(one.whatIf()) + ")")
                .collect(Collectors.joining(", "));
    }

    private static String step(AgePattern pattern) {
        AgePattern.Between step = pattern.step();
        if (step.read() == null || step.whatIf() == null) {
            return "Adults and yearlings cannot be held against each other: one of the classes has nobody.";
        }
        AgePattern.Between ratio = pattern.ratio();
        return "From yearlings to adults prevalence would change by " + points(step.whatIf())
                + " percentage points instead of " + points(step.read())
                + (ratio.read() == null || ratio.whatIf() == null
                        ? "."
                        : "; adults would have " + number(ratio.whatIf())
                                + " times the prevalence of yearlings instead of " + number(ratio.read()) + " times.");
    }

    /** What the equations would have asked for, where it cannot be. */
    private static String misfit(AgePattern pattern) {
        if (pattern.sex().equals("ALL")) {
            return "The matrix does not fit every sex exactly: " + few(pattern.unexplained())
                    + " would have been read otherwise.";
        }
        String below =
                pattern.classes().stream().flatMap(one -> below(one).stream()).collect(Collectors.joining(" and "));
        return "Solved as it stands the matrix would put " + below
                + ", which cannot be. Shown are the counts of 0 or more under which these readings are most likely; even"
                + " under them " + few(pattern.unexplained()) + " would have been read otherwise.";
    }

    private static List<String> below(ClassFigures one) {
        List<String> below = new ArrayList<>();
        double detected = one.solution().detected();
        double other = one.solution().counted() - detected;
        if (detected < 0) {
            below.add(small(detected) + " animals in which it was detected among " + plural(one.ageClass()));
        }
        if (other < 0) {
            below.add(small(other) + " others among " + plural(one.ageClass()));
        }
        return below;
    }

    static List<String> assumptions(ErrorMatrix matrix) {
        List<String> assumptions = new ArrayList<>();
        boolean bySex = matrix.tables().size() > 1;
        assumptions.add("Misreading hangs on the true age class" + (bySex ? " and the sex" : "")
                + " alone: not on whether the animal is infected" + (bySex ? "" : ", nor on its sex")
                + ", nor on reader, station or season.");
        assumptions.add("The readers of these animals err as those behind the matrix did.");
        assumptions.add(
                "Every age class was read from teeth. An age known from a mark or told by cementum is treated as if"
                        + " it were read so too.");
        assumptions.add("Animals of unknown age stay as they are; nobody is moved into or out of them.");
        assumptions.add(
                "The matrix is taken as exact and the counts as they are: neither its error nor chance is carried on,"
                        + " so no interval is claimed.");
        return assumptions;
    }

    static List<String> notes(PrevalenceReport here) {
        List<String> notes = new ArrayList<>();
        notes.add(
                "A what-if, not a correction: it shows how far ageing error of this size could bend the age pattern. Quote the"
                        + " prevalence as read.");
        notes.add(
                "Counts by read class are taken as the true counts passed through the matrix (row: true class, column: read"
                        + " class) and taken back, animals with a detection and the others each by themselves. Source: "
                        + Misclassification.SOURCE + ".");
        notes.add(
                "\"Read again\" goes the other way: if the classes as read were the true ones, what readers with this error"
                        + " would have told of them. Error blurs a pattern, so differences usually shrink.");
        notes.add("A class below one animal in the what-if has no percentage.");
        here.notes().stream().filter(note -> !note.contains("interval")).forEach(notes::add);
        return notes;
    }

    static List<String> warnings(
            PrevalenceReport here, ErrorMatrix matrix, List<AgePattern> patterns, double condition) {
        List<String> warnings = new ArrayList<>();
        if (matrix.kind().equals(ErrorMatrix.STATED)) {
            warnings.add("The matrix is stated, not measured: " + matrix.source() + ".");
        }
        matrix.tables()
                .forEach(table -> table.rows().stream()
                        .filter(row -> row.readings() != null && row.readings() < FEW)
                        .forEach(row -> warnings.add("Few: how " + plural(row.trueClass()) + " are read rests on "
                                + row.readings() + (row.readings() == 1 ? " reading" : " readings")
                                + (row.jaws() == null ? "" : " of " + row.jaws() + (row.jaws() == 1 ? " jaw" : " jaws"))
                                + ". One more could change the what-if.")));
        if (condition > HARDLY) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "By this matrix readers hardly tell the classes apart (condition %.1f): small changes of the counts change"
                            + " the what-if a lot.",
                    condition));
        }
        if (patterns.stream().anyMatch(pattern -> pattern.unexplained() >= MISFIT)) {
            warnings.add(
                    "The matrix does not fit all of these readings; the sentences say where and by how many animals.");
        }
        patterns.stream()
                .filter(pattern -> pattern.way() == Way.AS_READ)
                .forEach(pattern ->
                        warnings.add("The matrix has no table for " + pattern.sexWords() + "; they are left as read."));
        warnings.addAll(here.warnings());
        return warnings;
    }

    /** One decimal, as nobody is told to be a hundredth of a deer. */
    static String animals(double count) {
        return String.format(Locale.ROOT, "%,.1f", count);
    }

    /** The what-if's prevalence with no more digits than its animals carry. */
    static String share(WhatIf one) {
        return one.prevalence() == null
                ? "fewer than one animal"
                : Words.percent(one.prevalence(), (int) Math.floor(one.counted()));
    }

    private static String few(double count) {
        return count < 0.1 ? "less than a tenth of an animal" : animals(count) + " animals";
    }

    /** Percentage points with one decimal, a minus before what is below 0. */
    static String points(double points) {
        String text = String.format(Locale.ROOT, "%.1f", Math.abs(points));
        return points < 0 && !text.equals("0.0") ? "−" + text : text;
    }

    static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    /** A count below 0; one that would round to 0 is told in words. */
    static String small(double below) {
        if (Math.abs(below) < 0.005) {
            return "slightly fewer than 0";
        }
        return "−" + String.format(Locale.ROOT, Math.abs(below) < 0.1 ? "%.2f" : "%.1f", Math.abs(below));
    }

    /** {@code ADULT} as "adults". */
    static String plural(String ageClass) {
        return ageClass.toLowerCase(Locale.ROOT) + "s";
    }
}
