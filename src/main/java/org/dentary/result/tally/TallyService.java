package org.dentary.result.tally;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.InvalidInput;

/** How many tests laboratories reported in a span of days; for those who may read results. */
@ApplicationScoped
public class TallyService {
    private static final int MONTHS_BACK = 2;

    private final TallyQueries queries;
    private final PlanService plan;
    private final PlanClock clock;

    TallyService(TallyQueries queries, PlanService plan, PlanClock clock) {
        this.queries = queries;
        this.plan = plan;
        this.clock = clock;
    }

    /**
     * What is asked.
     *
     * @param laboratory its code; empty for every one
     * @param from first day of report
     * @param to last day of report, included
     */
    public record Asked(String laboratory, LocalDate from, LocalDate to) {}

    /**
     * Reads a question; without days it is of this month and the two before.
     *
     * @throws InvalidInput for what is no laboratory, no day, or a span that ends before it begins
     */
    Asked asked(String laboratory, String from, String to) {
        String code = laboratory == null ? "" : laboratory.strip();
        if (!code.isEmpty()
                && plan.laboratories().stream().noneMatch(one -> one.code().equals(code))) {
            throw InvalidInput.field(
                    "laboratory",
                    "LABORATORY_UNKNOWN",
                    "'" + code + "' is no laboratory of the plan; leave it out for all");
        }
        LocalDate today = clock.today();
        LocalDate first = day("from", from, today.withDayOfMonth(1).minusMonths(MONTHS_BACK));
        LocalDate last = day("to", to, today.plusDays(1));
        if (last.isBefore(first)) {
            throw InvalidInput.field(
                    "to", "INVALID_VALUE", "The last day, " + last + ", lies before the first, " + first);
        }
        return new Asked(code, first, last);
    }

    /** The counts, by laboratory, month, method and stage; what has none is left out. */
    List<TestCount> counts(Asked asked) {
        return queries.counts(asked.laboratory(), asked.from(), asked.to());
    }

    /** Each test, in the order of an invoice: laboratory, day of report, accession, item. */
    List<TestLine> lines(Asked asked) {
        return queries.lines(asked.laboratory(), asked.from(), asked.to());
    }

    private static LocalDate day(String field, String typed, LocalDate otherwise) {
        if (typed == null || typed.isBlank()) {
            return otherwise;
        }
        try {
            return CalendarText.day(typed.strip());
        } catch (DateTimeParseException e) {
            throw InvalidInput.field(field, "INVALID_VALUE", "'" + typed + "' is no day such as 2026-11-14");
        }
    }
}
