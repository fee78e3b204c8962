package org.dentary.statistics.detection;

import java.util.ArrayList;
import java.util.List;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/**
 * The probability that prevalence lies below the design prevalence, followed over periods of surveillance that detect nothing.
 *
 * @param periods in the order given
 * @param equilibriumPrior what the prior settles at if the last period repeats for ever; null when it settles at nothing above 0
 * @param equilibriumPosterior likewise for the posterior
 */
public record Freedom(
        List<Step> periods,
        Double equilibriumPrior,
        Double equilibriumPosterior,
        String method,
        String source,
        List<String> warnings) {

    /**
     * @param sensitivity probability in [0, 1] that the period's surveillance detects infection at the design prevalence
     * @param detected true when it did, which ends the matter: the posterior is 0
     */
    public record Period(double sensitivity, boolean detected) {}

    /** Probability before and after a period; null when undefined. */
    public record Step(Double prior, double sensitivity, Double posterior) {}

    private static final String METHOD = "Bayes' rule over periods, with the chance of introduction between them";
    private static final String SOURCE = "Martin, Cameron & Greiner 2007, Prev Vet Med 79:71-97";

    /**
     * posterior = prior / (1 - sensitivity (1 - prior)); next prior = posterior (1 - introduction). The first prior is taken as given.
     *
     * @param prior probability in [0, 1] before the first period
     * @param introduction probability in [0, 1] that infection reaches the design prevalence between two periods
     * @throws OutOfDomain when there is no period or a probability is not in [0, 1]; the field is {@code periods[index].sensitivity}
     */
    public static Freedom of(double prior, double introduction, List<Period> periods) {
        Domain.probability("prior", prior);
        Domain.probability("introduction", introduction);
        Domain.notEmpty("periods", periods);
        for (int i = 0; i < periods.size(); i++) {
            Domain.probability("periods[" + i + "].sensitivity", periods.get(i).sensitivity());
        }
        List<Step> steps = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        Double current = prior;
        for (Period period : periods) {
            Double posterior = posterior(current, period);
            steps.add(new Step(current, period.sensitivity(), posterior));
            current = posterior == null ? null : Double.valueOf(posterior * (1 - introduction));
        }
        if (periods.stream().anyMatch(Period::detected)) {
            warnings.add("Infection was detected: the probability is 0 from then on.");
        }
        if (steps.stream().anyMatch(step -> step.posterior() == null)) {
            warnings.add("Undefined: a prior of 0 and a sensitivity of 1 contradict a period without detection.");
        }
        double last = periods.get(periods.size() - 1).sensitivity();
        boolean settles = last > introduction && introduction < 1;
        return new Freedom(
                List.copyOf(steps),
                settles ? Double.valueOf((last - introduction) / last) : null,
                settles ? Double.valueOf((last - introduction) / (last * (1 - introduction))) : null,
                METHOD,
                SOURCE,
                List.copyOf(warnings));
    }

    /**
     * Sensitivity of a system of independent parts: 1 - product of (1 - each).
     *
     * @throws OutOfDomain when one is not in [0, 1]; the field is {@code sensitivities[index]}
     */
    public static double system(List<Double> sensitivities) {
        double miss = 1;
        for (int i = 0; i < sensitivities.size(); i++) {
            Domain.probability("sensitivities[" + i + "]", sensitivities.get(i));
            miss *= 1 - sensitivities.get(i);
        }
        return 1 - miss;
    }

    private static Double posterior(Double prior, Period period) {
        if (prior == null) {
            return null;
        }
        if (period.detected()) {
            return 0.0;
        }
        double noDetection = 1 - period.sensitivity() * (1 - prior);
        return noDetection == 0 ? null : Double.valueOf(prior / noDetection);
    }
}
