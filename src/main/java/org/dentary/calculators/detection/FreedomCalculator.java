package org.dentary.calculators.detection;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.dentary.calculators.Answer;
import org.dentary.calculators.Answer.Figures;
import org.dentary.calculators.Asked;
import org.dentary.calculators.Calculator;
import org.dentary.calculators.Drawing;
import org.dentary.calculators.Field;
import org.dentary.calculators.Words;
import org.dentary.statistics.detection.Freedom;

/** The probability that prevalence is below the design prevalence, over years. */
@Singleton
class FreedomCalculator implements Calculator {
    private static final Set<String> YES = Set.of("yes", "detected", "true");
    private static final Set<String> NO = Set.of("", "no", "not detected", "false");

    @Override
    public Entry entry() {
        return new Entry(
                Part.RULED_OUT,
                11,
                "freedom",
                "Evidence over years",
                "The probability that prevalence is below the design prevalence, after years in which none was detected.",
                "prior=0.5&introduction=0.02&periods=2022%2C+0.62%0A2023%2C+0.71%0A2024%2C+0.68%0A2025%2C+0.80");
    }

    @Override
    public List<Field> fields() {
        return List.of(
                Field.number(
                        "prior",
                        "Probability before the first period",
                        "A fraction; 0.5 says that nothing is known",
                        "0.5"),
                Field.number(
                        "introduction",
                        "Probability of introduction between two periods",
                        "A fraction; that prevalence rises to the design prevalence in the meantime",
                        ""),
                Field.rows(
                        "periods",
                        "Periods",
                        "One a line, in order: name, chance that its surveillance detects infection at the design prevalence; a third cell \"yes\" where it did"));
    }

    private record Named(List<String> names, FollowPeriods asked) {}

    private static Named read(Asked asked) {
        double prior = asked.number("prior");
        double introduction = asked.number("introduction");
        List<String> names = new ArrayList<>();
        List<FollowPeriods.Period> periods = new ArrayList<>();
        for (Asked.Row row : asked.rows("periods")) {
            String word = row.text(2).toLowerCase(Locale.ROOT);
            if (!YES.contains(word) && !NO.contains(word)) {
                asked.refuse("periods", "INVALID_VALUE", row.text(0) + ": '" + row.text(2) + "' is not yes or no");
            }
            names.add(row.text(0));
            periods.add(new FollowPeriods.Period(row.number(1, "sensitivity"), YES.contains(word)));
        }
        asked.check();
        return new Named(names, new FollowPeriods(prior, introduction, periods));
    }

    @Override
    public Answer answer(Asked asked) {
        Named read = read(asked);
        Freedom result = read.asked().compute();
        List<Drawing.Point> priors = new ArrayList<>();
        List<Drawing.Point> posteriors = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < result.periods().size(); i++) {
            Freedom.Step step = result.periods().get(i);
            rows.add(List.of(
                    read.names().get(i),
                    Words.chance(step.prior()),
                    Words.chance(step.sensitivity()),
                    Words.chance(step.posterior())));
            if (step.prior() != null) {
                priors.add(new Drawing.Point(i + 1, step.prior()));
            }
            if (step.posterior() != null) {
                posteriors.add(new Drawing.Point(i + 1, step.posterior()));
            }
        }
        Double last = result.periods().get(result.periods().size() - 1).posterior();
        return new Answer(
                "Probability that prevalence is below the design prevalence after " + Words.count(rows.size())
                        + (rows.size() == 1 ? " period: " : " periods: ") + Words.chance(last) + ".",
                result.warnings(),
                new Drawing.Curves(
                        "The probability before and after each period: it rises with evidence and sinks in between",
                        "Period",
                        "Probability",
                        List.of(
                                new Drawing.Curve("Before the period", true, true, priors),
                                new Drawing.Curve("After the period", true, true, posteriors)),
                        List.of()),
                List.of(
                        new Figures(
                                "Probability that prevalence is below the design prevalence",
                                List.of("Period", "Before", "Chance of detection", "After"),
                                rows),
                        new Figures(
                                "If the last period repeated for ever",
                                List.of("Probability", "Settles at"),
                                List.of(
                                        List.of("Before a period", settles(result.equilibriumPrior())),
                                        List.of("After a period", settles(result.equilibriumPosterior()))))),
                List.of(
                        "This is the probability that prevalence is below the design prevalence, not that there is no infection.",
                        "Nothing was detected in the periods; one confirmed detection ends the matter.",
                        "Each period's chance of detection holds for the whole unit: parts that are never sampled are not spoken for.",
                        "The prior and the probability of introduction are judgments: print them."),
                result.source());
    }

    private static String settles(Double probability) {
        return probability == null ? "nothing above 0" : Words.chance(probability);
    }
}
