package org.dentary.jaw;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.dentary.animal.AnimalView;
import org.dentary.animal.DiedOnPrecision;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.AgeingPlan;
import org.dentary.jaw.key.Certainty;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.JawContext;
import org.dentary.jaw.key.JawFacts;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.key.JawObservation;
import org.dentary.jaw.key.JawRule;
import org.dentary.jaw.key.JawRules;
import org.dentary.jaw.key.JawSide;
import org.dentary.jaw.key.YearClass;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;

/** Puts a reading of an animal's jaw to the key, with all that is known of the animal beside its teeth. */
@ApplicationScoped
class ReadingKey {
    private final AgeingPlans plans;
    private final PlanService plan;
    private final ObjectMapper json;

    ReadingKey(AgeingPlans plans, PlanService plan, ObjectMapper json) {
        this.plans = plans;
        this.plan = plan;
        this.json = json;
    }

    /**
     * What the key, or for other methods the reading itself, says.
     *
     * @param at path of the reading in the request with its dot, or empty
     * @throws InvalidInput naming every field that keeps the key from answering
     */
    JawAnswer answer(AnimalView animal, ReadJaw given, List<JawReadingView> earlier, String at, Instant now) {
        return given.looksAtTeeth() ? askKey(animal, given, earlier, at, now) : taken(animal, given, earlier, at);
    }

    private JawAnswer askKey(AnimalView animal, ReadJaw given, List<JawReadingView> earlier, String at, Instant now) {
        StationView station = plan.station(animal.facts().station());
        AgeingPlan ageing =
                plans.of(animal.season(), station.region(), animal.facts().unit());
        Duration skew = Duration.ofMinutes(
                plan.settings().wholeNumber(PlanSetting.CLOCK_SKEW_MINUTES, animal.season(), station.region(), null));
        JawObservation observation = given.observation(animal.facts().species());
        JawContext context = context(animal, station, given, earlier, now.plus(skew));
        List<FieldProblem> problems = new ArrayList<>();
        JawKey.problems(observation, context, ageing).stream()
                .map(problem -> new FieldProblem(at + problem.field(), problem.rule(), problem.message()))
                .forEach(problems::add);
        if (Boolean.TRUE.equals(given.abnormal())
                && (given.note() == null || given.note().isBlank())) {
            problems.add(new FieldProblem(at + "note", "REQUIRED", "Say what is abnormal or damaged about the jaw"));
        }
        if (given.atLeast() != null) {
            problems.add(new FieldProblem(
                    at + "atLeast", "OTHER_METHODS_ONLY", "A bound is told by other methods; say what the teeth show"));
        }
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        return JawKey.answer(observation, context, ageing);
    }

    private static JawContext context(
            AnimalView animal, StationView station, ReadJaw given, List<JawReadingView> earlier, Instant latest) {
        var facts = animal.facts();
        var details = facts.details();
        JawContext.Animal of = new JawContext.Animal(
                facts.diedOnPrecision() == DiedOnPrecision.DAY ? facts.diedOn() : null,
                JawContext.Sex.valueOf(facts.sex().name()),
                JawContext.SexEvidence.valueOf(facts.sexEvidence().name()),
                details.antlers() == null
                        ? null
                        : JawContext.Antlers.valueOf(details.antlers().name()),
                details.lactating(),
                details.fetusMillimetres(),
                details.fieldDressedKilograms() == null
                        ? null
                        : details.fieldDressedKilograms().doubleValue());
        JawContext.Exam exam = new JawContext.Exam(
                given.readAt().toInstant(),
                latest,
                station.zone(),
                given.jawState(),
                given.method(),
                otherSide(given, earlier));
        List<JawContext.OtherAge> ages = earlier.stream()
                .filter(reading -> !JawReadings.LOOK_AT_TEETH.contains(reading.method()))
                .map(ReadingKey::age)
                .toList();
        return new JawContext(of, exam, new JawContext.Others(ages, null, null));
    }

    /** The class that somebody read from the other side of this jaw, last; null where nobody did. */
    private static AgeClass otherSide(ReadJaw given, List<JawReadingView> earlier) {
        String other = given.side() == JawSide.LEFT ? "RIGHT" : given.side() == JawSide.RIGHT ? "LEFT" : null;
        return earlier.stream()
                .filter(reading -> JawReadings.LOOK_AT_TEETH.contains(reading.method()))
                .filter(reading -> other != null && other.equals(reading.side()))
                .map(JawReadingView::ageClass)
                .reduce((first, last) -> last)
                .orElse(null);
    }

    private static JawContext.OtherAge age(JawReadingView reading) {
        String code = reading.observation() == null
                ? null
                : reading.observation().path("examinersYearClass").textValue();
        YearClass years = Stream.of(YearClass.values())
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElse(null);
        return new JawContext.OtherAge(reading.method(), reading.ageClass(), years);
    }

    /** An age by another method is kept as it was told; of the key's rules only J25 has anything to say to it. */
    private JawAnswer taken(AnimalView animal, ReadJaw given, List<JawReadingView> earlier, String at) {
        AgeClass told =
                given.examinersClass() == null && given.atLeast() != null ? AgeClass.UNKNOWN : given.examinersClass();
        if (told == null || given.atLeast() != null && told != AgeClass.UNKNOWN) {
            throw InvalidInput.field(
                    at + "examinersClass",
                    "REQUIRED",
                    "Give the age by " + given.method()
                            + ": FAWN, YEARLING, ADULT or UNKNOWN; or atLeast, where only the"
                            + " youngest it can be is known");
        }
        if (given.atLeast() == AgeClass.FAWN || given.atLeast() == AgeClass.UNKNOWN) {
            throw InvalidInput.field(
                    at + "atLeast",
                    "INVALID_VALUE",
                    "atLeast is YEARLING (not a fawn) or ADULT; " + given.atLeast() + " rules nothing out");
        }
        Certainty certainty = given.examinersCertainty() == null ? Certainty.PROBABLE : given.examinersCertainty();
        return new JawAnswer(
                null,
                told,
                (given.atLeast() == null ? "By " : "At least " + given.atLeast() + ", never a class, by ")
                        + given.method(),
                null,
                null,
                told == AgeClass.UNKNOWN ? Certainty.UNRESOLVED : certainty,
                List.of(),
                given.method() == AgeingMethod.CEMENTUM ? againstTeeth(animal, given, told, earlier) : List.of(),
                false);
    }

    /** J25 where cementum comes after the teeth were read; both are kept. */
    private List<JawAnswer.Contradiction> againstTeeth(
            AnimalView animal, ReadJaw given, AgeClass told, List<JawReadingView> earlier) {
        JawContext context = new JawContext(
                null,
                null,
                new JawContext.Others(
                        List.of(new JawContext.OtherAge(AgeingMethod.CEMENTUM, told, given.examinersYearClass())),
                        null,
                        null));
        AgeingPlan ageing = plans.of(
                animal.season(),
                plan.station(animal.facts().station()).region(),
                animal.facts().unit());
        JawRule rule = JawRules.ALL.stream()
                .filter(one -> one.id().equals("J25"))
                .findFirst()
                .orElseThrow();
        return earlier.stream()
                .filter(reading -> JawReadings.LOOK_AT_TEETH.contains(reading.method()) && !reading.disputed())
                .map(reading -> new JawFacts(
                        seen(reading).observation(animal.facts().species()), context, ageing, reading.keyClass()))
                .flatMap(facts -> rule.of(facts).stream())
                .limit(1)
                .toList();
    }

    private ReadJaw seen(JawReadingView reading) {
        try {
            return json.treeToValue(reading.observation(), ReadJaw.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a reading is not what was written", e);
        }
    }
}
