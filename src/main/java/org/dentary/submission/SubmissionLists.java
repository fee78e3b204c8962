package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.dentary.platform.account.CurrentAccount;

/** Lists of submissions, as the account at hand may see them. */
@ApplicationScoped
class SubmissionLists {
    private final SubmissionQueries queries;
    private final CurrentAccount account;

    SubmissionLists(SubmissionQueries queries, CurrentAccount account) {
        this.queries = queries;
        this.account = account;
    }

    /** Submissions in some states (none for all), newest first, those with smaller numbers than {@code before}. */
    List<SubmissionQueries.Head> list(List<String> states, String laboratory, Long before, int most) {
        return queries.list(states, laboratory, before, most, Sight.of(account.get()));
    }
}
