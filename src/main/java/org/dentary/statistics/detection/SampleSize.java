package org.dentary.statistics.detection;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * How many to test so that an infected herd is found out. Holds for one well-mixed herd sampled at random, and for a test without false
 * detections.
 *
 * @param required the smallest sample whose chance of detection reaches the level; null when a census does not
 * @param infected infected animals assumed
 * @param achieved chance of detection of {@code required}, or of a census when that is null
 * @param cannonRoe Cannon and Roe's approximation, which assumes a perfect test; shown beside published tables, never used
 * @param withSensitivity the approximation (N / Se)(1 - (1 - C)^(1/d)); null when it exceeds the herd
 * @param infinitePopulation ln(1 - C) / ln(1 - P Se), for a herd much larger than the sample
 */
public record SampleSize(
        Integer required,
        int infected,
        double achieved,
        int cannonRoe,
        Integer withSensitivity,
        int infinitePopulation,
        String method,
        String source,
        List<String> warnings) {

    private static final String METHOD = "Exact hypergeometric";
    private static final String SOURCE = "Cannon & Roe 1982, Livestock Disease Surveys (approximation); "
            + "MacDiarmid 1988, Prev Vet Med 5:283-289 and Cannon 2001, Prev Vet Med 49:141-163 (with sensitivity)";

    /** A chance of detection this close below the level counts as reaching it, so that 1 of 2 reaches 0.5. */
    private static final double ROUNDING = 1e-12;

    /**
     * With a whole number infected.
     *
     * @throws OutOfDomain when {@code infected} is 0, {@code sensitivity} is not in (0, 1] or {@code confidence} not in (0, 1)
     */
    public static SampleSize of(Herd herd, double sensitivity, double confidence) {
        return of(herd, herd.infected(), herd.prevalence(), sensitivity, confidence);
    }

    /**
     * With a design prevalence in (0, 1]. The exact answer takes {@code designPrevalence x population} rounded down, at least 1; the
     * approximations take the fraction, as published tables do.
     *
     * @throws OutOfDomain as {@link #of(Herd, double, double)} and {@link Herd#atDesignPrevalence}
     */
    public static SampleSize of(int population, double designPrevalence, double sensitivity, double confidence) {
        Herd herd = Herd.atDesignPrevalence(population, designPrevalence);
        return of(herd, Math.max(1, designPrevalence * population), designPrevalence, sensitivity, confidence);
    }

    private static SampleSize of(
            Herd herd, double fractionalInfected, double prevalence, double sensitivity, double confidence) {
        Domain.atLeast(1, "infected", herd.infected());
        Domain.positiveProbability("sensitivity", sensitivity);
        Domain.confidence(confidence);
        List<String> warnings = new ArrayList<>();
        double census = herd.detection(herd.population(), sensitivity);
        Integer required = census >= confidence - ROUNDING ? smallest(herd, sensitivity, confidence) : null;
        if (required == null) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "Unattainable: a census of this herd with this test cannot reach %s %%; it reaches %.1f %%.",
                    percent(confidence),
                    100 * census));
        }
        if (Math.abs(fractionalInfected - herd.infected()) > ROUNDING * herd.population()) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "The design prevalence means %.2f infected; the exact answer takes %d, the approximations the fraction.",
                    fractionalInfected,
                    herd.infected()));
        }
        double share = -Math.expm1(Math.log1p(-confidence) / fractionalInfected);
        double withSensitivity = Math.ceil(herd.population() / sensitivity * share - ROUNDING * herd.population());
        if (sensitivity < 1) {
            warnings.add("Cannon and Roe's approximation assumes a perfect test.");
        }
        return new SampleSize(
                required,
                herd.infected(),
                required == null ? census : herd.detection(required, sensitivity),
                (int) Math.ceil(
                        share * (herd.population() - (fractionalInfected - 1) / 2) - ROUNDING * herd.population()),
                withSensitivity > herd.population() ? null : Integer.valueOf((int) withSensitivity),
                infinite(prevalence * sensitivity, confidence),
                METHOD,
                SOURCE,
                List.copyOf(warnings));
    }

    /** The chance of detection never falls as more are tested. */
    private static int smallest(Herd herd, double sensitivity, double confidence) {
        int low = 1;
        int high = herd.population();
        while (low < high) {
            int middle = low + (high - low) / 2;
            if (herd.detection(middle, sensitivity) >= confidence - ROUNDING) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    static int infinite(double detectedShare, double confidence) {
        if (detectedShare >= 1) {
            return 1;
        }
        double n = Math.log1p(-confidence) / Math.log1p(-detectedShare);
        return (int) Math.min(Integer.MAX_VALUE, Math.ceil(n - 1e-9));
    }

    private static String percent(double fraction) {
        String text = String.format(Locale.ROOT, "%.4f", 100 * fraction);
        return text.replaceAll("\\.?0+$", "");
    }
}
