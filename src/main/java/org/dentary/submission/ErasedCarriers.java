package org.dentary.submission;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import org.dentary.custody.evidence.TextErased;
import org.dentary.platform.database.HistoryQueries;

/** Takes a carrier's name or waybill away from a submission when it is erased from the entries of its dispatch. */
@ApplicationScoped
class ErasedCarriers {
    private final SubmissionWrites writes;
    private final HistoryQueries history;

    ErasedCarriers(SubmissionWrites writes, HistoryQueries history) {
        this.writes = writes;
        this.history = history;
    }

    void whenATextIsErased(@Observes TextErased erased) {
        boolean ofDispatch = erased.field().equals("carrier") || erased.field().equals("waybill");
        if (ofDispatch && erased.act() != null && writes.erase(erased.act(), erased.field()) > 0) {
            history.erase("submission", erased.field(), erased.act().toString(), null);
        }
    }
}
