package org.dentary.intake;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.animal.AnimalFacts;
import org.dentary.animal.AnimalRules;
import org.dentary.animal.AnimalService;
import org.dentary.animal.JawStatus;
import org.dentary.animal.line.LineService;
import org.dentary.custody.Collected;
import org.dentary.custody.CustodyService;
import org.dentary.jaw.JawReadingService;
import org.dentary.jaw.ReadJaw;
import org.dentary.kit.KitService;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.StationView;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.problem.StaleVersion;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.specimen.SpecimenService;
import org.dentary.specimen.SpecimensRecorded;
import org.dentary.specimen.TakeSpecimen;

/**
 * Takes animals in, whole: all of a request is recorded or none of it. Every write can be sent again and then changes
 * nothing.
 */
@ApplicationScoped
public class IntakeService {
    private static final String ANIMAL = "animal";

    private final KitService kits;
    private final AnimalService animals;
    private final LineService lines;
    private final JawReadingService jaws;
    private final SpecimenService specimens;
    private final CustodyService custody;
    private final PrivateService privates;
    private final PlanService plan;
    private final PeopleService people;
    private final RepeatableRequests requests;
    private final Event<SpecimensRecorded> recorded;
    private final CurrentAccount current;

    IntakeService(
            KitService kits,
            AnimalService animals,
            LineService lines,
            JawReadingService jaws,
            SpecimenService specimens,
            CustodyService custody,
            PrivateService privates,
            PlanService plan,
            PeopleService people,
            RepeatableRequests requests,
            Event<SpecimensRecorded> recorded,
            CurrentAccount current) {
        this.kits = kits;
        this.animals = animals;
        this.lines = lines;
        this.jaws = jaws;
        this.specimens = specimens;
        this.custody = custody;
        this.privates = privates;
        this.plan = plan;
        this.people = people;
        this.requests = requests;
        this.recorded = recorded;
        this.current = current;
    }

    /**
     * Takes an animal in, or corrects its facts. With a correction, new readings and specimens in the body are added,
     * absent ones stay.
     *
     * @param typed the kit, or any label of it
     * @param ifMatch today's ETag where the animal is there already, else null
     * @throws NotAllowed if the protocol is not acknowledged or the station is not the account's
     * @throws RuleBroken other content without {@code ifMatch}, or a label, reading or link in the way
     * @throws StaleVersion other content with an old {@code ifMatch}
     * @throws InvalidInput naming every field at fault
     */
    @Transactional
    public Taken take(String typed, TakeInAnimal given, String ifMatch) {
        people.requireAcknowledged(current.get());
        String kit = kits.kit(typed);
        Integer version = animals.lockedVersion(kit).orElse(null);
        Seen seen = requests.compare(ANIMAL, kit, given, ifMatch, version);
        if (seen == Seen.REPLAY) {
            return new Taken(kit, false, version, List.of());
        }
        StationView station = station(given);
        privates.requireServed(station.code());
        AnimalFacts facts = given.facts(AnimalRules.diedOn(given.diedOn(), station.zone()));
        requireJawSaid(given);
        Taken taken = seen == Seen.NEW ? takeNew(kit, given, facts) : correct(kit, given, facts, version + 1);
        privates.keep(kit, facts.unit(), given.contact(), given.point());
        requests.accept(ANIMAL, kit, given);
        return taken;
    }

    private Taken takeNew(String kit, TakeInAnimal given, AnimalFacts facts) {
        animals.take(kit, facts);
        if (given.jawReading() != null) {
            jaws.record(kit, identified(given.jawReading()), "jawReading.");
        }
        SpecimenService.Recorded tissue = specimens.record(kit, given.specimens(), "specimens");
        begin(tissue.added(), given.enteredAt(), facts.station());
        LineService.AgeOf age = jaws.standing(kit);
        boolean has = !tissue.added().isEmpty();
        lines.openLines(List.of(new LineService.NewLine(kit, age.ageClass(), age.disputed(), has)), "INTAKE");
        if (has) {
            recorded.fire(new SpecimensRecorded(List.of(kit), "INTAKE"));
        }
        return new Taken(kit, true, 0, tissue.warnings());
    }

    private Taken correct(String kit, TakeInAnimal given, AnimalFacts facts, int version) {
        if (given.reason() == null || given.reason().isBlank()) {
            throw InvalidInput.field("reason", "REQUIRED", "Say why the animal's facts are changed");
        }
        animals.correct(kit, facts, given.reason());
        if (given.jawReading() != null) {
            jaws.record(kit, identified(given.jawReading()), "jawReading.");
        }
        List<String> warnings = add(kit, given.specimens(), "specimens", given.enteredAt(), facts.station());
        recorded.fire(new SpecimensRecorded(List.of(kit), "CORRECTION"));
        return new Taken(kit, false, version, warnings);
    }

    /** Adds a reading that comes later than the animal; the reading's id is the address's. */
    @Transactional
    public Taken read(String typed, UUID id, ReadJaw given) {
        people.requireAcknowledged(current.get());
        if (given.id() != null && !given.id().equals(id)) {
            throw InvalidInput.field("id", "OTHER_ID", "The id is " + given.id() + " and the address says " + id);
        }
        String kit = kits.kit(typed);
        boolean isNew = jaws.record(kit, given.as(id), "");
        return new Taken(kit, isNew, 0, List.of());
    }

    /**
     * Adds a specimen that comes later than the animal, or corrects it with {@code ifMatch} and a reason.
     *
     * @throws StaleVersion for an old {@code ifMatch}, or for any where nothing is recorded under the label
     */
    @Transactional
    public Taken specimen(String typed, String typedCode, TakeSpecimen given, String ifMatch) {
        people.requireAcknowledged(current.get());
        String kit = kits.kit(typed);
        String code = kits.label(typedCode).code();
        if (given.code() != null && !kits.label(given.code()).code().equals(code)) {
            throw InvalidInput.field(
                    "code", "OTHER_CODE", "The code is " + given.code() + " and the address says " + code);
        }
        TakeSpecimen specimen = given.under(code);
        if (ifMatch != null) {
            int version = specimens.correct(kit, specimen, ifMatch);
            recorded.fire(new SpecimensRecorded(List.of(kit), "SPECIMEN_CORRECTED"));
            return new Taken(kit, false, version, List.of());
        }
        boolean isNew = !specimens.exists(code);
        List<String> warnings = add(
                kit, List.of(specimen), "", null, animals.animal(kit).facts().station());
        return new Taken(kit, isNew, specimens.specimen(code).version(), warnings);
    }

    /** Adds several specimens that come later than the animal, all or none. */
    @Transactional
    public Taken specimens(String typed, List<TakeSpecimen> given) {
        people.requireAcknowledged(current.get());
        String kit = kits.kit(typed);
        String station = animals.animal(kit).facts().station();
        return new Taken(kit, true, 0, add(kit, given, "specimens", null, station));
    }

    private List<String> add(
            String kit, List<TakeSpecimen> given, String at, OffsetDateTime enteredAt, String station) {
        SpecimenService.Recorded tissue = specimens.record(kit, given, at);
        begin(tissue.added(), enteredAt, station);
        if (!tissue.added().isEmpty()) {
            recorded.fire(new SpecimensRecorded(List.of(kit), "SPECIMEN"));
        }
        return tissue.warnings();
    }

    private void begin(List<TakeSpecimen> added, OffsetDateTime enteredAt, String station) {
        custody.collected(added.stream()
                .map(specimen -> new Collected(
                        specimen.code(),
                        specimen.collectedAt().toInstant(),
                        Optional.ofNullable(specimen.enteredAt())
                                .or(() -> Optional.ofNullable(enteredAt))
                                .map(OffsetDateTime::toInstant)
                                .orElse(null),
                        specimen.place() == null ? station : specimen.place(),
                        specimen.condition().name()))
                .toList());
    }

    private StationView station(TakeInAnimal given) {
        return plan.stations().stream()
                .filter(station -> station.code().equals(given.station().trim()))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        "station",
                        "STATION_UNKNOWN",
                        "'" + given.station() + "' is no station of the plan; allowed: "
                                + String.join(
                                        ", ",
                                        plan.stations().stream()
                                                .map(StationView::code)
                                                .toList())));
    }

    private static void requireJawSaid(TakeInAnimal given) {
        List<FieldProblem> problems = new ArrayList<>();
        if (given.jawStatus() == null && given.jawReading() == null) {
            problems.add(new FieldProblem(
                    "jawStatus",
                    "REQUIRED",
                    "Say READ, COLLECTED_TO_READ, PHOTO_TO_READ, or NOT_EXAMINED with jawReason"));
        }
        if (given.jawStatus() == JawStatus.NOT_EXAMINED && given.jawReading() != null) {
            problems.add(new FieldProblem(
                    "jawStatus",
                    "READING_GIVEN",
                    "The jaw is said not to be examined and a reading is given; say READ"));
        }
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
    }

    private static ReadJaw identified(ReadJaw reading) {
        if (reading.id() == null) {
            throw InvalidInput.field(
                    "jawReading.id", "REQUIRED", "Give the reading a UUID of your own, so that it can be sent again");
        }
        return reading;
    }
}
