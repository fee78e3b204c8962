package org.dentary.setup.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.dentary.statistics.IntervalMethod;
import org.dentary.statistics.Proportion;
import org.junit.jupiter.api.Test;

class DeerDrawTest {
    @Test
    void theSameSeedDrawsTheSameDeerAndAnotherDoesNot() {
        assertEquals(DeerDraw.draw(DeerDraw.SEED), DeerDraw.draw(DeerDraw.SEED));
        assertNotEquals(DeerDraw.draw(DeerDraw.SEED), DeerDraw.draw(DeerDraw.SEED + 1));
        assertEquals(1960, DeerDraw.draw(DeerDraw.SEED).size());
    }

    /** The committed table says what each class of the demo was drawn from; -Ddentary.write-docs=true writes it anew. */
    @Test
    void theCommittedTruthIsTheGeneratorsTruth() throws IOException {
        StringBuilder table = new StringBuilder("season,unit,age_class,sex,true_prevalence\n");
        for (String season : List.of("SY2023", "SY2024", "SY2025", "SY2026")) {
            for (String unit : List.of("U11", "U12", "U13", "U14", "U21", "U22", "U23", "U24")) {
                for (String age : List.of("FAWN", "YEARLING", "ADULT")) {
                    for (String sex : List.of("MALE", "FEMALE")) {
                        table.append(String.format(
                                Locale.ROOT,
                                "%s,%s,%s,%s,%.6f%n",
                                season,
                                unit,
                                age,
                                sex,
                                DeerDraw.truth(season, unit, age, sex)));
                    }
                }
            }
        }
        Path file = Path.of("demo-data", "truth.csv");
        if (Boolean.getBoolean("dentary.write-docs")) {
            Files.writeString(file, table);
        }
        assertEquals(Files.readString(file), table.toString());
    }

    /**
     * Over many draws the 95 % interval of the truly infected among hunter-harvested adult males of a unit holds the truth
     * about as often as Wilson's interval should (statistics notes: 0.95 on average, never below about 0.84).
     */
    @Test
    void theTruthLiesWithinTheIntervalsAsOftenAsItShould() {
        int held = 0;
        int looked = 0;
        for (long seed = 0; seed < 300; seed++) {
            Map<String, List<Deer>> groups = DeerDraw.draw(seed).stream()
                    .filter(d -> d.source().equals("HUNTER_HARVEST")
                            && d.ageClass().equals("ADULT")
                            && d.sex().equals("MALE")
                            && d.unit().equals("U11"))
                    .collect(Collectors.groupingBy(Deer::season, TreeMap::new, Collectors.toList()));
            for (Map.Entry<String, List<Deer>> group : groups.entrySet()) {
                int infected =
                        (int) group.getValue().stream().filter(Deer::infected).count();
                Proportion share = Proportion.of(infected, group.getValue().size(), IntervalMethod.WILSON, 0.95);
                double truth = DeerDraw.truth(group.getKey(), "U11", "ADULT", "MALE");
                held += share.lower() <= truth && truth <= share.upper() ? 1 : 0;
                looked++;
            }
        }
        double coverage = (double) held / looked;
        double error = Math.sqrt(0.95 * 0.05 / looked);
        assertTrue(looked > 1000, "looked at " + looked);
        assertTrue(
                Math.abs(coverage - 0.95) < 4 * error + 0.015, "coverage " + coverage + ", Monte Carlo error " + error);
    }
}
