package org.dentary.prevalence.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.comparison.ClassFixture.Class;
import org.dentary.setup.demo.Deer;
import org.dentary.setup.demo.DeerDraw;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A hundred simulated seasons as lines in the database, asked of the service over HTTP. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@Tag("slow")
class SimulatedPathTest {
    private static final int DRAWS = 25;
    private static final String UNIT = "U11";

    @Inject
    ClassFixture classes;

    @Test
    void ofAHundredSeasonsThroughTheServiceTheTruthLiesWithinTheIntervals() {
        int cells = 0;
        int within = 0;
        int seasons = 0;
        for (long seed = 10_001; seed <= 10_000 + DRAWS; seed++) {
            Map<String, List<Deer>> drawn = DeerDraw.draw(seed).stream()
                    .filter(d -> d.source().equals("HUNTER_HARVEST")
                            && d.unit().equals(UNIT)
                            && !d.sex().equals("UNKNOWN"))
                    .collect(Collectors.groupingBy(Deer::season));
            for (Map.Entry<String, List<Deer>> season : drawn.entrySet()) {
                seasons++;
                List<Class> counted = classes(season.getValue());
                JsonPath report = JsonPath.from(ClassFixture.as("epidemiologist")
                        .get("/api/v1/prevalence?by=ageClass,sex&season=" + classes.season(counted))
                        .asString());
                for (Class one : counted) {
                    String cell = "cells.find { it.ageClass == '" + one.age() + "' && it.sex == '" + one.sex() + "' }.";
                    assertEquals(one.counted(), report.getInt(cell + "counted"));
                    assertEquals(one.detected(), report.getInt(cell + "detected"));
                    double truth = DeerDraw.truth(season.getKey(), UNIT, one.age(), one.sex());
                    cells++;
                    within += report.getDouble(cell + "lower") <= truth && truth <= report.getDouble(cell + "upper")
                            ? 1
                            : 0;
                }
            }
        }
        double cover = (double) within / cells;
        double error = Math.sqrt(.95 * .05 / cells);
        System.err.printf(
                Locale.ROOT,
                "Wilson at 95 %%: the truth lay within in %.3f of %d cells of %d seasons through the service (Monte Carlo"
                        + " error %.3f)%n",
                cover,
                cells,
                seasons,
                error);
        assertEquals(100, seasons);
        // Four Monte Carlo errors about the level; above it nothing is wrong, small true prevalences cover more often.
        assertTrue(cover >= .95 - 4 * error, cover + " is too low");
    }

    private static List<Class> classes(List<Deer> deer) {
        List<Class> classes = new ArrayList<>();
        deer.stream()
                .collect(Collectors.groupingBy(d -> List.of(d.ageClass(), d.sex())))
                .forEach((of, animals) -> classes.add(new Class(
                        of.get(0),
                        of.get(1),
                        (int) animals.stream().filter(Deer::infected).count(),
                        animals.size())));
        return classes;
    }
}
