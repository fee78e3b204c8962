package org.dentary.animal.line;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

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
        revise(
                kits.stream()
                        .map(kit -> new LineWrites.Change(kit, null, null, null, null, null, null, null))
                        .toList(),
                cause);
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

    /**
     * Keeps others from revising, linking and unlinking these animals until the transaction ends, under every kit that is
     * one of them. Whoever changes what {@link #settle} reads begins with it.
     *
     * @return all those kits, sorted
     */
    @Transactional
    public List<String> hold(Collection<String> kits) {
        return kits.isEmpty()
                ? List.of()
                : writes.hold(kits.stream().distinct().sorted().toList());
    }

    /**
     * Sets anew, under every kit of the animals, what their labels and links come to: whether tissue was taken, and whether
     * they are counted nowhere while a swap or an identity exception is open. An outcome of {@code NOT_TESTED} becomes
     * {@code PENDING} with the first tissue, and the reverse where none of it is the animal's after all.
     */
    @Transactional
    public void settle(Collection<String> kits, String cause) {
        if (kits.isEmpty() || !writes.areListed(kits)) {
            return;
        }
        List<String> all = hold(kits);
        writes.settle(all);
        Set<String> with = new HashSet<>(writes.withTissue(all));
        revise(
                all.stream()
                        .map(kit -> new LineWrites.Change(kit, null, null, null, with.contains(kit), null, null, null))
                        .toList(),
                cause);
    }

    private void revise(List<LineWrites.Change> changes, String cause) {
        List<String> kits =
                changes.stream().map(LineWrites.Change::kit).distinct().sorted().toList();
        if (!kits.isEmpty() && writes.lockListed(kits)) {
            writes.revise(changes, cause, clock.instant());
        }
    }
}
