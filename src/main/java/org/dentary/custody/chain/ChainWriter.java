package org.dentary.custody.chain;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.dentary.ledger.ChainHead;
import org.dentary.ledger.LedgerEvent;
import org.dentary.ledger.LedgerStore;
import org.dentary.platform.problem.RuleBroken;

/**
 * Appends events to many chains at once: chain ends locked in code order, events in one statement, chain ends advanced in
 * one statement.
 */
@ApplicationScoped
public class ChainWriter {
    private final CustodyWrites writes;
    private final CustodyQueries queries;
    private final LedgerStore ledger;

    ChainWriter(CustodyWrites writes, CustodyQueries queries, LedgerStore ledger) {
        this.writes = writes;
        this.queries = queries;
        this.ledger = ledger;
    }

    /** Locks the ends of these chains until the transaction ends; a code without a chain is left out. */
    public Map<String, Head> lock(Collection<String> codes) {
        return writes.lock(new TreeSet<>(codes));
    }

    /**
     * Locks the ends of these chains and of all that lies in them.
     *
     * @return by code, sorted
     * @throws RuleBroken if one of the codes has no chain, or a box was filled or emptied at this very moment
     */
    public Map<String, Head> lockWithContents(Collection<String> codes) {
        Set<String> all = withContents(codes);
        Map<String, Head> heads = new TreeMap<>(lock(all));
        Rights.requireInCustody(codes, heads);
        // Who puts into a box or takes out locks the box, so from here on contents stay as they are.
        if (!withContents(codes).equals(all)) {
            throw new RuleBroken(
                    "BOX_CHANGED", "Somebody else just filled or emptied one of the boxes; send this again");
        }
        return heads;
    }

    private Set<String> withContents(Collection<String> codes) {
        Set<String> all = new TreeSet<>(codes);
        queries.inside(codes).forEach(inside -> all.add(inside.code()));
        return all;
    }

    /**
     * Begins a chain per planned event; each code once.
     *
     * @throws RuleBroken if a code has a chain already
     */
    public void begin(List<Planned> planned) {
        List<Head> heads = planned.stream().map(Planned::next).toList();
        List<String> begun = writes.begin(heads);
        if (begun.size() < heads.size()) {
            List<String> there = heads.stream()
                    .map(Head::code)
                    .filter(code -> !begun.contains(code))
                    .toList();
            throw new RuleBroken(
                    "CUSTODY_BEGUN",
                    "Custody of " + String.join(", ", there)
                            + " has begun already; one code is one thing, collected once");
        }
        append(planned);
    }

    /** Appends in the order given; the chains are locked or were begun in this transaction. */
    public void append(List<Planned> planned) {
        if (planned.isEmpty()) {
            return;
        }
        Map<String, ChainHead> ends = new LinkedHashMap<>();
        planned.forEach(plan -> ends.putIfAbsent(
                plan.next().code(),
                new ChainHead(
                        plan.next().code(), plan.next().sequence(), plan.next().hash())));
        List<LedgerEvent> events = ledger.appendAll(
                ends.values(), planned.stream().map(Planned::draft).toList());
        Map<String, Head> advanced = new LinkedHashMap<>();
        for (int i = 0; i < events.size(); i++) {
            LedgerEvent event = events.get(i);
            Planned plan = planned.get(i);
            Head before = advanced.getOrDefault(event.chain(), plan.next());
            // What is destroyed stays so, whatever is corrected afterwards.
            String kind = before.isDestroyed() ? before.lastKind() : event.kind();
            Head next = new Head(
                    plan.next().code(),
                    event.sequence(),
                    event.hash(),
                    plan.next().holder(),
                    plan.next().box(),
                    plan.next().place(),
                    plan.next().offered(),
                    kind,
                    before.lastOccurredAt(),
                    before.collectedAt());
            advanced.put(
                    event.chain(),
                    next.after(
                            event.sequence(), event.hash(), kind, plan.draft().occurredAt()));
        }
        writes.advance(new ArrayList<>(advanced.values()));
    }
}
