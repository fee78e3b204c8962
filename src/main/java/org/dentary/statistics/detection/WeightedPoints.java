package org.dentary.statistics.detection;

import java.util.ArrayList;
import java.util.List;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * Risk-weighted surveillance before first detection: each animal tested earns its class's relative risk in points. No weights live here;
 * they are the caller's, with their citation. The two conventions give different answers and are never mixed.
 *
 * @param convention POPULATION_MEAN when every class has a population share, else REFERENCE_CLASS
 * @param points of that convention
 * @param required of that convention
 * @param probability of that convention
 * @param referenceClass design prevalence meant as that of the class with relative risk 1
 * @param populationMean design prevalence meant as that of the whole herd; null without population shares
 * @param unweighted animals tested in classes without a relative risk: they earn nothing
 */
public record WeightedPoints(
        Convention convention,
        double points,
        Double required,
        double probability,
        Tally referenceClass,
        Tally populationMean,
        long unweighted,
        String method,
        String source,
        List<String> warnings) {

    /** What the design prevalence is the prevalence of. */
    public enum Convention {
        REFERENCE_CLASS,
        POPULATION_MEAN
    }

    /**
     * @param tested animals tested with a definite result, 0 or more
     * @param relativeRisk 0 or more, 1 for the reference class; null when there is none
     * @param populationShare the class's share of the herd in [0, 1]; null when not known, and then for all classes
     */
    public record RiskClass(String label, int tested, Double relativeRisk, Double populationShare) {}

    /**
     * @param points sum of tested times relative risk
     * @param required points at which the chance of detection reaches the level, -ln(1 - C) / (Se P)
     * @param probability chance of at least one detection, 1 - product of (1 - Se min(1, P relative risk))^tested
     * @param upperLimit highest prevalence that none detected leaves open, -ln(1 - C) / (Se points); null without points
     */
    public record Tally(double points, double required, double probability, Double upperLimit) {}

    private static final String METHOD = "Risk-weighted points";
    private static final String SOURCE =
            "Walsh & Miller 2010, J Wildl Dis 46:118-135; population mean: Martin, Cameron & Greiner 2007, Prev Vet Med 79:71-97";

    /** Population shares may miss 1 by this much. */
    private static final double SHARE_ROUNDING = 0.001;

    /**
     * @throws OutOfDomain when there is no class; design prevalence or sensitivity is not in (0, 1]; {@code confidence} is not in
     *     (0, 1); a count or relative risk is below 0; or population shares are given for some classes only, do not add up to 1, or
     *     lie on classes without risk alone
     */
    public static WeightedPoints of(
            double designPrevalence, double sensitivity, double confidence, List<RiskClass> classes) {
        Domain.positiveProbability("designPrevalence", designPrevalence);
        Domain.positiveProbability("sensitivity", sensitivity);
        Domain.confidence(confidence);
        Domain.notEmpty("classes", classes);
        check(classes);
        boolean shares = classes.stream().allMatch(c -> c.populationShare() != null);
        Tally reference = tally(classes, 1, designPrevalence, sensitivity, confidence);
        Tally mean = shares ? tally(classes, meanRisk(classes), designPrevalence, sensitivity, confidence) : null;
        Tally shown = shares ? mean : reference;
        long unweighted = classes.stream()
                .filter(c -> c.relativeRisk() == null)
                .mapToLong(RiskClass::tested)
                .sum();
        return new WeightedPoints(
                shares ? Convention.POPULATION_MEAN : Convention.REFERENCE_CLASS,
                shown.points(),
                shown.required(),
                shown.probability(),
                reference,
                mean,
                unweighted,
                METHOD,
                SOURCE,
                warnings(classes, unweighted, shares, designPrevalence, shown));
    }

    private static void check(List<RiskClass> classes) {
        long withShare =
                classes.stream().filter(c -> c.populationShare() != null).count();
        for (int i = 0; i < classes.size(); i++) {
            RiskClass one = classes.get(i);
            String at = "classes[" + i + "].";
            Domain.count(at + "tested", one.tested());
            if (one.relativeRisk() != null) {
                Domain.notBelowZero(at + "relativeRisk", one.relativeRisk());
            }
            if (one.populationShare() != null) {
                Domain.probability(at + "populationShare", one.populationShare());
            } else if (withShare > 0) {
                throw new OutOfDomain(at + "populationShare", "null", "must be given for all classes or for none");
            }
        }
        double sum = classes.stream()
                .filter(c -> c.populationShare() != null)
                .mapToDouble(RiskClass::populationShare)
                .sum();
        if (withShare > 0 && Math.abs(sum - 1) > SHARE_ROUNDING) {
            throw new OutOfDomain(
                    "classes[0].populationShare",
                    classes.get(0).populationShare(),
                    "the shares must add up to 1, not " + sum);
        }
        if (withShare > 0 && meanRisk(classes) == 0) {
            throw new OutOfDomain(
                    "classes[0].relativeRisk",
                    classes.get(0).relativeRisk(),
                    "a class with a population share must have a relative risk above 0");
        }
    }

    private static double risk(RiskClass one) {
        return one.relativeRisk() == null ? 0 : one.relativeRisk();
    }

    private static double meanRisk(List<RiskClass> classes) {
        return classes.stream().mapToDouble(c -> risk(c) * c.populationShare()).sum();
    }

    private static Tally tally(
            List<RiskClass> classes, double scale, double designPrevalence, double sensitivity, double confidence) {
        double points = 0;
        double logMiss = 0;
        for (RiskClass one : classes) {
            double risk = risk(one) / scale;
            points += one.tested() * risk;
            if (one.tested() > 0) {
                logMiss += one.tested() * Math.log1p(-sensitivity * Math.min(1, designPrevalence * risk));
            }
        }
        double needed = -Math.log1p(-confidence) / sensitivity;
        return new Tally(
                points,
                needed / designPrevalence,
                logMiss == 0 ? 0 : -Math.expm1(logMiss),
                points == 0 ? null : Double.valueOf(needed / points));
    }

    private static List<String> warnings(
            List<RiskClass> classes, long unweighted, boolean shares, double designPrevalence, Tally shown) {
        List<String> warnings = new ArrayList<>();
        if (unweighted > 0) {
            warnings.add(unweighted + " tested have no relative risk and earn no points.");
        }
        double scale = shares ? meanRisk(classes) : 1;
        if (classes.stream().anyMatch(c -> designPrevalence * risk(c) / scale > 1)) {
            warnings.add("Prevalence in a class is capped at 1: design prevalence times its relative risk exceeds 1.");
        }
        if (shown.points() == 0) {
            warnings.add("No points: nothing is ruled out.");
        }
        warnings.add("Weights hold only before the first detection.");
        return List.copyOf(warnings);
    }
}
