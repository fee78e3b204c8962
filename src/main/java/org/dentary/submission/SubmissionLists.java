package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Query;
import java.util.List;
import java.util.concurrent.Callable;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.table.Page;

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
    Page<SubmissionQueries.Head> list(List<String> states, String laboratory, Long before, int most) {
        return Page.of(queries.list(states, laboratory, before, most + 1, Sight.of(account.get())), most);
    }

    /** All of them, to be streamed. */
    Callable<Query> all() {
        Sight sight = Sight.of(account.get());
        return () -> queries.heads(sight);
    }
}
