package org.dentary.prevalence.detection;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.dentary.prevalence.question.ReportQuestion;

/** What a reader must know beside the figures, in sentences with their sources. */
final class ChanceNotes {
    private static final String NO_PROOF =
            "None detected is not proof that the disease is absent. Handle every animal as if it could carry it.";

    private ChanceNotes() {}

    static List<String> notes(ReportQuestion question) {
        List<String> notes = new ArrayList<>();
        notes.add(
                "Tested: animals with a final laboratory finding on accepted tissue, counted as in the prevalence report."
                        + " The unit is the animal; inconclusive, unsuitable, untested and pending animals are not tested.");
        notes.add("Probability of detection: that at least one of the tested would have been detected, had the design"
                + " prevalence been reached. With a herd size exact (hypergeometric, P* x herd rounded down, at least 1); without,"
                + " 1 - (1 - P* x sensitivity)^n. (Cannon & Roe 1982, Livestock Disease Surveys; Cannon 2001, Prev Vet Med"
                + " 49:141-163)");
        notes.add("Upper limit at none detected: one-sided at " + ChanceWords.share(question.confidence())
                + ", (1 - (1 - confidence)^(1/n)) / sensitivity (Hanley & Lippman-Hand 1983, JAMA 249:1743-1745). Intervals of"
                + " the prevalence report are two-sided: the two are not to be mixed.");
        notes.add(
                "Probability that prevalence is below P*: Bayes' rule over the seasons since the unit was first sampled, with"
                        + " the risk of introduction between two (Martin, Cameron & Greiner 2007, Prev Vet Med 79:71-97). Prior and"
                        + " risk of introduction are judgments of the plan.");
        notes.add(
                "All of it holds for a random sample from a well-mixed unit. Hunters' animals are no random sample, and the"
                        + " disease clusters: with it in 1 of 21 units, 2,000 to 6,000 samples statewide detected it only 46 to 72 % of"
                        + " the time (Diefenbach, Rosenberry & Boyd 2004, Wildl Soc Bull 32:267). So there is no figure for several"
                        + " units together.");
        notes.add(
                "Risk weights, where the plan has cited ones, hold before the first detection only (Walsh & Miller 2010, J"
                        + " Wildl Dis 46:118-135). An animal of unknown class earns the lowest weight it may have.");
        if (question.cut() != null) {
            notes.add("Seasons before stand as they were when the cut was made.");
        }
        return notes;
    }

    /** @param reviewed those that go with every report on the disease */
    static List<String> cautions(List<String> reviewed) {
        return Stream.concat(Stream.of(NO_PROOF), reviewed.stream()).toList();
    }

    static List<String> warnings(ReportQuestion question, Sample all, boolean incomplete) {
        List<String> warnings = new ArrayList<>(question.scope().warnings());
        if (incomplete) {
            warnings.add("Incomplete: " + ChanceWords.count(all.pending()) + " results are pending beside "
                    + ChanceWords.count(all.tested())
                    + " known. Detections take longer to confirm, so what is known so far leans towards none.");
        }
        Integer nowhere = all.testedBy(SampledGroup::unit).get("UNKNOWN");
        if (nowhere != null) {
            warnings.add(ChanceWords.count(nowhere)
                    + " tested have no management unit and count for none; put their unit" + " right under Animals.");
        }
        return warnings;
    }
}
