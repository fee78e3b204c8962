package org.dentary.custody.evidence;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.custody.evidence.TextErasureQueries.Said;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.jboss.logging.Logger;

/** Erases what an event keeps outside its hashed bytes: free texts, the name of who signed, the signature. */
@ApplicationScoped
public class TextErasureService {
    private static final Logger LOG = Logger.getLogger(TextErasureService.class);

    private final TextErasureQueries queries;
    private final TextCopyQueries copies;
    private final ErasedEvidence erasures;
    private final Event<TextErased> erased;
    private final CurrentAccount current;
    private final Clock clock;

    TextErasureService(
            TextErasureQueries queries,
            TextCopyQueries copies,
            ErasedEvidence erasures,
            Event<TextErased> erased,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.copies = copies;
        this.erasures = erasures;
        this.erased = erased;
        this.current = current;
        this.clock = clock;
    }

    /**
     * Destroys a text and its salt, in every entry of the same act that says the same and wherever the service repeats it:
     * who, when and why stay, and so do the digests, so that every chain is as it was. Of a discrepancy all that was said to
     * be seen goes; a place in words goes from every entry that names it, for it is one place. Again it changes nothing.
     *
     * @param field one of {@link ErasedText#FIELDS}
     * @throws InvalidInput without a reason of up to 500 characters, or for another field
     * @throws NotFound if the event has no such text
     */
    @Transactional
    public void erase(UUID event, String field, String reason) {
        if (field == null || !ErasedText.FIELDS.containsKey(field)) {
            throw InvalidInput.field(
                    "field",
                    "INVALID_VALUE",
                    "Choose what is erased: one of " + String.join(", ", new TreeSet<>(ErasedText.FIELDS.keySet())));
        }
        if (reason == null || reason.isBlank() || reason.strip().length() > 500) {
            throw InvalidInput.field("reason", "REQUIRED", "Say why it is erased, in up to 500 characters");
        }
        Said said = queries.said(event, field).orElseThrow(() -> unknown(event, field));
        if (said.erased()) {
            // Of a discrepancy more may have been said since.
            copies.erase(field, said);
            return;
        }
        // A whole number of microseconds, as the database keeps it.
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        if (!erase(event, field, said, current.get().actor(), now, reason.strip())) {
            throw unknown(event, field);
        }
        erasures.addText(event, field, now, current.get().actor());
    }

    /** @return whether there was anything */
    private boolean erase(UUID event, String field, Said said, String actor, Instant at, String reason) {
        int repeated = copies.erase(field, said);
        if (said.content() == null && repeated == 0) {
            return false;
        }
        queries.erase(event, field, said, actor, at, reason);
        erased.fire(new TextErased(field, said.act() == null ? null : UUID.fromString(said.act())));
        return true;
    }

    private static NotFound unknown(UUID event, String field) {
        return new NotFound("TEXT_UNKNOWN", "Entry " + event + " has no " + ErasedText.FIELDS.get(field));
    }

    /** What was erased, by event; an event of which nothing was has no entry. */
    public Map<UUID, List<ErasedText>> ofEvents(Collection<UUID> events) {
        return byId(queries.ofEvents(events));
    }

    /** What was erased of what hand-overs said when they were offered; one of which nothing was has no entry. */
    public Map<UUID, List<ErasedText>> ofHandOvers(Collection<UUID> handOvers) {
        return handOvers.isEmpty() ? Map.of() : byId(queries.ofHandOvers(handOvers));
    }

    /** The erasure of what was said to be seen of discrepancies, by their ids; one without has no entry. */
    public Map<String, ErasedText> ofDiscrepancies(Collection<String> discrepancies) {
        return discrepancies.isEmpty()
                ? Map.of()
                : queries.ofDiscrepancies(discrepancies).stream()
                        .collect(Collectors.toMap(TextErasureQueries.Row::of, TextErasureQueries.Row::view));
    }

    private static Map<UUID, List<ErasedText>> byId(List<TextErasureQueries.Row> rows) {
        return rows.stream()
                .collect(Collectors.groupingBy(
                        row -> UUID.fromString(row.of()),
                        Collectors.mapping(TextErasureQueries.Row::view, Collectors.toList())));
    }

    /** At every start: what was erased and came back with a restored database is erased again. */
    @ActivateRequestContext
    @Transactional
    void eraseAgain(@Observes StartupEvent event) {
        long again = erasures.texts().stream().filter(this::eraseAgain).count();
        if (again > 0) {
            LOG.info("Erased " + again + " texts of custody entries again that a restored database had brought back");
        }
    }

    private boolean eraseAgain(ErasedEvidence.Text line) {
        return queries.said(line.event(), line.field())
                // What was written anew after the erasure, such as what is seen of a discrepancy, stays.
                .filter(said -> !said.erased() || said.content() != null)
                .map(said -> erase(line.event(), line.field(), said, line.by(), line.at(), EvidenceService.RESTORED))
                .orElse(false);
    }
}
