package org.dentary.jaw;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import org.dentary.animal.AnimalService;
import org.dentary.animal.line.LineService;
import org.dentary.jaw.key.AgeClass;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Which age stands for an animal whose readers differ: decided by somebody who gave none of its readings. */
@ApplicationScoped
public class AgeDesignationService {
    private static final String DESIGNATION = "designated-age";

    private final JawReadingQueries queries;
    private final JawReadingWrites writes;
    private final JawReadingService readings;
    private final AnimalService animals;
    private final LineService lines;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Clock clock;

    AgeDesignationService(
            JawReadingQueries queries,
            JawReadingWrites writes,
            JawReadingService readings,
            AnimalService animals,
            LineService lines,
            RepeatableRequests requests,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.writes = writes;
        this.readings = readings;
        this.animals = animals;
        this.lines = lines;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    private record Decision(String kit, DesignateAge decision) {}

    /** The decisions which age stands, oldest first; the last rules. */
    public List<DesignationView> designations(String kit) {
        return queries.designations(kit);
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
        lines.setAges(List.of(readings.standing(kit)), "DESIGNATED_AGE");
        return new Decided(decided + 1, decided == 0);
    }

    /** Which designation of the animal this was, and whether the first. */
    public record Decided(int version, boolean first) {}

    private AgeClass designated(String kit, DesignateAge decision) {
        if (decision.reading() == null) {
            return decision.ageClass();
        }
        List<JawReadingView> given = queries.ofKit(kit);
        JawReadingView reading = given.stream()
                .filter(each -> each.id().equals(decision.reading()))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        "reading",
                        "READING_UNKNOWN",
                        "Kit " + kit + " has no reading " + decision.reading() + "; choose one of its own"));
        boolean examined = given.stream().anyMatch(each -> JawReadings.LOOK_AT_TEETH.contains(each.method()));
        if (!reading.method().mayBeDesignated(examined)) {
            throw new RuleBroken(
                    "J26",
                    "An age by " + reading.method()
                            + " cannot stand above an examined jaw; choose a reading of the jaw");
        }
        return reading.ageClass();
    }
}
