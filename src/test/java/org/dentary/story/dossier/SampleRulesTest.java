package org.dentary.story.dossier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.dentary.platform.problem.InvalidInput;
import org.junit.jupiter.api.Test;

class SampleRulesTest {
    private static final List<String> POPULATION =
            IntStream.range(0, 200).mapToObj(i -> "C%09d".formatted(i)).toList();

    @Test
    void anotherProgramDrawsTheSameFromSeedAndCodes() {
        // Python's hashlib is the program outside.
        String script = """
                import hashlib
                codes = ["C%09d" % i for i in range(200)]
                print("\\n".join(sorted(codes, key=lambda c: hashlib.sha256(("autumn-7 " + c).encode()).hexdigest())[:25]))
                print(hashlib.sha256("".join(c + "\\n" for c in sorted(codes)).encode()).hexdigest())
                """;
        List<String> expected = Papers.run("python3", "-c", script);
        assertEquals(expected.subList(0, 25), SampleRules.draw(POPULATION, "autumn-7", 25));
        assertEquals(expected.get(25), SampleRules.digest(POPULATION));
    }

    @Test
    void theOrderOfThePopulationDoesNotMatter() {
        List<String> shuffled = new ArrayList<>(POPULATION);
        Collections.shuffle(shuffled, new Random(1));
        assertEquals(SampleRules.draw(POPULATION, "s", 40), SampleRules.draw(shuffled, "s", 40));
        assertEquals(SampleRules.digest(POPULATION), SampleRules.digest(shuffled));
    }

    @Test
    void oneMoreSpecimenReplacesAtMostOne() {
        List<String> before = SampleRules.draw(POPULATION.subList(0, 199), "s", 40);
        List<String> after = new ArrayList<>(SampleRules.draw(POPULATION, "s", 40));
        after.removeAll(before);
        assertTrue(after.size() <= 1, after.toString());
    }

    @Test
    void everyCodeIsDrawnAboutAsOften() {
        int[] drawn = new int[POPULATION.size()];
        int draws = 2_000;
        for (int seed = 0; seed < draws; seed++) {
            SampleRules.draw(POPULATION, "seed-" + seed, 20)
                    .forEach(code -> drawn[Integer.parseInt(code.substring(1))]++);
        }
        // Pearson's statistic on 199 degrees of freedom, each draw without replacement: below R's qchisq(0.9999, 199) =
        // 281.87.
        double expected = draws * 20.0 / POPULATION.size();
        double statistic = IntStream.of(drawn)
                .mapToDouble(count -> (count - expected) * (count - expected) / expected)
                .sum();
        assertTrue(statistic < 281.9, "statistic " + statistic);
    }

    @Test
    void asksForASizeAndASeedThatCanBe() {
        for (String size : new String[] {null, "", "0", "501", "1.5", "two", "-3"}) {
            assertThrows(InvalidInput.class, () -> SampleRules.requireSize(size), String.valueOf(size));
        }
        assertEquals(500, SampleRules.requireSize(" 500 "));
        for (String seed : new String[] {"", "a b", "x".repeat(41), "\u00e9"}) {
            assertThrows(InvalidInput.class, () -> SampleRules.requireSeed(seed), seed);
        }
        assertEquals("autumn-7", SampleRules.requireSeed("autumn-7"));
        assertEquals(List.of("A"), SampleRules.draw(List.of("A"), "s", 9));
        assertEquals(List.of(), SampleRules.draw(List.of(), "s", 9));
    }
}
