package org.dentary.submission.outstanding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Query;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.plan.PlanClock;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.table.Page;
import org.dentary.submission.Sight;

/** What waits to be sent or reported, and how long laboratories take, as the account at hand may see it. */
@ApplicationScoped
public class OutstandingLists {
    private static final Pattern MARK = Pattern.compile("(\\d{1,18})-(\\w+)");

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

    /**
     * A page of a list, with how many there are in all.
     *
     * @param total beyond this page too
     */
    public record Part<T>(Page<T> page, long total) {
        public List<T> items() {
            return page.items();
        }

        public boolean isMore() {
            return page.more();
        }
    }

    /**
     * Collected and in no submission, longest first, at most so many.
     *
     * @param after code of the last one told, or null
     */
    @SuppressWarnings("unchecked")
    public Part<OutstandingQueries.Waiting> waiting(String after, int most) {
        List<OutstandingQueries.WaitingRow> rows =
                queries.waiting(today(), after, most + 1, sight()).getResultList();
        return new Part<>(
                Page.of(rows, most).map(OutstandingQueries.WaitingRow::row),
                rows.isEmpty() ? queries.countWaiting(sight()) : rows.get(0).total());
    }

    /** All of them, to be streamed: {@link OutstandingQueries.WaitingRow}s. */
    Callable<Query> waiting() {
        LocalDate day = today();
        Sight sight = sight();
        return () -> queries.waiting(day, null, null, sight);
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
        return new Waits(queries.countWaiting(sight()), queries.countOverdue(clock.instant(), sight()));
    }

    /**
     * Sent and not reported within the promised days, longest first, at most so many.
     *
     * @param after {@link #mark} of the last one told, or null
     * @throws InvalidInput for what is no such mark
     */
    @SuppressWarnings("unchecked")
    public Part<OutstandingQueries.Overdue> overdue(String after, int most) {
        Instant now = clock.instant();
        List<OutstandingQueries.OverdueRow> rows =
                queries.overdue(now, after(after), most + 1, sight()).getResultList();
        return new Part<>(
                Page.of(rows, most).map(OutstandingQueries.OverdueRow::row),
                rows.isEmpty()
                        ? queries.countOverdue(now, sight())
                        : rows.get(0).total());
    }

    /** All of them, to be streamed: {@link OutstandingQueries.OverdueRow}s. */
    Callable<Query> overdue() {
        Instant now = clock.instant();
        Sight sight = sight();
        return () -> queries.overdue(now, OutstandingQueries.After.NOTHING, null, sight);
    }

    /** Where a page of what is overdue ends: submission and code. */
    public static String mark(OutstandingQueries.Overdue last) {
        return last.number() + "-" + last.code();
    }

    private static OutstandingQueries.After after(String mark) {
        if (mark == null || mark.isBlank()) {
            return OutstandingQueries.After.NOTHING;
        }
        Matcher parts = MARK.matcher(mark);
        if (!parts.matches()) {
            throw InvalidInput.field(
                    "after",
                    "INVALID_VALUE",
                    "'" + mark + "' is no place in the list; follow the Link of the page before");
        }
        return new OutstandingQueries.After(Long.valueOf(parts.group(1)), parts.group(2));
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
