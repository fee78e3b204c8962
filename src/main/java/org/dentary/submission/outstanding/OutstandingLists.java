package org.dentary.submission.outstanding;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.dentary.plan.PlanClock;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.submission.Sight;

/** What waits to be sent or reported, and how long laboratories take, as the account at hand may see it. */
@ApplicationScoped
public class OutstandingLists {
    private final OutstandingQueries queries;
    private final CurrentAccount account;
    private final PlanClock planClock;
    private final Clock clock;

    OutstandingLists(OutstandingQueries queries, CurrentAccount account, PlanClock planClock, Clock clock) {
        this.queries = queries;
        this.account = account;
        this.planClock = planClock;
        this.clock = clock;
    }

    /** Collected and in no submission, longest first, at most so many. */
    public List<OutstandingQueries.Waiting> waiting(int most) {
        return queries.waiting(today(), most, sight());
    }

    /**
     * What the account is shown as waiting.
     *
     * @param unsent specimens collected and in no submission
     * @param overdue specimens sent and not reported within the promised days
     */
    public record Waits(long unsent, long overdue) {}

    /** How many wait, as the lists of {@link #waiting} and {@link #overdue} have them. */
    public Waits waits() {
        return new Waits(queries.countWaiting(today(), sight()), queries.countOverdue(clock.instant(), sight()));
    }

    /** Sent and not reported within the promised days, longest first, at most so many. */
    public List<OutstandingQueries.Overdue> overdue(int most) {
        return queries.overdue(clock.instant(), most, sight());
    }

    /** Days from dispatch to final report, a line a laboratory that reported, by code. */
    public List<OutstandingQueries.Turnaround> turnaround() {
        return queries.turnaround(sight());
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), planClock.zone());
    }

    private Sight sight() {
        return Sight.of(account.get());
    }
}
