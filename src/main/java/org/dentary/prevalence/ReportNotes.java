package org.dentary.prevalence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dentary.plan.PlanService;
import org.dentary.plan.PlanSetting;
import org.dentary.statistics.Proportion;

/** What a reader must know beside the numbers, in sentences. */
record ReportNotes(
        ReportQuestion question,
        List<PrevalenceCell> cells,
        PrevalenceCell total,
        Map<Step, Integer> steps,
        PlanService plan) {
    List<String> notes(List<String> footnotes, int[] sexEvidence) {
        List<String> notes = new ArrayList<>();
        Proportion all = Proportion.of(total.detected(), total.counted(), question.interval(), question.confidence());
        notes.add("Counted: animals with a final laboratory finding on accepted tissue. Detected: a final confirmatory"
                + " detection, or a screening detection where the plan lets it stand. Inconclusive, unsuitable,"
                + " untested and pending animals are not counted; from taken to counted lists them.");
        notes.add(String.format(
                Locale.ROOT,
                "Intervals: %s at %s %% (%s). They describe chance in sampling, not how the animals came to be sampled.",
                all.method(),
                percent(question.confidence()),
                all.source()));
        notes.add("The unit is the animal: both nodes, several tests and two kits of one animal count once.");
        notes.add("Age classes come from tooth replacement and wear as the plan's key reads them, or from a designated"
                + " age; unknown age and sex have rows of their own.");
        if (!question.filter().values().containsKey(LineColumn.MANAGEMENT_UNIT)) {
            notes.add("A figure over several units is of the deer tested, not of the herd: units are not sampled in"
                    + " proportion to their deer.");
        }
        if (total.counted() > 0 && total.detected() == 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "None detected does not show absence: the upper limit is %.1f %%.",
                    100 * total.upper()));
        }
        if (sexEvidence[0] > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "Sex rests on head, tag or report alone in %d of %d counted animals.",
                    sexEvidence[0],
                    sexEvidence[1]));
        }
        unknownAge(notes);
        notes.addAll(footnotes);
        return notes;
    }

    private void unknownAge(List<String> notes) {
        int unknown = cells.stream()
                .filter(cell -> "UNKNOWN".equals(cell.group().get("ageClass")))
                .mapToInt(PrevalenceCell::counted)
                .sum();
        double limit = plan.settings()
                .share(PlanSetting.UNKNOWN_AGE_NOTE_SHARE, question.season(), null, null)
                .doubleValue();
        if (total.counted() > 0 && (double) unknown / total.counted() > limit) {
            notes.add(String.format(
                    Locale.ROOT,
                    "Age class is unknown in %d of %d counted animals, more than the plan's %s %%; the rows by age class"
                            + " leave them out.",
                    unknown,
                    total.counted(),
                    percent(limit)));
        }
    }

    List<String> warnings(boolean incomplete, Double pendingShare) {
        List<String> warnings = new ArrayList<>(question.scope().warnings());
        if (incomplete) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "Incomplete: %.0f %% of results are pending. Detections take longer to confirm, so an early figure"
                            + " tends to be too low.",
                    100 * pendingShare));
        }
        if (total.counted() == 0) {
            warnings.add("Nobody is counted yet: there is no figure.");
        }
        return warnings;
    }

    List<String> cautions() {
        return List.of(
                "A laboratory result here is surveillance information, not a food-safety inspection. Decide about meat on"
                        + " your health agency's current advice.",
                "Age from teeth is an estimate; do not use it for enforcement or prizes.",
                "The laboratory's and the health agency's own reports and protocols stand above this table.");
    }

    private static String percent(double share) {
        String text = String.format(Locale.ROOT, "%.2f", 100 * share);
        return text.replaceFirst("\\.?0+$", "");
    }
}
