package org.dentary.prevalence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.dentary.cautions.Hazard;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.UnitView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.cut.DataCutView;
import org.dentary.prevalence.linelist.LineColumn;
import org.dentary.prevalence.question.Dimension;
import org.dentary.prevalence.question.ReportQuestion;
import org.dentary.statistics.IntervalMethod;

/**
 * What a reader must know beside the numbers, in sentences; each that a figure needs to be quoted is there.
 *
 * @param sex counted animals whose sex rests on no bodily evidence
 * @param unknownSex counted animals without a sex
 * @param ages what the known ages rest on
 */
record ReportNotes(
        ReportQuestion question,
        PrevalenceCell total,
        PrevalenceReport.Share sex,
        int unknownSex,
        PrevalenceReport.UnknownAge unknownAge,
        AgeBasis ages,
        PlanService plan,
        ReportCautions reviewed,
        DataCutView cut) {
    /** Above this share of the herd a sample's interval ignores too much (common practice, no source). */
    private static final double SMALL_PART = 0.1;

    /** What a coded footnote says of so many animals; a code that this release does not know is told as it is. */
    static PrevalenceReport.Footnote footnote(PrevalenceQueries.Marked marked) {
        String animals = marked.animals() == 1 ? "1 counted animal" : marked.animals() + " counted animals";
        String text = switch (marked.code()) {
            case "POOL" ->
                animals + ": tissue was tested only together with other animals'; nothing was detected in the"
                        + " pool, and the plan lets that stand for each animal in it.";
            case "SCREENING_ALONE" ->
                animals + ": detected by screening alone, without a confirmatory test; the plan lets that stand.";
            case "IDENTITY_EXCEPTION" ->
                animals + ": a specimen came to the laboratory under a label that did not match, could not be collected"
                        + " again, and was accepted by an identity exception signed by two people.";
            default -> animals + ": " + Words.of(marked.code()) + ".";
        };
        return new PrevalenceReport.Footnote(marked.code(), marked.animals(), text);
    }

    /** Each method with the publication it comes from. */
    List<PrevalenceReport.Method> methods() {
        IntervalMethod interval = question.interval();
        return List.of(
                new PrevalenceReport.Method(
                        "Interval: " + interval.label() + ", two-sided, at " + percent(question.confidence()) + " %",
                        interval.source()),
                new PrevalenceReport.Method(
                        "Prevalence: detected / counted, crude (not standardized to a herd), apparent (not corrected for"
                                + " tests that miss or err)",
                        "common practice, no source"),
                new PrevalenceReport.Method(
                        "Flag below 30 counted",
                        "Parker et al. 2017, NCHS Vital and Health Statistics 2(175); the bound from memory"));
    }

    List<String> notes() {
        List<String> notes = new ArrayList<>();
        notes.add("Counted: animals with a final laboratory finding on accepted tissue. Detected: a final confirmatory"
                + " detection, or a screening detection where the plan lets it stand. Inconclusive, unsuitable,"
                + " untested and pending animals are not counted; from taken to counted lists them.");
        tests(notes);
        notes.add("The unit is the animal: both nodes, several tests and two kits of one animal count once.");
        notes.add("Sampling: origin " + words(question.scope().origin()) + "; source "
                + words(question.scope().mortalitySource()) + "; clinical signs "
                + words(question.scope().clinicalSigns()) + "; basis "
                + words(question.scope().samplingBasis())
                + ". Every other animal is out of scope and in no figure of the table.");
        notes.add(
                "Age classes: fawn under 1 year, yearling from 1 to under 2, adult 2 and over, from tooth replacement and"
                        + " wear as the plan's key reads them, or from a designated age. How readers agree is shown for each"
                        + " reader under Jaws. Unknown age and sex have rows of their own.");
        if (!ages.told().isEmpty()) {
            notes.add(ages.told());
        }
        unknown(notes);
        notes.add(String.format(
                Locale.ROOT,
                "The intervals (%s, %s %%) describe chance in sampling, not how the animals came to be sampled. No"
                        + " correction is made for the size of the herd.",
                question.interval().label(),
                percent(question.confidence())));
        herd(notes);
        notes.add(PrevalenceReport.NOTHING_TESTED);
        dates(notes);
        if (!question.filter().values().containsKey(LineColumn.MANAGEMENT_UNIT)) {
            notes.add("A figure over several units is of the deer tested, not of the herd: units are not sampled in"
                    + " proportion to their deer.");
        }
        if (total.counted() > 0 && total.detected() == 0) {
            notes.add("None detected does not show absence: the upper limit of the " + percent(question.confidence())
                    + " % interval is " + Words.percent(total.upper(), total.counted()) + ".");
        }
        notes.add((cut == null ? "The lines as they are now" : "Data cut " + cut.id()) + "; rules of reports, version "
                + StoredAnswerService.RULE_VERSION + ".");
        return notes;
    }

    /** Of one unit whose herd the plan knows: that so much of it was counted that the binomial interval is too wide. */
    private void herd(List<String> notes) {
        List<String> units = question.filter().values().getOrDefault(LineColumn.MANAGEMENT_UNIT, List.of());
        if (units.size() != 1
                || units.get(0).equals("UNKNOWN")
                || !question.with().isEmpty()) {
            return;
        }
        UnitView unit = plan.unit(units.get(0));
        String size = herdSetting(PlanSetting.HERD_SIZE, unit);
        if (!size.isEmpty() && total.counted() > SMALL_PART * Integer.parseInt(size)) {
            String source = herdSetting(PlanSetting.HERD_SIZE_SOURCE, unit);
            notes.add(total.counted() + " of about " + size + " animals of " + unit.name() + " were counted"
                    + (source.isEmpty() ? "" : " (" + source + ")")
                    + ", more than a tenth of the herd: the intervals are wider than they need be for this herd.");
        }
    }

    private String herdSetting(PlanSetting setting, UnitView unit) {
        return plan.settings()
                .text(setting, question.season(), unit.region(), unit.code())
                .trim();
    }

    private void tests(List<String> notes) {
        String tests = plan.methods().stream()
                .filter(method -> method.disease().equals(question.disease()))
                .map(method -> method.name() + " on "
                        + method.acceptedTissues().stream()
                                .map(tissue -> Words.of(tissue).toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", ")))
                .collect(Collectors.joining("; "));
        if (!tests.isEmpty()) {
            notes.add("Tests and the tissue on which they count, by the plan: " + tests + ".");
        }
    }

    private void dates(List<String> notes) {
        if (!question.with().isEmpty()) {
            notes.add(
                    "Seasons stand side by side. What is added up over them takes them together, and a difference between"
                            + " them may be one of who was sampled: comparisons adjust for age class and sex.");
        }
        question.with().stream().map(one -> plan.season(one.season())).forEach(one -> notes.add(runs(one) + "."));
        SeasonView season = plan.season(question.season());
        String boundaries = plan.units().stream()
                .map(UnitView::boundaryVersion)
                .filter(java.util.Objects::nonNull)
                .distinct()
                .sorted()
                .collect(Collectors.joining(", "));
        notes.add(runs(season)
                + (boundaries.isEmpty()
                        ? "; no boundary of a management unit is on record."
                        : "; boundaries of the management units, edition " + boundaries + "."));
    }

    private static String runs(SeasonView season) {
        return season.name() + " runs from " + Words.day(season.startsOn()) + " to " + Words.day(season.endsOn());
    }

    private void unknown(List<String> notes) {
        if (sex.animals() > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "Sex rests on head, tag or report alone, or on nothing recorded, in %d of %d counted animals (%s).",
                    sex.animals(),
                    sex.of(),
                    Words.percent(sex.share(), sex.of())));
        }
        if (unknownSex > 0) {
            notes.add(String.format(Locale.ROOT, "Sex is unknown in %d of %d counted animals.", unknownSex, sex.of()));
        }
        PrevalenceReport.Share age = unknownAge.total();
        if (unknownAge.aboveThreshold()) {
            notes.add(String.format(
                    Locale.ROOT,
                    "Age class is unknown in %d of %d counted animals (%s), above the share at which the plan asks for"
                            + " this note; the rows by age class leave them out.",
                    age.animals(),
                    age.of(),
                    Words.percent(age.share(), age.of())));
        } else if (age.animals() > 0) {
            notes.add(String.format(
                    Locale.ROOT, "Age class is unknown in %d of %d counted animals.", age.animals(), age.of()));
        }
    }

    List<String> warnings(boolean incomplete, Double pendingShare) {
        List<String> warnings = new ArrayList<>(question.scope().warnings());
        if (incomplete) {
            warnings.add(
                    "Incomplete: " + Words.percent(pendingShare, total.counted() + total.pending())
                            + " of results are pending. Detections take longer to confirm, so an early figure tends to be too low.");
        }
        if (total.counted() == 0) {
            warnings.add("Nobody is counted yet: there is no figure.");
        }
        return warnings;
    }

    /** Those of a report on this disease, those on ageing too where it tells ages. */
    List<String> cautions() {
        return question.by().contains(Dimension.AGE_CLASS)
                ? reviewed.of(question.disease(), Hazard.REPORT, Hazard.AGEING)
                : reviewed.of(question.disease(), Hazard.REPORT);
    }

    private static String words(List<String> codes) {
        return codes.stream()
                .map(code -> Words.of(code).toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(", "));
    }

    private static String percent(double share) {
        String text = String.format(Locale.ROOT, "%.4f", 100 * share);
        return text.replaceFirst("\\.?0+$", "");
    }
}
