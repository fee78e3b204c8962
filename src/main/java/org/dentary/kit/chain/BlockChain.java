package org.dentary.kit.chain;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.dentary.ledger.ChainHead;
import org.dentary.ledger.EventDraft;
import org.dentary.ledger.LedgerStore;
import org.dentary.ledger.Redacted;
import org.dentary.ledger.Sha256;
import org.dentary.platform.account.CurrentAccount;

/**
 * Appends to the chain of a block: one event names all its labels by the digest of their codes, for a block has up to
 * 5,000 kits and a chain per label would begin each specimen's with a day on which nothing was collected. Called within
 * the transaction of the change that it records.
 */
@ApplicationScoped
public class BlockChain {
    private final LedgerStore ledger;
    private final BlockChainQueries queries;
    private final CurrentAccount current;
    private final Clock clock;

    BlockChain(LedgerStore ledger, BlockChainQueries queries, CurrentAccount current, Clock clock) {
        this.ledger = ledger;
        this.queries = queries;
        this.current = current;
        this.clock = clock;
    }

    /**
     * A block as its first event tells it.
     *
     * @param person roster code of who answers for it, or null
     * @param labels in printing order
     */
    public record Issue(
            UUID block,
            String season,
            String station,
            String timeZone,
            String person,
            List<Part> parts,
            int kits,
            int copies,
            List<LabelCode> labels) {}

    /** That a block's labels were issued: one event, however many there are. */
    public void issued(Issue issue) {
        ledger.appendAll(
                List.of(),
                List.of(draft(issue.block(), LabelEventKind.LABEL_ISSUED, issue.timeZone())
                        .atPlace(issue.station())
                        .withCounterparty(issue.person())
                        .with("season", issue.season())
                        .with("kits", issue.kits())
                        .with("parts", issue.parts().stream().map(Part::name).toList())
                        .with("copies", issue.copies())
                        .with("labels", issue.labels().size())
                        .with("codesSha256", digest(issue.labels()))));
    }

    /** SHA-256 of the codes, a line each: ten characters and a line feed. */
    static String digest(List<LabelCode> labels) {
        return Sha256.hex(labels.stream().map(label -> label.value() + "\n").collect(Collectors.joining()));
    }

    /** That a label must not be used any more. */
    public void voided(String label, String reason) {
        append(label, LabelEventKind.LABEL_VOIDED, Map.of("reason", Redacted.of(reason)));
    }

    /** That a label was printed again. */
    public void reprinted(String label, UUID reprint, int printNumber, String stock, String reason) {
        append(
                label,
                LabelEventKind.LABEL_REPRINTED,
                Map.of(
                        "reprint",
                        reprint.toString(),
                        "printNumber",
                        printNumber,
                        "stock",
                        stock,
                        "reason",
                        Redacted.of(reason)));
    }

    private void append(String label, LabelEventKind kind, Map<String, Object> fields) {
        BlockChainQueries.Home home = queries.homes(List.of(label)).get(0);
        UUID block = UUID.fromString(home.block());
        queries.lock(block);
        EventDraft draft = draft(block, kind, home.timeZone()).with("label", label);
        for (Map.Entry<String, Object> field : fields.entrySet()) {
            draft = draft.with(field.getKey(), field.getValue());
        }
        Collection<ChainHead> head = ledger.heads(List.of(block.toString())).values();
        ledger.appendAll(head, List.of(draft));
    }

    private EventDraft draft(UUID block, LabelEventKind kind, String timeZone) {
        Instant now = clock.instant();
        return EventDraft.of(
                block.toString(),
                kind.name(),
                now,
                now,
                now,
                ZoneId.of(timeZone),
                current.get().actor());
    }
}
