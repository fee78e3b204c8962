package org.dentary.statistics.comparison;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.dentary.statistics.Domain;
import org.dentary.statistics.OutOfDomain;

/** Adjustment of several p-values for their number (Holm 1979, Scand J Stat 6:65-70). */
public final class Holm {

    private Holm() {}

    /**
     * The adjusted values in the order given. A null (no test was possible) stays null and does not count as a test.
     *
     * @throws OutOfDomain when a value is not in [0, 1]; its field is {@code p[index]}
     */
    public static List<Double> adjust(List<Double> p) {
        for (int i = 0; i < p.size(); i++) {
            if (p.get(i) != null) {
                Domain.probability("p[" + i + "]", p.get(i));
            }
        }
        List<Integer> ascending = IntStream.range(0, p.size())
                .filter(i -> p.get(i) != null)
                .boxed()
                .sorted(Comparator.comparing(p::get))
                .toList();
        List<Double> adjusted = new ArrayList<>(Collections.nCopies(p.size(), null));
        double floor = 0;
        for (int rank = 0; rank < ascending.size(); rank++) {
            int index = ascending.get(rank);
            floor = Math.max(floor, Math.min(1, p.get(index) * (ascending.size() - rank)));
            adjusted.set(index, floor);
        }
        return Collections.unmodifiableList(adjusted);
    }
}
