package org.dentary.prevalence.truth;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.plan.PlanService;
import org.dentary.plan.TestMethodView;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.performance.PerformanceSet;
import org.dentary.statistics.TruePrevalence;

/** What a reader must know beside the numbers, in sentences. */
record TruthWords(PrevalenceReport report, PerformanceSet set, Tested tested, Map<String, String> methodNames) {
    /** One cell in words; its figures have no more digits than the counted carry. */
    static String sentence(int detected, int counted, TruePrevalence truth, double confidence, int otherwise) {
        String told = sentence(detected, counted, truth, confidence);
        if (counted == 0 || otherwise == 0) {
            return told;
        }
        return told
                + (otherwise == counted
                        ? " None of them was tested by what the set speaks of: the figure takes another test for it."
                        : " " + otherwise + (otherwise == 1 ? " of them was" : " of them were")
                                + " not tested by what the set speaks of.");
    }

    private static String sentence(int detected, int counted, TruePrevalence truth, double confidence) {
        if (counted == 0) {
            return "Not sampled: nobody was counted, so there is no estimate.";
        }
        String told = "Detected in " + detected + " of " + counted + " counted ("
                + Words.percent(truth.apparent(), counted) + "). True prevalence "
                + share(truth.estimate(), counted)
                + (truth.lower() == null
                        ? " (no interval: the study behind the set is too small to show a test better than chance)"
                        : " (" + level(confidence) + " interval " + share(truth.lower(), counted) + " to "
                                + share(truth.upper(), counted) + ")");
        if (truth.raw() < 0) {
            return told + ": apparent prevalence below the false-positive rate of "
                    + rate(1 - truth.specificity()) + ", before it was cut to 0 the estimate was "
                    + share(truth.raw(), counted) + ".";
        }
        if (truth.raw() > 1) {
            return told + ": apparent prevalence above the sensitivity of " + rate(truth.sensitivity())
                    + ", before it was cut to 100 % the estimate was " + share(truth.raw(), counted)
                    + "; the set does not fit these animals.";
        }
        return told + ".";
    }

    /** A share as a percentage; empty for none. */
    static String share(Double share, int counted) {
        return Words.percent(share, counted).replace('-', '−');
    }

    /** {@code 95 %}. */
    static String level(double confidence) {
        return rate(confidence);
    }

    private static String rate(double share) {
        return String.format(Locale.ROOT, "%.4f", 100 * share).replaceFirst("\\.?0+$", "") + " %";
    }

    /**
     * What a set speaks of: {@code Immunohistochemistry on obex}.
     *
     * @param names names of test methods by code; a code without one is told as it is
     */
    static String tests(PerformanceSet set, Map<String, String> names) {
        return set.methods().stream()
                        .map(method -> names.getOrDefault(method, method))
                        .collect(Collectors.joining(" or "))
                + " on "
                + set.tissues().stream().map(TruthWords::tissue).collect(Collectors.joining(" or "));
    }

    /** Names of the plan's test methods by code. */
    static Map<String, String> methodNames(PlanService plan) {
        return plan.methods().stream().collect(Collectors.toMap(TestMethodView::code, TestMethodView::name));
    }

    /** What the animals had: {@code Immunohistochemistry on obex (12 animals)}, most first. */
    static String tests(Tested tested) {
        String tests = tested.tests().stream()
                .map(test -> test.methodName() + " on " + tissue(test.tissue()) + (test.pool() ? " in a pool" : "")
                        + " (" + animals(test.animals()) + ")")
                .collect(Collectors.joining(", "));
        return tests.isEmpty() ? "no final finding on record" : tests;
    }

    static String tissue(String code) {
        return Words.of(code).toLowerCase(Locale.ROOT);
    }

    private static String animals(int animals) {
        return animals == 1 ? "1 animal" : animals + " animals";
    }

    List<PrevalenceReport.Method> methods() {
        List<PrevalenceReport.Method> methods = new ArrayList<>(report.methods());
        TruePrevalence any = set.truth(0, 0, report.confidence());
        methods.add(new PrevalenceReport.Method("True prevalence: " + any.method(), any.source()));
        methods.add(new PrevalenceReport.Method(
                "Test performance: " + set.name() + ", set " + set.code() + ", " + seen(), set.source()));
        return methods;
    }

    List<String> notes() {
        List<String> notes = new ArrayList<>();
        notes.add(
                "True prevalence is what share of the counted animals would be found if the tests neither missed an infected"
                        + " animal nor erred in another, as set " + set.code() + " says how often they do: sensitivity "
                        + set.getSensitivityWords() + ", specificity " + set.getSpecificityWords() + ", held against "
                        + set.reference() + ", in " + set.population()
                        + ". It stands beside the apparent prevalence and does"
                        + " not replace it.");
        notes.add(
                set.study() == null
                        ? "Sensitivity and specificity are taken as known without error, so the interval holds the chance in"
                                + " sampling alone and is too narrow by what is not known of the test."
                        : "The interval holds the chance in sampling and that of the study behind sensitivity and"
                                + " specificity; it is not centered on the estimate.");
        if (set.study() != null && isBeyondWhatWasStudied()) {
            notes.add(
                    "Lang and Reiczigel studied their interval for levels of 90 to 99 % and for sensitivity and specificity"
                            + " of at least 0.5; here it is used beyond that, and how often it covers is not known.");
        }
        notes.add(
                "Sensitivity changes with the stage of infection and the genotype: figures of another herd may not hold in"
                        + " this one.");
        if (set.specificity() < 1) {
            notes.add(
                    "The specificity of this set is below 1. Counted detections are confirmed unless a footnote of the"
                            + " prevalence report says otherwise, and a confirmed detection is seldom wrong (common practice"
                            + " takes its specificity as 1, no source): if the set speaks of one test alone, these figures take"
                            + " off too much.");
        }
        notes.add(
                "The figure for all is computed from all counted animals with this one set; rows that were cut at 0 or"
                        + " 100 % do not add up to it. Figures by two sets are never put together.");
        notes.add("Tests that the counted animals had: " + tests(tested) + ".");
        notes.add("Limits of the apparent prevalence are those of the prevalence report; those of the true one rest on"
                + " intervals of their own (Methods).");
        notes.addAll(report.notes());
        return notes;
    }

    List<String> warnings(List<TruthCell> cells) {
        List<String> warnings = new ArrayList<>(report.warnings());
        if (set.sourceSeen() == PerformanceSet.Seen.INVENTED) {
            warnings.add(
                    "Set " + set.code() + " is invented: no figure computed with it says anything about real animals.");
        } else if (set.sourceSeen() == PerformanceSet.Seen.FROM_MEMORY) {
            warnings.add(
                    "The figures of set " + set.code() + " are from memory: look them up in their source before you"
                            + " quote what is computed with them.");
        }
        if (!tested.isWhole()) {
            warnings.add("Set " + set.code() + " speaks of " + tests(set, methodNames) + ". Of " + tested.counted()
                    + " counted animals, " + tested.within() + " were tested by that alone, " + tested.partly()
                    + " by that and otherwise, and " + tested.outside() + " ("
                    + Words.percent((double) tested.outside() / tested.counted(), tested.counted())
                    + ") otherwise only, in a pool, or without a finding on record. The figures below treat all of them as"
                    + " if tested by that alone.");
        }
        long others = cells.stream()
                .filter(cell -> cell.counted() > 0 && cell.testedOtherwise() == cell.counted())
                .count();
        if (others > 0) {
            warnings.add((others == 1 ? "In 1 row nobody was" : "In " + others + " rows nobody was")
                    + " tested by what the set speaks of: the true figures there take another test for it. The column Tested"
                    + " otherwise says how many in each row.");
        }
        long cut = report.cells().stream()
                .filter(cell -> set.truth(cell.detected(), cell.counted(), report.confidence())
                        .truncated())
                .count();
        if (cut > 0) {
            warnings.add((cut == 1 ? "In 1 row the estimate lay" : "In " + cut + " rows the estimate lay")
                    + " outside 0 to 100 % and is cut there; the column Uncut has it as computed.");
        }
        return warnings;
    }

    private boolean isBeyondWhatWasStudied() {
        return report.confidence() < 0.9
                || report.confidence() > 0.99
                || set.sensitivity() < 0.5
                || set.specificity() < 0.5;
    }

    private String seen() {
        return set.getSeenWords();
    }
}
