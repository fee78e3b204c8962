package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.dentary.platform.account.CurrentAccount;

/** Lists of submissions, and of what waits to be sent or reported, as the account at hand may see them. */
@ApplicationScoped
public class SubmissionLists {
    private final SubmissionQueries queries;
    private final OutstandingQueries outstanding;
    private final CurrentAccount account;
    private final Clock clock;

    SubmissionLists(SubmissionQueries queries, OutstandingQueries outstanding, CurrentAccount account, Clock clock) {
        this.queries = queries;
        this.outstanding = outstanding;
        this.account = account;
        this.clock = clock;
    }

    /** Submissions in some states (none for all), newest first, those with smaller numbers than {@code before}. */
    List<SubmissionQueries.Head> list(List<String> states, String laboratory, Long before, int most) {
        return queries.list(states, laboratory, before, most, sight());
    }

    /** Collected and in no submission, longest first, at most so many. */
    List<OutstandingQueries.Waiting> waiting(int most) {
        return outstanding.waiting(LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC), most, sight());
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
        return new Waits(
                outstanding.countWaiting(LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC), sight()),
                outstanding.countOverdue(clock.instant(), sight()));
    }

    /** Sent and not reported within the promised days, longest first, at most so many. */
    List<OutstandingQueries.Overdue> overdue(int most) {
        return outstanding.overdue(clock.instant(), most, sight());
    }

    List<OutstandingQueries.Turnaround> turnaround() {
        return outstanding.turnaround(sight());
    }

    private Sight sight() {
        return Sight.of(account.get());
    }
}
