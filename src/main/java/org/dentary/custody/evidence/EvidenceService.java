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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.ledger.Redacted;
import org.dentary.ledger.Sha256;
import org.dentary.people.PeopleService;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.photo.PhotoReader;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;
import org.jboss.logging.Logger;

/**
 * Photographs as evidence. One is kept first and named by an event afterwards, which holds its digest; from then on it
 * is seen by whoever may see that event.
 */
@ApplicationScoped
public class EvidenceService {
    /** Most photographs that one act shows. */
    public static final int MOST_PHOTOS = 4;

    static final String RESTORED = "erased before the database was restored";
    private static final String RESOURCE = "custody-evidence";
    private static final Logger LOG = Logger.getLogger(EvidenceService.class);

    private final EvidenceQueries queries;
    private final ErasedEvidence erasures;
    private final PeopleService people;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Clock clock;

    EvidenceService(
            EvidenceQueries queries,
            ErasedEvidence erasures,
            PeopleService people,
            RepeatableRequests requests,
            CurrentAccount current,
            Clock clock) {
        this.queries = queries;
        this.erasures = erasures;
        this.people = people;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    /** A photograph that was sent, and whether it is new. */
    public record Kept(EvidenceView photo, boolean isNew) {}

    private record Sent(String file) {}

    /**
     * Keeps a photograph for an event still to be recorded. Sent again it changes nothing.
     *
     * @throws RuleBroken if the id stands for another photograph
     */
    @Transactional
    public Kept keep(UUID id, PhotoReader.Photo photo) {
        people.requireAcknowledged(current.get());
        Sent sent = new Sent(photo.sent());
        Integer version = queries.byId(id).map(row -> 0).orElse(null);
        if (requests.compare(RESOURCE, id.toString(), sent, version != null) == Seen.REPLAY) {
            return new Kept(queries.byId(id).orElseThrow().view(), false);
        }
        Redacted digested = Redacted.of(photo.large());
        queries.add(id, digested.digest(), digested.salt(), photo, current.get().actor(), clock.instant());
        requests.accept(RESOURCE, id.toString(), sent);
        return new Kept(queries.byId(id).orElseThrow().view(), true);
    }

    /**
     * The photographs that an act names, as its events hold them: {@code {"sha256": digest}} each, in the order added.
     *
     * @param ids up to {@link #MOST_PHOTOS}; null or empty for none
     * @throws InvalidInput for more, or for one that was not kept by the account at hand
     */
    public List<Map<String, String>> digests(List<UUID> ids) {
        if (ids == null || ids.isEmpty()) {
            return List.of();
        }
        Set<UUID> asked = new TreeSet<>(ids);
        if (asked.size() > MOST_PHOTOS) {
            throw InvalidInput.field(
                    "photos", "TOO_MANY", asked.size() + " photos; up to " + MOST_PHOTOS + " show one act");
        }
        List<EvidenceQueries.Row> rows = queries.byIds(asked).stream()
                .filter(row -> row.addedBy().equals(current.get().actor()) && row.erasedAt() == null)
                .toList();
        if (rows.size() < asked.size()) {
            throw InvalidInput.field(
                    "photos",
                    "PHOTO_UNKNOWN",
                    "One of the photos was not added by you, or was erased; add it first, under an id of its own");
        }
        return rows.stream().map(row -> Map.of("sha256", row.digest())).toList();
    }

    /**
     * Destroys what a photograph shows, for every event that shows it: who, when and why stay, and so does its digest in
     * the events, so that every chain is as it was. Again it changes nothing.
     *
     * @throws InvalidInput without a reason of up to 500 characters
     * @throws NotFound if there is no such photograph
     */
    @Transactional
    public void erase(UUID id, String reason) {
        if (reason == null || reason.isBlank() || reason.strip().length() > 500) {
            throw InvalidInput.field("reason", "REQUIRED", "Say why the photo is erased, in up to 500 characters");
        }
        EvidenceQueries.Row row =
                queries.byId(id).orElseThrow(() -> new NotFound("PHOTO_UNKNOWN", "There is no photo " + id));
        if (row.erasedAt() != null) {
            return;
        }
        // A whole number of microseconds, as the database keeps it.
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        queries.erase(id, current.get().actor(), now, reason.strip());
        erasures.add(id, now, current.get().actor());
    }

    /** At every start: what was erased and came back with a restored database is erased again. */
    @ActivateRequestContext
    @Transactional
    void eraseAgain(@Observes StartupEvent event) {
        long again = erasures.all().stream()
                .filter(line -> queries.erase(line.photo(), line.by(), line.at(), RESTORED))
                .count();
        if (again > 0) {
            LOG.info("Erased " + again + " photos again that a restored database had brought back");
        }
    }

    /** Ties photographs to the events that hold their digests, in one statement. */
    public void show(Collection<UUID> events, List<UUID> photos) {
        if (photos != null && !photos.isEmpty()) {
            queries.show(events, new TreeSet<>(photos));
        }
    }

    /** Whether some event shows each of them; null or empty: true. */
    public boolean isEachShown(List<UUID> photos) {
        Set<UUID> asked = photos == null ? Set.of() : new TreeSet<>(photos);
        return asked.isEmpty() || queries.countShown(asked) == asked.size();
    }

    /** The photographs of events, in one statement; an event without has no entry. */
    public Map<UUID, List<EvidenceView>> ofEvents(Collection<UUID> events) {
        return queries.ofEvents(events).stream()
                .collect(Collectors.groupingBy(
                        shown -> UUID.fromString(shown.event()),
                        Collectors.mapping(EvidenceQueries.Shown::view, Collectors.toList())));
    }

    /** The photographs of discrepancies by their ids, in one statement; a discrepancy without has no entry. */
    public Map<String, List<EvidenceView>> ofDiscrepancies(Collection<String> discrepancies) {
        return discrepancies.isEmpty()
                ? Map.of()
                : queries.ofDiscrepancies(discrepancies).stream()
                        .collect(Collectors.groupingBy(
                                EvidenceQueries.Shown::event,
                                Collectors.mapping(EvidenceQueries.Shown::view, Collectors.toList())));
    }

    /**
     * The pictures of photographs, JPEG, each checked against its digest; erased ones are left out. Who may see them is
     * the caller's to know.
     *
     * @param small whether the small copies will do; the digest is of the large one
     * @throws RuleBroken if one is no longer what its digest says
     */
    public Map<UUID, byte[]> pictures(Collection<UUID> ids, boolean small) {
        Map<UUID, byte[]> pictures = new LinkedHashMap<>();
        for (EvidenceQueries.Picture picture :
                ids.isEmpty() ? List.<EvidenceQueries.Picture>of() : queries.pictures(ids)) {
            String found = Sha256.hex(Sha256.of(picture.salt(), picture.large()));
            if (!found.equals(picture.digest())) {
                throw new RuleBroken(
                        "EVIDENCE_CHANGED",
                        "Photo " + picture.id() + " was changed since it was recorded: expected digest "
                                + picture.digest() + ", found " + found
                                + ". Keep the database as it is and tell whoever answers for the records");
            }
            pictures.put(UUID.fromString(picture.id()), small ? picture.small() : picture.large());
        }
        return pictures;
    }
}
