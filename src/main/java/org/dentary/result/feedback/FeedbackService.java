package org.dentary.result.feedback;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.InvalidInput;
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

    /** The specimens themselves, newest report first. */
    List<FeedbackQueries.Unsuitable> unsuitable(String season) {
        return queries.unsuitable(season, person(), null);
    }

    /** The first of them. */
    List<FeedbackQueries.Unsuitable> unsuitable(String season, int most) {
        return queries.unsuitable(season, person(), most);
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
