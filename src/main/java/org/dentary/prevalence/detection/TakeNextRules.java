package org.dentary.prevalence.detection;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.detection.SampleConcerns.OneSide;
import org.dentary.prevalence.detection.TakeNext.Choice;
import org.dentary.prevalence.question.Scope;

/** What to take next where a unit is short of its target once its pending results are in. */
final class TakeNextRules {
    private static final int MOST_CHOICES = 3;
    private static final String ANY = "ANY";

    private TakeNextRules() {}

    /** Empty where nothing is asked for: the target is reached, or was, or cannot be. */
    static Optional<TakeNext> of(
            UnitRules.Known known,
            UnitChance chance,
            Scope scope,
            SampleConcerns concerns,
            List<TakeNext.Station> stations) {
        if (chance.moreAfterPending() == null || chance.moreAfterPending() == 0) {
            return Optional.empty();
        }
        Sample sample = known.current().sample().withPendingCounted();
        List<Choice> choices = known.weights() == null
                ? List.of(alike(sample, chance.moreAfterPending(), scope, concerns))
                : weighted(known, sample, scope);
        return choices.isEmpty()
                ? Optional.empty()
                : Optional.of(new TakeNext(chance.unit(), chance.name(), stations, chance.pending(), choices));
    }

    /** All count alike: any will do, the side that is missing first. */
    private static Choice alike(Sample sample, int more, Scope scope, SampleConcerns concerns) {
        Optional<OneSide> sex = concerns.side(sample, SampledGroup::sex);
        Optional<OneSide> fawns = concerns.side(sample, SampledGroup::ageClass)
                .filter(s -> s.value().equals("FAWN"));
        String wantedSex =
                sex.map(s -> s.value().equals("MALE") ? "FEMALE" : "MALE").orElse(ANY);
        String wantedAge = fawns.isPresent() ? "ADULT" : ANY;
        String why = sex.map(s -> s.told(Words.of(s.value()).toLowerCase(Locale.ROOT)))
                .or(() -> fawns.map(s -> s.told("fawns")))
                .map(told -> told + "; others first")
                .orElse("");
        return new Choice(
                wantedAge,
                wantedSex,
                String.join(" ", scope.mortalitySource()),
                null,
                more,
                words(more, wantedAge, wantedSex, scope.mortalitySource()),
                why);
    }

    /** The classes that count in this report, fewest animals first. */
    private static List<Choice> weighted(UnitRules.Known known, Sample sample, Scope scope) {
        Assumptions a = known.current().assumptions();
        double probability =
                RiskWeights.shown(known.weights().points(sample, a)).probability();
        return known.weights().within(scope).stream()
                .flatMap(one -> known.weights().more(one, probability, a).stream()
                        .map(more -> new Choice(
                                one.ageClass(),
                                one.sex(),
                                one.mortalitySource(),
                                one.relativeRisk().doubleValue(),
                                more,
                                words(more, one.ageClass(), one.sex(), List.of(one.mortalitySource())),
                                "")))
                .sorted(Comparator.comparingInt(Choice::more))
                .limit(MOST_CHOICES)
                .toList();
    }

    private static String words(int more, String age, String sex, List<String> sources) {
        String class_ = (sex.equals(ANY) ? "" : sex.toLowerCase(Locale.ROOT) + " ")
                + (age.equals(ANY) ? (more == 1 ? "animal" : "animals") : plural(age, more));
        return ChanceWords.count(more) + " more " + class_ + " ("
                + String.join(
                        " or ",
                        sources.stream()
                                .map(s -> Words.of(s).toLowerCase(Locale.ROOT))
                                .toList())
                + ")";
    }

    private static String plural(String age, int more) {
        return age.toLowerCase(Locale.ROOT) + (more == 1 ? "" : "s");
    }
}
