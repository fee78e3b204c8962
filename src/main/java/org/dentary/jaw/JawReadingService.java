package org.dentary.jaw;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.animal.AnimalService;
import org.dentary.animal.AnimalView;
import org.dentary.animal.line.LineService;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.JawKey;
import org.dentary.people.Custodian;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Readings of jaws: kept exactly as given, answered by the key, never overwritten; and the age that stands by them. */
@ApplicationScoped
public class JawReadingService {
    private static final String READING = "jaw-reading";

    private final JawReadingQueries queries;
    private final JawReadingWrites writes;
    private final ReadingKey key;
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
            ReadingKey key,
            AnimalService animals,
            LineService lines,
            PeopleService people,
            PlanService plan,
            RepeatableRequests requests,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.key = key;
        this.animals = animals;
        this.lines = lines;
        this.people = people;
        this.plan = plan;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    private record Sent(String kit, ReadJaw reading) {}

    /** The readings of an animal, in the order they were received. */
    public List<JawReadingView> readings(String kit) {
        return queries.ofKit(kit);
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
        if (requests.compare(READING, given.id().toString(), sent, version != null) == Seen.REPLAY) {
            return false;
        }
        Instant now = clock.instant();
        String examiner = examiner(given, at);
        List<JawReadingView> earlier = queries.ofKit(kit);
        refuseSameReader(kit, given, examiner, earlier);
        JawAnswer answer = key.answer(animal, given, earlier, at, now);
        writes.append(
                kit,
                given,
                examiner,
                answer,
                terms(animal, given, examiner, earlier),
                current.get().actor(),
                now);
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
                queries.ofKit(kit).stream().map(JawReadings.Said::of).toList(), designated);
        return new LineService.AgeOf(kit, standing.ageClass().name(), standing.disputed());
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

    private JawReadingWrites.Terms terms(
            AnimalView animal, ReadJaw given, String examiner, List<JawReadingView> earlier) {
        String region = plan.station(animal.facts().station()).region();
        PlanSettings settings = plan.settings();
        boolean others =
                earlier.stream().anyMatch(reading -> !reading.examiner().equals(examiner));
        boolean blind = others && !Boolean.FALSE.equals(given.blind());
        boolean first = given.looksAtTeeth()
                && earlier.stream().noneMatch(reading -> JawReadings.LOOK_AT_TEETH.contains(reading.method()));
        BigDecimal share = settings.share(
                PlanSetting.BLIND_SECOND_READING_SHARE,
                animal.season(),
                region,
                animal.facts().unit());
        BigDecimal needed = settings.share(
                PlanSetting.PRACTICE_SCORE_NEEDED,
                animal.season(),
                region,
                animal.facts().unit());
        int jaws = settings.wholeNumber(PlanSetting.PRACTICE_ROUND_JAWS, null, null, null);
        boolean alone = !given.looksAtTeeth()
                || needed.signum() == 0
                || queries.hasPracticed(examiner, JawKey.RULE_SET_VERSION, jaws, needed);
        return new JawReadingWrites.Terms(blind, first && JawLot.isDrawn(animal.kit(), share), alone);
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
