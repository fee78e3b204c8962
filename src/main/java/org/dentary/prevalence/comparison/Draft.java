package org.dentary.prevalence.comparison;

import java.util.ArrayList;
import java.util.List;
import org.dentary.statistics.comparison.Holm;

/**
 * A comparison before the number of tests in the answer is known.
 *
 * @param facts the counts, figures and p as sentences
 * @param none the value that says "no difference": 0 for a difference, 1 for a ratio
 * @param shown how the difference goes, as the end of "A difference is shown: ..."
 * @param compatible what else these counts are compatible with, a sentence
 * @param stop the verdict that holds whatever the test says, with {@code shown} as its sentence; or null
 */
record Draft(
        ComparisonKind kind,
        String about,
        List<Group> groups,
        List<Figure> figures,
        List<TestResult> tests,
        String facts,
        double none,
        String shown,
        String compatible,
        Verdict stop,
        List<String> notes) {

    /** Nothing could be compared; {@code why} says what is missing. */
    static Draft not(ComparisonKind kind, String about, List<Group> groups, String why) {
        return new Draft(kind, about, groups, List.of(), List.of(), "", 0, why, "", Verdict.NOT_COMPARED, List.of());
    }

    /** The p that decides, or null where there is no test. */
    private Double p() {
        return tests.isEmpty() || stop == Verdict.NOT_COMPARED
                ? null
                : tests.get(0).p();
    }

    /** How many tests decide in an answer. */
    static int tests(List<Draft> drafts) {
        return (int) drafts.stream().filter(draft -> draft.p() != null).count();
    }

    /** All of them told, each p beside its value adjusted for the number of them (Holm). */
    static List<Comparison> settle(List<Draft> drafts, double confidence) {
        List<Double> p = new ArrayList<>();
        drafts.forEach(draft -> p.add(draft.p()));
        List<Double> adjusted = Holm.adjust(p);
        int tests = tests(drafts);
        List<Comparison> told = new ArrayList<>();
        for (int i = 0; i < drafts.size(); i++) {
            told.add(drafts.get(i).told(adjusted.get(i), tests, confidence));
        }
        return told;
    }

    private Comparison told(Double adjusted, int tests, double confidence) {
        List<TestResult> results = new ArrayList<>(this.tests);
        if (adjusted != null) {
            results.set(0, results.get(0).adjusted(adjusted));
        }
        Verdict verdict = verdict(adjusted, 1 - confidence);
        String sentence = switch (verdict) {
            case NOT_COMPARED, READ_ONE_BY_ONE, ESTIMATE -> (facts + " " + shown).strip();
            case SHOWN -> facts + " " + capital(what()) + " is shown: " + shown + adjustment(adjusted, tests) + ".";
            case NOT_SHOWN -> facts + " " + notShown(adjusted, tests, 1 - confidence);
        };
        return new Comparison(kind, about, groups, figures, results, verdict, sentence, notes);
    }

    private Verdict verdict(Double adjusted, double alpha) {
        if (stop != null) {
            return stop;
        }
        Figure figure = figures.get(0);
        boolean leavesOut = !figure.hasLimits() || figure.leavesOut(none);
        if (this.tests.isEmpty()) {
            return figure.leavesOut(none) ? Verdict.SHOWN : Verdict.NOT_SHOWN;
        }
        return adjusted != null && adjusted < alpha && leavesOut ? Verdict.SHOWN : Verdict.NOT_SHOWN;
    }

    private String notShown(Double adjusted, int tests, double alpha) {
        String end = compatible.isEmpty() ? "" : " " + compatible;
        Double p = p();
        if (p != null && p < alpha && adjusted >= alpha) {
            return "Alone this would be read as " + what() + "; with " + tests
                    + " tests in this answer it is not shown (adjusted p " + Say.p(adjusted) + ")." + end;
        }
        if (p != null
                && p < alpha != figures.get(0).leavesOut(none)
                && figures.get(0).hasLimits()) {
            return "Test and interval do not agree, which happens near the limit: " + what() + " is not shown." + end;
        }
        return "No " + what().replaceFirst("^an? ", "") + " shown, which does not say that there is none." + end;
    }

    private String adjustment(Double adjusted, int tests) {
        return adjusted == null || tests < 2 ? "" : " (p adjusted for " + tests + " tests " + Say.p(adjusted) + ")";
    }

    private String what() {
        return kind == ComparisonKind.AGE_TREND ? "a trend" : "a difference";
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
