package org.dentary.result.review;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.dentary.kit.KitService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.dentary.platform.table.Page;
import org.dentary.result.WaitingView;

/** The work list of odd outcomes: each stays until somebody looked at it, and comes back when it reads otherwise. */
@ApplicationScoped
public class ReviewService {
    private static final String THING = "outcome-look";

    private final ReviewQueries queries;
    private final KitService kits;
    private final RepeatableRequests requests;
    private final CurrentAccount account;
    private final Clock clock;
    private final EntityManager entities;

    ReviewService(
            ReviewQueries queries,
            KitService kits,
            RepeatableRequests requests,
            CurrentAccount account,
            Clock clock,
            EntityManager entities) {
        this.queries = queries;
        this.kits = kits;
        this.requests = requests;
        this.account = account;
        this.clock = clock;
        this.entities = entities;
    }

    /** A look and whether it is new. */
    record Looked(LookView look, boolean fresh) {}

    /**
     * What nobody looked at yet, oldest first.
     *
     * @param after {@link #mark} of the last one told, or null
     * @throws InvalidInput for what is no such mark
     */
    @SuppressWarnings("unchecked")
    public Page<WaitingView> waiting(String after, int most) {
        int cut = after == null ? -1 : after.indexOf('.');
        if (after != null && cut < 0) {
            throw InvalidInput.field(
                    "after",
                    "INVALID_VALUE",
                    "'" + after + "' is no place in the list; follow the Link of the page before");
        }
        return Page.of(
                queries.waiting(
                                after == null ? null : after.substring(0, cut),
                                after == null ? null : after.substring(cut + 1),
                                most + 1)
                        .getResultList(),
                most);
    }

    /** All of it, to be streamed: {@link WaitingView}s. */
    public Callable<Query> waiting() {
        return () -> queries.waiting(null, null, null);
    }

    /** How many nobody looked at yet. */
    public long count() {
        return queries.count();
    }

    /** Where a page of the list ends. */
    static String mark(WaitingView last) {
        return last.kit() + "." + last.disease();
    }

    /** Who looked at what, newest first; {@code before} is the id of the last one told, or null. */
    @SuppressWarnings("unchecked")
    Page<LookView> looks(UUID before, int most) {
        return Page.of(queries.looks("", before, most + 1).getResultList(), most);
    }

    /** All of them, to be streamed: {@link LookView}s. */
    Callable<Query> looks() {
        return () -> queries.looks("", null, null);
    }

    /**
     * Records that somebody looked; the outcome leaves the work list until it reads otherwise.
     *
     * @throws RuleBroken (409) if nothing is odd about it, it reads otherwise by now, or somebody looked at it already
     */
    @Transactional
    Looked put(UUID id, LookedAt given) {
        LookView present = find(id);
        if (requests.compare(THING, id.toString(), given, present != null) == Seen.REPLAY) {
            return new Looked(present, false);
        }
        LookedAt look = new LookedAt(kits.kit(given.kit()), given.disease(), given.since(), given.note());
        ReviewQueries.Held held = queries.hold(look.kit(), look.disease())
                .orElseThrow(() -> new RuleBroken(
                        "NOTHING_ODD",
                        "nothing of " + look.kit() + " is to be looked at for " + look.disease()
                                + "; read the list again"));
        if (!held.since().equals(look.since().toInstant())) {
            throw new RuleBroken(
                    "READS_OTHERWISE",
                    "the outcome of " + look.kit() + " reads otherwise since " + held.since()
                            + "; read it again before saying that it was looked at");
        }
        queries.lookedBy(look).ifPresent(who -> {
            throw new RuleBroken("LOOKED_AT_ALREADY", who + " looked at it as it reads now");
        });
        queries.insert(id, look, held.review(), account.get().actor(), clock.instant());
        requests.accept(THING, id.toString(), given);
        entities.flush();
        return new Looked(find(id), true);
    }

    private LookView find(UUID id) {
        @SuppressWarnings("unchecked")
        List<LookView> found = queries.looks(id.toString(), null, 1).getResultList();
        return found.isEmpty() ? null : found.get(0);
    }
}
