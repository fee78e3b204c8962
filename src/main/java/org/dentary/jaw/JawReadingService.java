package org.dentary.jaw;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.dentary.animal.AnimalService;
import org.dentary.animal.AnimalView;
import org.dentary.animal.DiedOnPrecision;
import org.dentary.animal.LineService;
import org.dentary.people.Custodian;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.PlanSetting;
import org.dentary.plan.StationView;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Readings of jaws: kept exactly as given, answered by the key, never overwritten; and the age that stands. */
@ApplicationScoped
public class JawReadingService {
    private static final String READING = "jaw-reading";
    private static final String DESIGNATION = "designated-age";
    private static final int QUEUE_LIMIT = 500;

    private final JawReadingQueries queries;
    private final JawReadingWrites writes;
    private final AgeingPlans plans;
    private final AnimalService animals;
    private final LineService lines;
    private final PeopleService people;
    private final PlanService plan;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Clock clock;

    JawReadingService(
            JawReadingQueries queries,
            JawReadingWrites writes,
            AgeingPlans plans,
            AnimalService animals,
            LineService lines,
            PeopleService people,
            PlanService plan,
            RepeatableRequests requests,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.plans = plans;
        this.animals = animals;
        this.lines = lines;
        this.people = people;
        this.plan = plan;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    private record Sent(String kit, ReadJaw reading) {}

    private record Decision(String kit, DesignateAge decision) {}

    /** The readings of an animal, in the order they were received. */
    public List<JawReadingView> readings(String kit) {
        return queries.ofKit(kit);
    }

    /** The decisions which age stands, oldest first; the last rules. */
    public List<DesignationView> designations(String kit) {
        return queries.designations(kit);
    }

    /**
     * Keeps a reading of an animal that was taken in, and sets its lines' age. Sent again it changes nothing.
     *
     * @param at path of the reading in the request with its dot, or empty
     * @return whether it is new
     * @throws InvalidInput naming every field that keeps the key from answering
     * @throws RuleBroken if this person has read this jaw, or the id stands for another reading
     */
    @Transactional
    public boolean record(String kit, ReadJaw given, String at) {
        animals.lockedVersion(kit);
        AnimalView animal = animals.animal(kit);
        Integer version = queries.byId(given.id()).isEmpty() ? null : 0;
        Sent sent = new Sent(kit, given);
        if (requests.compare(READING, given.id().toString(), sent, null, version) == Seen.REPLAY) {
            return false;
        }
        Instant now = clock.instant();
        String examiner = examiner(given, at);
        List<JawReadingView> earlier = queries.ofKit(kit);
        refuseSameReader(kit, given, examiner, earlier);
        JawAnswer answer = given.looksAtTeeth() ? askKey(animal, given, earlier, at, now) : taken(given, at);
        boolean others =
                earlier.stream().anyMatch(reading -> !reading.examiner().equals(examiner));
        boolean blind = others && !Boolean.FALSE.equals(given.blind());
        writes.append(kit, given, examiner, answer, blind, current.get().actor(), now);
        requests.accept(READING, given.id().toString(), sent);
        lines.setAges(List.of(standing(kit)), "JAW_READING");
        return true;
    }

    /** The age that stands for an animal by its readings and designations. */
    public LineService.AgeOf standing(String kit) {
        List<DesignationView> designations = queries.designations(kit);
        AgeClass designated = designations.isEmpty()
                ? null
                : AgeClass.valueOf(designations.get(designations.size() - 1).ageClass());
        JawReadings.Standing standing = JawReadings.standing(
                queries.ofKit(kit).stream()
                        .map(reading -> new JawReadings.Said(
                                reading.method(), reading.ageClass(), reading.certainty(), reading.disputed()))
                        .toList(),
                designated);
        return new LineService.AgeOf(kit, standing.ageClass().name(), standing.disputed());
    }

    /**
     * Decides which age stands.
     *
     * @param ifMatch needed to decide anew
     * @return how often it has been decided, as the version
     * @throws NotAllowed if who decides gave a reading of this jaw
     */
    @Transactional
    public Decided designate(String kit, DesignateAge decision, String ifMatch) {
        animals.lockedVersion(kit);
        animals.animal(kit);
        int decided = queries.designations(kit).size();
        Decision sent = new Decision(kit, decision);
        Seen seen = requests.compare(DESIGNATION, kit, sent, ifMatch, decided == 0 ? null : decided);
        if (seen == Seen.REPLAY) {
            return new Decided(decided, false);
        }
        String actor = current.get().actor();
        if (queries.hasRead(kit, actor)) {
            throw new NotAllowed(
                    "READER_CANNOT_DECIDE",
                    actor + " gave a reading of this jaw; another person decides which age stands");
        }
        writes.designate(kit, decision.reading(), designated(kit, decision), decision.reason(), actor, clock.instant());
        requests.accept(DESIGNATION, kit, sent);
        lines.setAges(List.of(standing(kit)), "DESIGNATED_AGE");
        return new Decided(decided + 1, decided == 0);
    }

    /** Which designation of the animal this was, and whether the first. */
    public record Decided(int version, boolean first) {}

    /**
     * Jaws with something to do, longest waiting first, at most 500.
     *
     * @param station null: every station
     * @param task {@code READ}, {@code READ_AGAIN}, {@code DECIDE}, or null for all
     */
    public List<JawTask> queue(String station, String task) {
        return queries.queue(station, task, null, share(), QUEUE_LIMIT);
    }

    /** What is to be done about this animal's jaw, or empty. */
    public Optional<JawTask> task(String kit) {
        return queries.queue(null, null, kit, share(), 1).stream().findFirst();
    }

    /** Whether this person has given a reading of the animal. */
    public boolean hasRead(String kit, String person) {
        return queries.hasRead(kit, person);
    }

    private BigDecimal share() {
        return plan.settings().share(PlanSetting.BLIND_SECOND_READING_SHARE, null, null, null);
    }

    private AgeClass designated(String kit, DesignateAge decision) {
        if (decision.reading() == null) {
            return decision.ageClass();
        }
        List<JawReadingView> readings = queries.ofKit(kit);
        JawReadingView reading = readings.stream()
                .filter(each -> each.id().equals(decision.reading()))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        "reading",
                        "READING_UNKNOWN",
                        "Kit " + kit + " has no reading " + decision.reading() + "; choose one of its own"));
        boolean examined = readings.stream().anyMatch(each -> JawReadings.LOOK_AT_TEETH.contains(each.method()));
        if (!reading.method().mayBeDesignated(examined)) {
            throw new RuleBroken(
                    "J26",
                    "An age by " + reading.method()
                            + " cannot stand above an examined jaw; choose a reading of the jaw");
        }
        return reading.ageClass();
    }

    private String examiner(ReadJaw given, String at) {
        if (given.examiner() == null || given.examiner().isBlank()) {
            return current.get().actor();
        }
        Map<String, Custodian> found =
                people.custodians(List.of(given.examiner().trim()));
        Custodian person = found.get(given.examiner().trim());
        if (person == null || person.kind() != Custodian.Kind.PERSON) {
            throw InvalidInput.field(
                    at + "examiner",
                    "PERSON_UNKNOWN",
                    "'" + given.examiner() + "' is nobody on the roster and no sign-in name; give a person's code, or"
                            + " leave it out if you read the jaw yourself");
        }
        return person.code();
    }

    private void refuseSameReader(String kit, ReadJaw given, String examiner, List<JawReadingView> earlier) {
        boolean again = earlier.stream()
                .anyMatch(reading -> reading.examiner().equals(examiner)
                        && (given.looksAtTeeth()
                                ? JawReadings.LOOK_AT_TEETH.contains(reading.method())
                                : reading.method() == given.methodOrDefault()));
        if (again) {
            throw new RuleBroken(
                    "SAME_READER",
                    examiner + " has read the jaw of kit " + kit
                            + " already; a second reading is another person's, and a"
                            + " third person decides between them");
        }
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

    /**
     * The reading of that id.
     *
     * @throws NotFound if there is none
     */
    public JawReadingView reading(UUID id) {
        return queries.byId(id).stream()
                .findFirst()
                .orElseThrow(() -> new NotFound("READING_UNKNOWN", "No jaw reading " + id + " is recorded"));
    }
}
