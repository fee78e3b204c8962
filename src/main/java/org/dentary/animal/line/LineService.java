package org.dentary.animal.line;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Collection;
import java.util.List;

/**
 * Owner of the line list: one open row per kit and disease, which is all that reports read. Every method is one lock and
 * one statement however many kits it is given, in the caller's transaction; where nothing differs nothing is written, and
 * a row is never overwritten but closed and succeeded. Kits without lines are passed over. The cause says what revised
 * the row, in UPPER_SNAKE.
 */
@ApplicationScoped
public class LineService {
    /** The lines of a kit that has none yet, one per disease of the plan. */
    public record NewLine(String kit, String ageClass, boolean ageDisputed, boolean hasSpecimen) {}

    /** The age that stands for a kit's animal; {@code UNKNOWN} where none does. */
    public record AgeOf(String kit, String ageClass, boolean disputed) {}

    /**
     * The outcome of a kit's animal for one disease.
     *
     * @param derivedOutcome what the findings say
     * @param outcome what is released: never {@code SUSPECT}
     * @param footnotes coded footnotes, separated by spaces; empty for none
     */
    public record OutcomeOf(String kit, String disease, String derivedOutcome, String outcome, String footnotes) {}

    private final LineWrites writes;
    private final Clock clock;

    LineService(LineWrites writes, Clock clock) {
        this.writes = writes;
        this.clock = clock;
    }

    /** Opens the lines of animals of unknown age without a specimen; kits that have lines are left alone. */
    @Transactional
    public void openLines(Collection<String> kits, String cause) {
        openLines(
                kits.stream()
                        .map(kit -> new NewLine(kit, "UNKNOWN", false, false))
                        .toList(),
                cause);
    }

    /** Opens lines with what is known already; kits that have lines are left alone. */
    @Transactional
    public void openLines(List<NewLine> lines, String cause) {
        if (!lines.isEmpty()) {
            writes.open(lines, cause, clock.instant());
        }
    }

    /** Copies the animals' facts and exclusion into their lines anew. */
    @Transactional
    public void refreshFacts(Collection<String> kits, String cause) {
        revise(kits.stream().map(kit -> change(kit, null, null)).toList(), cause);
    }

    /** Sets the age that stands for each animal. */
    @Transactional
    public void setAges(List<AgeOf> ages, String cause) {
        revise(
                ages.stream()
                        .map(age -> new LineWrites.Change(
                                age.kit(), null, age.ageClass(), age.disputed(), null, null, null, null))
                        .toList(),
                cause);
    }

    /** Marks that tissue was taken; an outcome of {@code NOT_TESTED} becomes {@code PENDING} with the first. */
    @Transactional
    public void setHasSpecimen(Collection<String> kits, String cause) {
        setHasSpecimen(kits, true, cause);
    }

    /** Marks that tissue was taken, or that none of it came from this animal after all: then the reverse. */
    @Transactional
    public void setHasSpecimen(Collection<String> kits, boolean has, String cause) {
        revise(kits.stream().map(kit -> change(kit, has, null)).toList(), cause);
    }

    /** Sets outcomes. */
    @Transactional
    public void setOutcomes(List<OutcomeOf> outcomes, String cause) {
        revise(
                outcomes.stream()
                        .map(of -> new LineWrites.Change(
                                of.kit(),
                                of.disease(),
                                null,
                                null,
                                null,
                                of.derivedOutcome(),
                                of.outcome(),
                                of.footnotes() == null ? "" : of.footnotes()))
                        .toList(),
                cause);
    }

    /** Marks animals as counted nowhere while a swapped label is unresolved. */
    @Transactional
    public void setNotAttributable(Collection<String> kits, boolean notAttributable, String cause) {
        if (!kits.isEmpty()) {
            List<String> sorted = kits.stream().distinct().sorted().toList();
            writes.lock(sorted);
            writes.setNotAttributable(sorted, notAttributable);
            refreshFacts(sorted, cause);
        }
    }

    /** Sets anew whether animals are counted nowhere, from the swaps and identity exceptions as they stand. */
    @Transactional
    public void settleAttribution(Collection<String> kits, String cause) {
        if (!kits.isEmpty()) {
            List<String> sorted = kits.stream().distinct().sorted().toList();
            writes.lock(sorted);
            writes.settleAttribution(sorted);
            refreshFacts(sorted, cause);
        }
    }

    private void revise(List<LineWrites.Change> changes, String cause) {
        List<String> kits =
                changes.stream().map(LineWrites.Change::kit).distinct().sorted().toList();
        if (!kits.isEmpty() && writes.lockListed(kits)) {
            writes.revise(changes, cause, clock.instant());
        }
    }

    private static LineWrites.Change change(String kit, Boolean hasSpecimen, String disease) {
        return new LineWrites.Change(kit, disease, null, null, hasSpecimen, null, null, null);
    }
}
