package org.dentary.result.feedback;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Query;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.table.Page;
import org.dentary.statistics.IntervalMethod;
import org.dentary.statistics.Proportion;

/** Rates of tissue that could not be read; whatever is asked for, a sampler sees what they took themselves. */
@ApplicationScoped
public class FeedbackService {
    private static final double CONFIDENCE = 0.95;

    private final FeedbackQueries queries;
    private final CurrentAccount account;

    FeedbackService(FeedbackQueries queries, CurrentAccount account) {
        this.queries = queries;
        this.account = account;
    }

    /**
     * Rates by group.
     *
     * @param own whether they are the reader's own only
     * @param method of the intervals
     */
    public record Rates(Grouping by, boolean own, String method, List<UnsuitableRate> items) {}

    /**
     * The rates, in the order of the groups; groups without a report are left out.
     *
     * @param season its code, or empty for every one
     */
    Rates rates(Grouping by, String season) {
        List<UnsuitableRate> items = queries.rates(by, season, person()).stream()
                .map(row -> {
                    Proportion p = Proportion.of(
                            row.unsuitable().intValue(), row.reported().intValue(), IntervalMethod.WILSON, CONFIDENCE);
                    return new UnsuitableRate(
                            row.grouped(), row.unsuitable(), row.reported(), p.estimate(), p.lower(), p.upper());
                })
                .toList();
        return new Rates(by, !person().isEmpty(), IntervalMethod.WILSON.label(), items);
    }

    /**
     * What became of the tissue that somebody took themselves.
     *
     * @param unsuitable never read, for a reason of tissue
     * @param reported those and what was read
     */
    public record Own(long unsuitable, long reported) {}

    /** The account's own tissue in the season, told at once where they begin their day. */
    public Own own(String season) {
        List<FeedbackQueries.Rate> rates =
                queries.rates(Grouping.STATION, season, account.get().actor());
        return new Own(
                rates.stream().mapToLong(FeedbackQueries.Rate::unsuitable).sum(),
                rates.stream().mapToLong(FeedbackQueries.Rate::reported).sum());
    }

    /** The specimens themselves, to be streamed, newest report first: {@link FeedbackQueries.Unsuitable}s. */
    Callable<Query> unsuitable(String season) {
        String person = person();
        return () -> queries.unsuitable(season, person, FeedbackQueries.After.NOTHING, null);
    }

    /**
     * A page of them.
     *
     * @param after {@link #mark} of the last one told, or null
     * @throws InvalidInput for what is no such mark
     */
    @SuppressWarnings("unchecked")
    Page<FeedbackQueries.Unsuitable> unsuitable(String season, String after, int most) {
        return Page.of(
                queries.unsuitable(season, person(), after(after), most + 1).getResultList(), most);
    }

    /** Where a page ends: the day of the report and the code. */
    static String mark(FeedbackQueries.Unsuitable last) {
        return last.reportedOn() + "_" + last.code();
    }

    private static FeedbackQueries.After after(String mark) {
        if (mark == null || mark.isBlank()) {
            return FeedbackQueries.After.NOTHING;
        }
        try {
            int cut = mark.indexOf('_');
            return new FeedbackQueries.After(LocalDate.parse(mark.substring(0, cut)), mark.substring(cut + 1));
        } catch (DateTimeException | StringIndexOutOfBoundsException e) {
            throw InvalidInput.field(
                    "after",
                    "INVALID_VALUE",
                    "'" + mark + "' is no place in the list; follow the Link of the page before");
        }
    }

    /** The grouping of that name. */
    static Grouping grouping(String typed) {
        try {
            return typed == null || typed.isBlank() ? Grouping.STATION : Grouping.valueOf(typed.strip());
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field(
                    "by",
                    "NOT_A_VALUE",
                    "'" + typed + "' is no grouping; one of " + java.util.Arrays.toString(Grouping.values()));
        }
    }

    private String person() {
        Account who = account.get();
        return who.role() == Role.SAMPLER ? who.actor() : "";
    }
}
