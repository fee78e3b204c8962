package org.dentary.custody.discrepancy;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import org.dentary.custody.chain.Answers;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.chain.Moments;
import org.dentary.custody.chain.Rights;
import org.dentary.custody.discrepancy.DiscrepancyQueries.DiscrepancyRow;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceService;
import org.dentary.custody.evidence.EvidenceView;
import org.dentary.custody.evidence.TextErasureService;
import org.dentary.plan.PlanClock;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;

/** Reads discrepancies for people: with names, photographs and erasures, however many in the same number of statements. */
@ApplicationScoped
public class DiscrepancyViews {
    private final DiscrepancyQueries queries;
    private final Moments moments;
    private final Rights rights;
    private final EvidenceService evidence;
    private final TextErasureService texts;
    private final PlanClock clock;

    DiscrepancyViews(
            DiscrepancyQueries queries,
            Moments moments,
            Rights rights,
            EvidenceService evidence,
            TextErasureService texts,
            PlanClock clock) {
        this.queries = queries;
        this.moments = moments;
        this.rights = rights;
        this.evidence = evidence;
        this.texts = texts;
        this.clock = clock;
    }

    /** The discrepancy as it stands. */
    public DiscrepancyView view(UUID id) {
        return views(List.of(queries.find(id.toString())
                        .orElseThrow(() -> new NotFound("DISCREPANCY_UNKNOWN", "There is no discrepancy " + id))))
                .get(0);
    }

    /**
     * The same for the account at hand.
     *
     * @throws NotAllowed for a sampler who neither owns nor opened it
     */
    DiscrepancyView read(UUID id) {
        DiscrepancyView one = view(id);
        String of = limitedTo();
        if (of != null && !of.equals(one.owner()) && !of.equals(one.openedBy())) {
            throw new NotAllowed(
                    "NOT_YOURS",
                    "This discrepancy is " + one.ownerName() + "'s; a sampler reads those that they own or opened");
        }
        return one;
    }

    /** Whose discrepancies the account at hand may read: its own for a sampler, null for everybody's. */
    String limitedTo() {
        return rights.account().role() == Role.SAMPLER ? rights.actor() : null;
    }

    /**
     * Those that the account at hand may settle, or may read where it settles none: a sampler's own, everybody's for the
     * others.
     *
     * @param open null: open and settled ones
     * @param after where the page before ended; null for the first
     */
    List<DiscrepancyView> mine(Boolean open, Mark after, int most) {
        return list(new DiscrepancyQueries.Filter(open, null, limitedTo(), null, null, after), most);
    }

    /** All of those, the next due first; whose is settled when it is asked for, not when it runs. */
    public Consumer<Consumer<DiscrepancyView>> allOfMine(Boolean open) {
        String of = limitedTo();
        return each -> Answers.whole(
                (after, most) -> list(new DiscrepancyQueries.Filter(open, null, of, null, null, after), most),
                DiscrepancyView::mark,
                each);
    }

    /** How many of those are open. */
    public long countMine() {
        return queries.countOpen(limitedTo());
    }

    /** The next due first. */
    List<DiscrepancyView> list(DiscrepancyQueries.Filter filter, int most) {
        return views(queries.list(filter, most));
    }

    /** Open and settled ones about some codes, each code's oldest first. */
    public List<DiscrepancyView> ofCodes(Collection<String> codes) {
        return views(queries.ofCodes(codes));
    }

    private List<DiscrepancyView> views(List<DiscrepancyRow> rows) {
        LocalDate today = moments.now().atZone(clock.zone()).toLocalDate();
        Map<String, List<EvidenceView>> photos =
                evidence.ofDiscrepancies(rows.stream().map(DiscrepancyRow::id).toList());
        Map<String, ErasedText> erased = texts.ofDiscrepancies(rows.stream()
                .filter(row -> row.evidence() == null)
                .map(DiscrepancyRow::id)
                .toList());
        return rows.stream()
                .map(row -> row.view(today, photos.getOrDefault(row.id(), List.of()), erased.get(row.id())))
                .toList();
    }
}
