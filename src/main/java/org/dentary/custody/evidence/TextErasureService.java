package org.dentary.custody.evidence;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.jboss.logging.Logger;

/** Erases what an event keeps outside its hashed bytes: free texts, the name of who signed, the signature. */
@ApplicationScoped
public class TextErasureService {
    private static final Logger LOG = Logger.getLogger(TextErasureService.class);

    private final TextErasureQueries queries;
    private final ErasedEvidence erasures;
    private final CurrentAccount current;
    private final Clock clock;

    TextErasureService(TextErasureQueries queries, ErasedEvidence erasures, CurrentAccount current, Clock clock) {
        this.queries = queries;
        this.erasures = erasures;
        this.current = current;
        this.clock = clock;
    }

    /**
     * Destroys a text and its salt, in every entry of the same act that says the same: who, when and why stay, and so do
     * the digests, so that every chain is as it was. Again it changes nothing.
     *
     * @param field one of {@link ErasedText#FIELDS}
     * @throws InvalidInput without a reason of up to 500 characters, or for another field
     * @throws NotFound if the event has no such text
     */
    @Transactional
    public void erase(UUID event, String field, String reason) {
        if (field == null || !ErasedText.FIELDS.containsKey(field)) {
            throw InvalidInput.field("field", "INVALID_VALUE", "Choose what is erased");
        }
        if (reason == null || reason.isBlank() || reason.strip().length() > 500) {
            throw InvalidInput.field("reason", "REQUIRED", "Say why it is erased, in up to 500 characters");
        }
        if (queries.ofEvents(List.of(event)).stream().anyMatch(row -> row.name().equals(field))) {
            return;
        }
        // A whole number of microseconds, as the database keeps it.
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        if (queries.erase(event, field, current.get().actor(), now, reason.strip()) == 0) {
            throw new NotFound("TEXT_UNKNOWN", "Entry " + event + " has no " + ErasedText.FIELDS.get(field));
        }
        erasures.addText(event, field, now, current.get().actor());
    }

    /** What was erased, by event; an event of which nothing was has no entry. */
    public Map<UUID, List<ErasedText>> ofEvents(Collection<UUID> events) {
        return queries.ofEvents(events).stream()
                .collect(Collectors.groupingBy(
                        row -> UUID.fromString(row.event()),
                        Collectors.mapping(TextErasureQueries.Row::view, Collectors.toList())));
    }

    /** At every start: what was erased and came back with a restored database is erased again. */
    @ActivateRequestContext
    @Transactional
    void eraseAgain(@Observes StartupEvent event) {
        int again = erasures.texts().stream()
                .mapToInt(line ->
                        queries.erase(line.event(), line.field(), line.by(), line.at(), EvidenceService.RESTORED))
                .sum();
        if (again > 0) {
            LOG.info("Erased " + again + " texts of custody entries again that a restored database had brought back");
        }
    }
}
