package org.dentary.cautions;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;

/**
 * The cautions in force, newest version of each, in set-up order. One that is about a single disease is shown only once a
 * person has reviewed it; the others are shown from the start, marked as not reviewed locally until they are.
 */
@ApplicationScoped
public class CautionService {
    private final CautionQueries queries;
    private final CautionRepository repository;
    private final Clock clock;

    CautionService(CautionQueries queries, CautionRepository repository, Clock clock) {
        this.queries = queries;
        this.repository = repository;
        this.clock = clock;
    }

    /** Every caution in force, those not shown yet included. */
    public List<CautionView> inForce() {
        LocalDate today = LocalDate.ofInstant(clock.instant(), java.time.ZoneOffset.UTC);
        return queries.inForce().stream().map(row -> row.view(today)).toList();
    }

    /** What is shown at a step, whatever the disease. */
    public List<CautionView> at(Hazard hazard) {
        return inForce().stream()
                .filter(caution -> caution.isShownAt(hazard))
                .filter(caution -> caution.disease() == null || caution.reviewed())
                .toList();
    }

    /** What is shown at a step when one disease is looked at: its own cautions and those for every disease. */
    public List<CautionView> at(Hazard hazard, String disease) {
        return at(hazard).stream()
                .filter(caution ->
                        caution.disease() == null || caution.disease().equals(disease))
                .toList();
    }

    /** Cautions that nobody has reviewed. */
    public List<CautionView> unreviewed() {
        return inForce().stream().filter(caution -> !caution.reviewed()).toList();
    }

    /**
     * Records that a person reviewed a caution as it stands.
     *
     * @param by roster code of the person
     * @param again day by which it is to be reviewed again, after today
     */
    @Transactional
    public void review(String code, String version, String by, LocalDate on, LocalDate again) {
        if (!again.isAfter(on)) {
            throw InvalidInput.field(
                    "reviewBy", "DAYS_REVERSED", "The next review, " + again + ", must lie after this one, " + on);
        }
        Caution caution = repository.findById(new Caution.Key(code, version));
        if (caution == null) {
            throw new NotFound("CAUTION_UNKNOWN", "There is no version " + version + " of a caution '" + code + "'");
        }
        caution.review(by, on, again);
        repository.flush();
    }
}
