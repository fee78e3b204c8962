package org.dentary.statistics;

import java.util.ArrayList;
import java.util.List;

/**
 * True prevalence behind an apparent one, given how the test errs. The apparent prevalence always belongs beside it.
 *
 * @param apparent detected / tested; null when nothing was tested
 * @param raw Rogan and Gladen's estimate as computed, possibly outside [0, 1]
 * @param estimate {@code raw} cut to [0, 1]
 * @param lower lower limit in [0, 1]
 * @param upper upper limit in [0, 1]
 * @param truncated true when {@code raw} lay outside [0, 1]
 * @param standardError Rogan and Gladen's, of {@code raw}
 * @param sensitivity as given or as estimated
 * @param specificity as given or as estimated
 */
public record TruePrevalence(
        Double apparent,
        Double raw,
        Double estimate,
        Double lower,
        Double upper,
        boolean truncated,
        Double standardError,
        double sensitivity,
        double specificity,
        String method,
        String source,
        List<String> warnings) {

    private static final String ROGAN_GLADEN = "Rogan & Gladen 1978, Am J Epidemiol 107:71-76";
    private static final String REICZIGEL = "Reiczigel, Foldi & Ozsvari 2010, Epidemiol Infect 138:1674-1678";
    private static final String LANG_REICZIGEL = "Lang & Reiczigel 2014, Prev Vet Med 113:13-22";
    private static final String NO_BETTER_THAN_CHANCE =
            "sensitivity + specificity must exceed 1; this test is no better than chance";

    /** Guards sensitivity + specificity - 1 against rounding. */
    private static final double NOTHING = 1e-12;

    /** A validation study: {@code truePositives} of {@code infected} animals, {@code trueNegatives} of {@code uninfected} ones. */
    public record Validation(int truePositives, int infected, int trueNegatives, int uninfected) {}

    /**
     * Sensitivity and specificity known without error: exact (Blaker) limits of the apparent prevalence, carried over.
     *
     * @throws OutOfDomain when {@code detected} exceeds {@code tested} or is below 0, a fraction is not in [0, 1], the two do not
     *     exceed 1 together, or {@code confidence} is not in (0, 1)
     */
    public static TruePrevalence known(
            int detected, int tested, double sensitivity, double specificity, double confidence) {
        Domain.counts("detected", detected, "tested", tested);
        Domain.probability("sensitivity", sensitivity);
        Domain.probability("specificity", specificity);
        Domain.confidence(confidence);
        double gain = gain(sensitivity, specificity);
        String method = "Rogan-Gladen, Blaker limits of the apparent prevalence carried over (Reiczigel)";
        String source = ROGAN_GLADEN + "; " + REICZIGEL;
        if (tested == 0) {
            return notSampled(sensitivity, specificity, method, source);
        }
        double apparent = (double) detected / tested;
        Limits limits = ProportionLimits.of(detected, tested, IntervalMethod.BLAKER, confidence);
        double error = Math.sqrt(apparent * (1 - apparent) / tested) / gain;
        return of(
                apparent,
                (apparent + specificity - 1) / gain,
                new Limits((limits.lower() + specificity - 1) / gain, (limits.upper() + specificity - 1) / gain),
                error,
                sensitivity,
                specificity,
                method,
                source,
                List.of());
    }

    /**
     * Sensitivity and specificity estimated by a validation study, whose own uncertainty enters the interval. Studied by its authors
     * for levels .90 to .99 and sensitivity and specificity of at least .5; the interval is not centred on the estimate.
     *
     * @throws OutOfDomain as {@link #known}, and when a validation count exceeds its group or a group is empty
     */
    public static TruePrevalence estimated(int detected, int tested, Validation validation, double confidence) {
        Domain.counts("detected", detected, "tested", tested);
        Domain.atLeast(1, "infected", validation.infected());
        Domain.counts("truePositives", validation.truePositives(), "infected", validation.infected());
        Domain.atLeast(1, "uninfected", validation.uninfected());
        Domain.counts("trueNegatives", validation.trueNegatives(), "uninfected", validation.uninfected());
        Domain.confidence(confidence);
        double sensitivity = (double) validation.truePositives() / validation.infected();
        double specificity = (double) validation.trueNegatives() / validation.uninfected();
        double gain = gain(sensitivity, specificity);
        String method = "Rogan-Gladen, Lang-Reiczigel limits";
        String source = ROGAN_GLADEN + "; " + LANG_REICZIGEL;
        if (tested == 0) {
            return notSampled(sensitivity, specificity, method, source);
        }
        double apparent = (double) detected / tested;
        double raw = (apparent + specificity - 1) / gain;
        double error = Math.sqrt(apparent * (1 - apparent) / tested
                        + raw * raw * sensitivity * (1 - sensitivity) / validation.infected()
                        + (1 - raw) * (1 - raw) * specificity * (1 - specificity) / validation.uninfected())
                / gain;
        Limits limits = langReiczigel(detected, tested, validation, Normal.z(confidence));
        List<String> reasons = limits.defined()
                ? List.of()
                : List.of("No limits: the validation study is too small to show a test better than chance.");
        return of(apparent, raw, limits, error, sensitivity, specificity, method, source, reasons);
    }

    /** As the authors' script computes it, with (1 - TP')^2 in the variance. */
    private static Limits langReiczigel(int detected, int tested, Validation validation, double z) {
        double zz = z * z;
        double n = tested + zz;
        double apparent = (detected + zz / 2) / n;
        double nSe = validation.infected() + 2.0;
        double nSp = validation.uninfected() + 2.0;
        double se = (validation.truePositives() + 1) / nSe;
        double sp = (validation.trueNegatives() + 1) / nSp;
        double gain = se + sp - 1;
        if (gain <= NOTHING) {
            return Limits.UNDEFINED;
        }
        double truth = (apparent + sp - 1) / gain;
        double seVariance = se * (1 - se) / nSe;
        double spVariance = sp * (1 - sp) / nSp;
        double shift = 2 * zz * (truth * seVariance - (1 - truth) * spVariance);
        double half = z
                * Math.sqrt(apparent * (1 - apparent) / n
                        + truth * truth * seVariance
                        + (1 - truth) * (1 - truth) * spVariance)
                / gain;
        return new Limits(truth + shift - half, truth + shift + half);
    }

    private static double gain(double sensitivity, double specificity) {
        double gain = sensitivity + specificity - 1;
        if (gain <= NOTHING) {
            throw new OutOfDomain(
                    "sensitivity", sensitivity, NO_BETTER_THAN_CHANCE + " (specificity = " + specificity + ")");
        }
        return gain;
    }

    private static TruePrevalence notSampled(double sensitivity, double specificity, String method, String source) {
        return new TruePrevalence(
                null,
                null,
                null,
                null,
                null,
                false,
                null,
                sensitivity,
                specificity,
                method,
                source,
                List.of("Not sampled: nothing was tested, so there is no estimate."));
    }

    private static TruePrevalence of(
            double apparent,
            double raw,
            Limits limits,
            double error,
            double sensitivity,
            double specificity,
            String method,
            String source,
            List<String> reasons) {
        List<String> warnings = new ArrayList<>(reasons);
        if (raw < 0) {
            warnings.add("Apparent prevalence below the false-positive rate: the estimate is cut to 0.");
        }
        if (raw > 1) {
            warnings.add(
                    "Apparent prevalence above the sensitivity: the estimate is cut to 1; sensitivity and specificity do not fit these data.");
        }
        return new TruePrevalence(
                apparent,
                raw,
                cut(raw),
                limits.defined() ? cut(limits.lower()) : null,
                limits.defined() ? cut(limits.upper()) : null,
                raw < 0 || raw > 1,
                error,
                sensitivity,
                specificity,
                method,
                source,
                List.copyOf(warnings));
    }

    private static double cut(double fraction) {
        return Math.min(1, Math.max(0, fraction));
    }
}
