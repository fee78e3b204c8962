package org.dentary.prevalence.detection;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.dentary.plan.RiskWeightView;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.question.Scope;
import org.dentary.statistics.OutOfDomain;
import org.dentary.statistics.detection.WeightedPoints;
import org.dentary.statistics.detection.WeightedPoints.Convention;
import org.dentary.statistics.detection.WeightedPoints.RiskClass;
import org.dentary.statistics.detection.WeightedPoints.Tally;

/**
 * A set of cited weights and what animals are worth by it. An animal whose age, sex, source or signs are not known earns
 * the lowest weight of the classes it may belong to.
 */
record RiskWeights(String set, List<RiskWeightView> classes) {
    private static final String UNKNOWN = "UNKNOWN";

    /** Refuses (422) if an animal tested has no class of the set, naming every such class and how many there are. */
    void requireFor(List<SampledGroup> tested) {
        Map<String, Integer> missing = new LinkedHashMap<>();
        tested.stream()
                .filter(group -> classOf(group).isEmpty())
                .forEach(group -> missing.merge(words(group), group.animals(), Integer::sum));
        if (!missing.isEmpty()) {
            List<FieldProblem> problems = new ArrayList<>();
            missing.forEach((words, animals) -> problems.add(new FieldProblem(
                    "RISK_WEIGHT_SET",
                    "WEIGHT_MISSING",
                    "Weight set " + set + " has no weight for " + words + " (" + animals
                            + " tested); add it under risk-weights with its citation, ask for a scope without such animals,"
                            + " or empty the setting RISK_WEIGHT_SET")));
            throw InvalidInput.of(problems);
        }
    }

    /** The class whose weight the animals of the group earn. */
    Optional<RiskWeightView> classOf(SampledGroup group) {
        return classes.stream()
                .filter(c -> fits(group.ageClass(), c.ageClass())
                        && fits(group.sex(), c.sex())
                        && fits(group.mortalitySource(), c.mortalitySource())
                        && (group.clinicalSigns().equals("NOT_OBSERVED")
                                || fits(group.clinicalSigns(), c.clinicalSigns())))
                .min(Comparator.comparing(RiskWeightView::relativeRisk));
    }

    private static boolean fits(String given, String of) {
        return given.equals(of) || given.equals(UNKNOWN);
    }

    /** The classes whose animals count in a report of that scope. */
    List<RiskWeightView> within(Scope scope) {
        return classes.stream()
                .filter(one -> scope.mortalitySource().contains(one.mortalitySource())
                        && scope.clinicalSigns().contains(one.clinicalSigns()))
                .toList();
    }

    /**
     * Points of the tested animals.
     *
     * @throws InvalidInput (422) if the set cannot be computed with
     */
    WeightedPoints points(Sample sample, Assumptions assumptions) {
        Map<RiskWeightView, Integer> tested = new LinkedHashMap<>();
        classes.forEach(c -> tested.put(c, 0));
        sample.counted()
                .forEach(group -> classOf(group).ifPresent(c -> tested.merge(c, group.animals(), Integer::sum)));
        try {
            return WeightedPoints.of(
                    assumptions.designPrevalence(),
                    assumptions.sensitivity(),
                    assumptions.targetProbability(),
                    tested.entrySet().stream()
                            .map(e -> new RiskClass(
                                    words(e.getKey()),
                                    e.getValue(),
                                    e.getKey().relativeRisk().doubleValue(),
                                    e.getKey().populationShare() == null
                                            ? null
                                            : e.getKey().populationShare().doubleValue()))
                            .toList());
        } catch (OutOfDomain fault) {
            throw InvalidInput.field(
                    "RISK_WEIGHT_SET",
                    "WEIGHT_SET_UNUSABLE",
                    "Weight set " + set + " cannot be used: " + fault.getMessage()
                            + "; put it right under risk-weights");
        }
    }

    static Tally shown(WeightedPoints points) {
        return points.convention() == Convention.POPULATION_MEAN ? points.populationMean() : points.referenceClass();
    }

    /**
     * How many more animals of one class reach the target by themselves; empty if that class never does.
     *
     * @param probability reached so far, in [0, 1)
     */
    Optional<Integer> more(RiskWeightView one, double probability, Assumptions assumptions) {
        double risk = one.relativeRisk().doubleValue() / scale();
        double chance = assumptions.sensitivity() * Math.min(1, assumptions.designPrevalence() * risk);
        if (chance == 0) {
            return Optional.empty();
        }
        double missing = Math.log1p(-assumptions.targetProbability()) - Math.log1p(-probability);
        return Optional.of(missing >= 0 ? 0 : chance >= 1 ? 1 : (int) Math.ceil(missing / Math.log1p(-chance) - 1e-9));
    }

    /** Mean risk of the herd where the set has the classes' shares of it, else 1: the reference class. */
    private double scale() {
        return classes.stream().allMatch(c -> c.populationShare() != null)
                ? classes.stream()
                        .map(c -> c.relativeRisk().multiply(c.populationShare()))
                        .reduce(BigDecimal.ZERO, BigDecimal::add)
                        .doubleValue()
                : 1;
    }

    /** The citations of the set, each once, in alphabetical order. */
    List<String> citations() {
        return List.copyOf(
                new TreeSet<>(classes.stream().map(RiskWeightView::citation).toList()));
    }

    static String words(RiskWeightView one) {
        return words(one.ageClass(), one.sex(), one.mortalitySource(), one.clinicalSigns());
    }

    private static String words(SampledGroup group) {
        return words(group.ageClass(), group.sex(), group.mortalitySource(), group.clinicalSigns());
    }

    private static String words(String age, String sex, String source, String signs) {
        return String.join(
                        ", ",
                        age.equals(UNKNOWN) ? "age unknown" : Words.of(age),
                        sex.equals(UNKNOWN) ? "sex unknown" : Words.of(sex),
                        Words.of(source),
                        signs.equals("SEEN")
                                ? "signs seen"
                                : signs.equals("NONE_SEEN") ? "no signs seen" : "signs not observed")
                .toLowerCase(java.util.Locale.ROOT);
    }
}
