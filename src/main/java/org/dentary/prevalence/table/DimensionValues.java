package org.dentary.prevalence.table;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.dentary.plan.PlanService;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.question.Dimension;

/** The values that a dimension can take, so that a class never sampled has its row too. */
@ApplicationScoped
public class DimensionValues {
    private static final String UNKNOWN = "UNKNOWN";
    private final PlanService plan;

    DimensionValues(PlanService plan) {
        this.plan = plan;
    }

    /**
     * The values in reading order, unknown last.
     *
     * @param seen values that animals have; all of them are among the answer
     * @param accepted values that a filter leaves, or null for all
     */
    public List<String> of(Dimension dimension, TreeSet<String> seen, List<String> accepted) {
        List<String> values = new ArrayList<>(
                switch (dimension) {
                    case AGE_CLASS -> List.of("FAWN", "YEARLING", "ADULT");
                    case SEX -> List.of("MALE", "FEMALE");
                    case MANAGEMENT_UNIT ->
                        plan.units().stream().map(u -> u.code()).toList();
                    case REGION -> plan.regions().stream().map(r -> r.code()).toList();
                    case STATION -> plan.stations().stream().map(s -> s.code()).toList();
                    case SEASON ->
                        plan.seasons().stream()
                                .map(s -> s.code())
                                .filter(seen::contains)
                                .toList();
                    default -> List.<String>of();
                });
        seen.stream().filter(v -> !values.contains(v) && !v.equals(UNKNOWN)).forEach(values::add);
        values.add(UNKNOWN);
        if (dimension == Dimension.SEASON || dimension == Dimension.STATION) {
            values.removeIf(v -> v.equals(UNKNOWN) && !seen.contains(v));
        }
        if (accepted != null) {
            values.retainAll(accepted);
        }
        return values;
    }

    /** What people call the values: names of the plan, months spelled out, codes as words. */
    public UnaryOperator<String> words(Dimension dimension) {
        Map<String, String> names = names(dimension);
        return value -> names.containsKey(value)
                ? names.get(value)
                : dimension == Dimension.MONTH ? Words.month(value) : Words.of(value);
    }

    private Map<String, String> names(Dimension dimension) {
        return switch (dimension) {
            case MANAGEMENT_UNIT ->
                plan.units().stream().collect(java.util.stream.Collectors.toMap(u -> u.code(), u -> u.name()));
            case REGION ->
                plan.regions().stream().collect(java.util.stream.Collectors.toMap(r -> r.code(), r -> r.name()));
            case STATION ->
                plan.stations().stream().collect(java.util.stream.Collectors.toMap(s -> s.code(), s -> s.name()));
            case SEASON ->
                plan.seasons().stream().collect(java.util.stream.Collectors.toMap(s -> s.code(), s -> s.name()));
            default -> Map.of();
        };
    }
}
