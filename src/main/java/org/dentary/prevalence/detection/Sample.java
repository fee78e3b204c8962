package org.dentary.prevalence.detection;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.prevalence.question.Step;

/** One unit's animals of one season. */
record Sample(List<SampledGroup> groups) {
    Sample {
        groups = List.copyOf(groups);
    }

    /** Animals with a final word on accepted tissue, within the scope. */
    int tested() {
        return animals(Step.COUNTED);
    }

    int pending() {
        return animals(Step.PENDING);
    }

    int detected() {
        return counted().mapToInt(SampledGroup::detected).sum();
    }

    int animals(Step step) {
        return groups.stream()
                .filter(group -> group.step() == step)
                .mapToInt(SampledGroup::animals)
                .sum();
    }

    /** Tested animals by a property, in the order of its values. */
    Map<String, Integer> testedBy(Function<SampledGroup, String> property) {
        return counted()
                .collect(Collectors.groupingBy(property, TreeMap::new, Collectors.summingInt(SampledGroup::animals)));
    }

    /** The same with every pending animal counted and not detected. */
    Sample withPendingCounted() {
        return new Sample(groups.stream()
                .map(g -> g.step() != Step.PENDING
                        ? g
                        : new SampledGroup(
                                g.season(),
                                g.unit(),
                                g.ageClass(),
                                g.sex(),
                                g.mortalitySource(),
                                g.clinicalSigns(),
                                g.station(),
                                Step.COUNTED,
                                g.animals(),
                                0))
                .toList());
    }

    java.util.stream.Stream<SampledGroup> counted() {
        return groups.stream().filter(group -> group.step() == Step.COUNTED);
    }
}
