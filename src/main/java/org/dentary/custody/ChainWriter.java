package org.dentary.custody;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
class ChainWriter {
    private final CustodyWrites writes;
    private final LedgerStore ledger;

    ChainWriter(CustodyWrites writes, LedgerStore ledger) {
        this.writes = writes;
        this.ledger = ledger;
    }

    /** Locks the ends of these chains until the transaction ends; a code without a chain is left out. */
    Map<String, Head> lock(Collection<String> codes) {
        return writes.lock(new TreeSet<>(codes));
    }

    /**
     * Begins a chain per planned event; each code once.
     *
     * @throws RuleBroken if a code has a chain already
     */
    void begin(List<Planned> planned) {
        List<Head> heads = planned.stream().map(Planned::next).toList();
        List<String> begun = writes.begin(heads);
        if (begun.size() < heads.size()) {
            List<String> there = heads.stream()
                    .map(Head::code)
                    .filter(code -> !begun.contains(code))
                    .toList();
            throw new RuleBroken(
                    "CUSTODY_BEGUN",
                    "Custody of " + String.join(", ", there) + " has begun already; one code is one thing, collected once");
        }
        append(planned);
    }

    /** Appends in the order given; the chains are locked or were begun in this transaction. */
    void append(List<Planned> planned) {
        if (planned.isEmpty()) {
            return;
        }
        Map<String, ChainHead> ends = new LinkedHashMap<>();
        planned.forEach(plan -> ends.putIfAbsent(
                plan.next().code(),
                new ChainHead(plan.next().code(), plan.next().sequence(), plan.next().hash())));
        List<LedgerEvent> events =
                ledger.appendAll(ends, planned.stream().map(Planned::draft).toList());
        Map<String, Head> advanced = new LinkedHashMap<>();
        for (int i = 0; i < events.size(); i++) {
            LedgerEvent event = events.get(i);
            Planned plan = planned.get(i);
            Head before = advanced.getOrDefault(event.chain(), plan.next());
            Head next = new Head(
                    plan.next().code(),
                    event.sequence(),
                    event.hash(),
                    plan.next().holder(),
                    plan.next().box(),
                    plan.next().place(),
                    plan.next().offered(),
                    event.kind(),
                    before.lastOccurredAt(),
                    before.collectedAt());
            advanced.put(
                    event.chain(),
                    next.after(event.sequence(), event.hash(), event.kind(), plan.draft().occurredAt()));
        }
        writes.advance(new ArrayList<>(advanced.values()));
    }
}
