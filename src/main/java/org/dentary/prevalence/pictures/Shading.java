package org.dentary.prevalence.pictures;

import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.detection.ChanceWords;
import org.dentary.prevalence.detection.UnitChance;

/** What a map is shaded by, and from which values on a unit is hatched more closely. */
enum Shading {
    TESTED("tested", "animals tested", new double[] {1, 30, 100, 300}, unit -> (double) unit.tested()) {
        @Override
        String told(UnitChance unit) {
            return ChanceWords.count(unit.tested());
        }

        @Override
        String bound(double from) {
            return ChanceWords.count((int) from);
        }
    },
    DETECTED("detected", "animals in which it was detected", new double[] {1, 3, 10, 30}, unit ->
            (double) unit.detected()) {
        @Override
        String told(UnitChance unit) {
            return ChanceWords.count(unit.detected()) + " of " + ChanceWords.count(unit.tested());
        }

        @Override
        String bound(double from) {
            return ChanceWords.count((int) from);
        }
    },
    CHANCE(
            "chance",
            "chance of detection at the design prevalence",
            new double[] {0.05, 0.5, 0.8, 0.95},
            unit -> unit.judged() == null ? 0 : unit.judged()) {
        @Override
        String told(UnitChance unit) {
            return unit.detected() > 0
                    ? "detected"
                    : unit.judged() == null ? "not sampled" : ChanceWords.chance(unit.judged());
        }

        @Override
        String bound(double from) {
            return ChanceWords.share(from);
        }
    };

    private final String word;
    private final String words;
    private final double[] bounds;
    private final Function<UnitChance, Double> value;

    Shading(String word, String words, double[] bounds, Function<UnitChance, Double> value) {
        this.word = word;
        this.words = words;
        this.bounds = bounds;
        this.value = value;
    }

    /** The value of the unit as the map prints it. */
    abstract String told(UnitChance unit);

    abstract String bound(double from);

    String word() {
        return word;
    }

    String words() {
        return words;
    }

    /** 0 for less than the first bound, up to 4. */
    int level(UnitChance unit) {
        double at = value.apply(unit);
        return (int) Arrays.stream(bounds).filter(bound -> at >= bound).count();
    }

    /** From which value on a level begins, in words; level 1 to 4. */
    String from(int level) {
        return "from " + bound(bounds[level - 1]);
    }

    /**
     * The shading of that word, the first if null.
     *
     * @throws InvalidInput (422) if there is none
     */
    static Shading of(String word) {
        if (word == null) {
            return TESTED;
        }
        return Arrays.stream(values())
                .filter(s -> s.word.equals(word))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        "shade",
                        "NOT_A_VALUE",
                        "'" + word + "' is nothing to shade a map by; allowed: "
                                + Arrays.stream(values()).map(Shading::word).collect(Collectors.joining(", "))));
    }
}
