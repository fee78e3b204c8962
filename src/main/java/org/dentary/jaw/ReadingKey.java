package org.dentary.jaw;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.dentary.animal.AnimalView;
import org.dentary.animal.DiedOnPrecision;
import org.dentary.plan.PlanService;
import org.dentary.plan.PlanSetting;
import org.dentary.plan.StationView;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;

/** Puts a reading of an animal's jaw to the key, with all that is known of the animal beside its teeth. */
@ApplicationScoped
class ReadingKey {
    private final AgeingPlans plans;
    private final PlanService plan;

    ReadingKey(AgeingPlans plans, PlanService plan) {
        this.plans = plans;
        this.plan = plan;
    }

    /**
     * What the key, or for other methods the reading itself, says.
     *
     * @param at path of the reading in the request with its dot, or empty
     * @throws InvalidInput naming every field that keeps the key from answering
     */
    JawAnswer answer(AnimalView animal, ReadJaw given, List<JawReadingView> earlier, String at, Instant now) {
        return given.looksAtTeeth() ? askKey(animal, given, earlier, at, now) : taken(given, at);
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
                given.readAt().toInstant(), latest, station.zone(), given.jawState(), given.method(), null);
        List<JawContext.OtherAge> ages = earlier.stream()
                .filter(reading -> !JawReadings.LOOK_AT_TEETH.contains(reading.method()))
                .map(reading -> new JawContext.OtherAge(reading.method(), reading.ageClass(), null))
                .toList();
        return new JawContext(of, exam, new JawContext.Others(ages, null, null));
    }

    /** An age by another method is kept as it was told; the key has nothing to say to it. */
    private static JawAnswer taken(ReadJaw given, String at) {
        if (given.examinersClass() == null) {
            throw InvalidInput.field(
                    at + "examinersClass",
                    "REQUIRED",
                    "Give the age by " + given.method() + ": FAWN, YEARLING, ADULT or UNKNOWN");
        }
        Certainty certainty = given.examinersCertainty() == null ? Certainty.PROBABLE : given.examinersCertainty();
        return new JawAnswer(
                null,
                given.examinersClass(),
                "By " + given.method(),
                null,
                null,
                given.examinersClass() == AgeClass.UNKNOWN ? Certainty.UNRESOLVED : certainty,
                List.of(),
                List.of(),
                false);
    }
}
