package org.dentary.result.correction;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.result.outcome.OutcomesDerived;

/** Everybody who had a released word that was replaced is told of it: who they are, and every try. */
@ApplicationScoped
public class CorrectionService {
    private static final String RESOURCE = "correction-attempt";
    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(5);
    /** A first entry replaces nothing. */
    private static final Set<String> NEVER_REPLACES = Set.of("INTAKE", "ORDER");
    /** Who reads released detections and is not told by the work list itself. */
    private static final List<String> READERS =
            List.of(Role.SAMPLER.name(), Role.LIAISON.name(), Role.EPIDEMIOLOGIST.name());

    private final CorrectionQueries queries;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Clock clock;
    private final EntityManager entities;

    CorrectionService(
            CorrectionQueries queries,
            RepeatableRequests requests,
            CurrentAccount account,
            Clock clock,
            EntityManager entities) {
        this.queries = queries;
        this.requests = requests;
        this.account = account;
        this.clock = clock;
        this.entities = entities;
    }

    /** A correction afterwards, and whether the try is new. */
    record Recorded(CorrectionView correction, boolean fresh) {}

    @Transactional
    void whenOutcomesAreDerived(@Observes OutcomesDerived derived) {
        if (!NEVER_REPLACES.contains(derived.cause())) {
            queries.find(derived.kits(), READERS);
        }
    }

    /**
     * Corrections, newest first.
     *
     * @param state {@code OPEN}, {@code DONE}, {@code SUPERSEDED}, or empty for all
     * @param before the id where the page before ended, or null for the first
     */
    List<CorrectionView.Head> list(String state, Long before, int limit) {
        return queries.heads(state, 0, before == null ? Long.MAX_VALUE : before, limit);
    }

    /** All of a state, to be streamed: {@link CorrectionView.Head}s. */
    Callable<Query> all(String state) {
        return () -> queries.heads(state);
    }

    /** How many wait to be told, and the oldest. */
    public CorrectionQueries.Waiting waiting() {
        return queries.open();
    }

    CorrectionView correction(long id) {
        return queries.correction(id)
                .orElseThrow(() -> new NotFound("CORRECTION_UNKNOWN", "No correction " + id + " is recorded"));
    }

    /**
     * Records a try to tell somebody who had the earlier word.
     *
     * @throws NotFound (404) where that correction has no such recipient
     * @throws RuleBroken (409) for the person who brought the animal, who is told by the notifications, and where a later
     *     correction stands in the place of this one
     * @throws InvalidInput (422) for a time ahead
     */
    @Transactional
    Recorded record(long id, long recipient, UUID key, RecordTry attempt) {
        boolean present = queries.isRecorded(key);
        String name = id + " " + recipient + " " + key;
        if (requests.compare(RESOURCE, name, attempt, present) == Seen.REPLAY) {
            return new Recorded(correction(id), false);
        }
        CorrectionView correction = correction(id);
        CorrectionView.Recipient to = correction.recipients().stream()
                .filter(one -> one.id() == recipient)
                .findFirst()
                .orElseThrow(() -> new NotFound(
                        "RECIPIENT_UNKNOWN", "Nobody " + recipient + " had the earlier word of correction " + id));
        check(correction, to, attempt);
        queries.insert(key, recipient, attempt, account.get().actor(), clock.instant());
        requests.accept(RESOURCE, name, attempt);
        entities.flush();
        return new Recorded(correction(id), true);
    }

    private void check(CorrectionView correction, CorrectionView.Recipient to, RecordTry attempt) {
        if (to.kind().equals("CONTACT")) {
            throw new RuleBroken(
                    "TOLD_BY_NOTIFICATION",
                    "Whoever brought the animal is told under /notifications/"
                            + to.recipient() + "/" + correction.head().disease()
                            + "; record the try there");
        }
        if (correction.head().state().equals("SUPERSEDED")) {
            throw new RuleBroken(
                    "SUPERSEDED",
                    "The word was replaced once more; tell of the newest correction of "
                            + correction.head().kit());
        }
        if (attempt.at().toInstant().isAfter(clock.instant().plus(CLOCKS_DIFFER))) {
            throw InvalidInput.field("at", "IN_THE_FUTURE", "Give the time at which it was tried, not one ahead");
        }
    }
}
