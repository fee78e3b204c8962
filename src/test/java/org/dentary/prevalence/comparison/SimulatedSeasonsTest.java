package org.dentary.prevalence.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.setup.demo.Deer;
import org.dentary.setup.demo.DeerDraw;
import org.dentary.statistics.IntervalMethod;
import org.dentary.statistics.Proportion;
import org.junit.jupiter.api.Test;

/**
 * The demo's generator drawn again and again: the truth it draws from lies within the intervals as often as it should.
 * The animals are the harvested ones of a known unit; their infection is known to the draw and taken as the finding, so
 * that nothing but the interval is under trial.
 */
class SimulatedSeasonsTest {
    private static final int DRAWS = 600;
    private static final double CONFIDENCE = 0.95;

    /** The deer of one unit, age class and sex, who share one true prevalence. */
    record Cell(double truth, int counted, int detected) {}

    /** Cells with at least one deer, by unit, age class and sex, of each season of a draw. */
    static Map<String, List<Cell>> seasons(long seed) {
        Map<String, List<Cell>> seasons = new LinkedHashMap<>();
        Map<String, Map<List<String>, List<Deer>>> deer = DeerDraw.draw(seed).stream()
                .filter(d -> d.source().equals("HUNTER_HARVEST")
                        && !d.unit().equals("UNKNOWN")
                        && !d.sex().equals("UNKNOWN"))
                .collect(Collectors.groupingBy(
                        Deer::season,
                        LinkedHashMap::new,
                        Collectors.groupingBy(d -> List.of(d.unit(), d.ageClass(), d.sex()))));
        deer.forEach((season, classes) -> {
            List<Cell> cells = new ArrayList<>();
            classes.forEach((of, animals) ->
                    cells.add(new Cell(DeerDraw.truth(season, of.get(0), of.get(1), of.get(2)), animals.size(), (int)
                            animals.stream().filter(Deer::infected).count())));
            seasons.put(season, cells);
        });
        return seasons;
    }

    @Test
    void overTwoThousandSeasonsTheTruthLiesWithinTheIntervals() {
        Tally wilson = new Tally();
        Tally exact = new Tally();
        int seasons = 0;
        for (long seed = 1; seed <= DRAWS; seed++) {
            for (List<Cell> cells : seasons(seed).values()) {
                seasons++;
                for (Cell cell : cells) {
                    wilson.add(cell, IntervalMethod.WILSON);
                    exact.add(cell, IntervalMethod.CLOPPER_PEARSON);
                }
            }
        }
        assertEquals(4 * DRAWS, seasons);
        wilson.print("Wilson", seasons);
        exact.print("Clopper-Pearson", seasons);
        // What each method's cover is at these truths and sizes follows exactly from the binomial distribution; the
        // simulation may stray from it by its Monte Carlo error, four times of which is a chance of 1 in 16,000.
        assertEquals(wilson.expected(), wilson.cover(), 4 * wilson.error());
        assertEquals(exact.expected(), exact.cover(), 4 * exact.error());
        // Clopper-Pearson covers at least at its level whatever the truth (1934, Biometrika 26:404-413).
        assertTrue(exact.cover() >= CONFIDENCE);
        // Wilson's mean cover is near the level; its dip to .84 lies near 0.18/n (statistics of this project, from R).
        assertTrue(wilson.cover() > 0.93);
    }

    /** How often the truth lay within, and how often it should have, by the binomial distribution of each cell. */
    static final class Tally {
        private final Map<String, Double> known = new java.util.HashMap<>();
        private long cells;
        private long within;
        private double should;
        private double variance;

        void add(Cell cell, IntervalMethod method) {
            Proportion interval = Proportion.of(cell.detected(), cell.counted(), method, CONFIDENCE);
            cells++;
            within += covers(interval, cell.truth()) ? 1 : 0;
            double cover = known.computeIfAbsent(
                    cell.truth() + "/" + cell.counted(), any -> exactly(cell.truth(), cell.counted(), method));
            should += cover;
            variance += cover * (1 - cover);
        }

        private static boolean covers(Proportion interval, double truth) {
            return interval.lower() <= truth && truth <= interval.upper();
        }

        /**
         * By the definitions alone: the score test does not reject the truth (Wilson 1927), neither tail of the binomial
         * is below half of what is left (Clopper & Pearson 1934).
         */
        private static double exactly(double truth, int n, IntervalMethod method) {
            double z = 1.959963984540054; // R 4.2.2: qnorm(0.975)
            double sum = 0;
            double below = 0;
            double probability = Math.pow(1 - truth, n);
            for (int x = 0; x <= n; x++) {
                boolean covers = method == IntervalMethod.WILSON
                        ? Math.abs((double) x / n - truth) <= z * Math.sqrt(truth * (1 - truth) / n)
                        : below + probability >= 0.025 && 1 - below >= 0.025;
                sum += covers ? probability : 0;
                below += probability;
                probability *= truth / (1 - truth) * (n - x) / (x + 1);
            }
            return sum;
        }

        double cover() {
            return (double) within / cells;
        }

        double expected() {
            return should / cells;
        }

        /** Monte Carlo standard error of the cover. */
        double error() {
            return Math.sqrt(variance) / cells;
        }

        void print(String method, int seasons) {
            System.err.printf(
                    Locale.ROOT,
                    "%s at %.0f %%: the truth lay within in %.4f of %d cells of %d simulated seasons (Monte Carlo error"
                            + " %.4f; %.4f expected)%n",
                    method,
                    100 * CONFIDENCE,
                    cover(),
                    cells,
                    seasons,
                    error(),
                    expected());
        }
    }
}
