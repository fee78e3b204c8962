package org.dentary.animal.vault;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.animal.Identifier;
import org.jboss.logging.Logger;

/**
 * Finds a caller's animals by registration number, telephone or name through digests under a key that lies outside the
 * database: who has the database alone can neither read the index nor try numbers against it.
 */
@ApplicationScoped
public class CallerIndexService {
    /** Observers of the start with a smaller number come first: what was erased is gone before anything is indexed. */
    static final int AFTER_ERASURES = 3_000;

    private static final Logger LOG = Logger.getLogger(CallerIndexService.class);
    private static final int AT_A_TIME = 1_000;
    private static final String REGISTRATION = "REGISTRATION";
    private static final List<ContactKey> OF_CONTACT = List.of(ContactKey.PHONE, ContactKey.NAME);

    private final CallerIndexWrites rows;
    private final ErasureList erasures;
    private final Envelope envelope;
    private final ObjectMapper json;
    private final Clock clock;
    private final String edition;

    CallerIndexService(
            CallerIndexWrites rows, ErasureList erasures, Envelope envelope, ObjectMapper json, Clock clock) {
        this.rows = rows;
        this.erasures = erasures;
        this.envelope = envelope;
        this.json = json;
        this.clock = clock;
        this.edition = ContactKey.FOLDING + "-"
                + envelope.index("edition " + ContactKey.FOLDING).substring(0, 16);
    }

    /** The edition that what is indexed now belongs to: of the folding and of the key. */
    String edition() {
        return edition;
    }

    /** The kits found, in order, at most fifty; empty where nobody is known so or nothing is left of the value. */
    List<String> find(ContactKey key, String value) {
        String digest = envelope.index(key.fold(value));
        return digest == null ? List.of() : rows.find(key, digest);
    }

    /** Indexes a contact in place of the one before; null for one without name and number. */
    @Transactional
    void contact(String kit, Contact contact) {
        rows.replace(List.of(kit), OF_CONTACT, entries(kit, contact), edition, clock.instant());
    }

    /** Indexes an animal's registration numbers in place of those before. */
    @Transactional
    public void registrations(String kit, List<String> numbers) {
        rows.replace(
                List.of(kit),
                List.of(ContactKey.REGISTRATION),
                numbers.stream()
                        .flatMap(number -> entry(kit, ContactKey.REGISTRATION, number).stream())
                        .toList(),
                edition,
                clock.instant());
    }

    /** The registration numbers among an animal's identifiers, sorted. */
    public static List<String> registrations(List<Identifier> identifiers) {
        return identifiers.stream()
                .filter(one -> one.type().equals(REGISTRATION))
                .map(Identifier::value)
                .sorted()
                .toList();
    }

    /** Takes an animal out of the index; how many entries there were. */
    int erase(String kit) {
        return rows.erase(kit);
    }

    /** Takes animals out as far as they were indexed up to a moment each; how many entries there were. */
    int eraseUntil(Map<String, Instant> erased) {
        return rows.eraseUntil(erased);
    }

    /** At every start: indexes what is not indexed under today's edition, a thousand animals at a time. */
    @ActivateRequestContext
    void indexAnew(@Observes @Priority(AFTER_ERASURES) StartupEvent event) {
        int contacts = 0;
        List<String> batch;
        while (!(batch = QuarkusTransaction.requiringNew().call(this::contactsAnew)).isEmpty()) {
            contacts += batch.size();
        }
        Set<String> erased = erasures.all().keySet();
        int registrations = 0;
        String after = "";
        while (!(batch = registrationsAnew(after, erased)).isEmpty()) {
            registrations += batch.size();
            after = batch.get(batch.size() - 1);
        }
        if (contacts + registrations > 0) {
            LOG.info("Indexed " + contacts + " contacts and the registration numbers of " + registrations
                    + " animals anew for callers");
        }
    }

    private List<String> contactsAnew() {
        List<CallerIndexWrites.Sealed> stale = rows.staleContacts(edition, AT_A_TIME);
        List<String> kits = stale.stream().map(CallerIndexWrites.Sealed::kit).toList();
        if (!kits.isEmpty()) {
            List<CallerIndexWrites.Entry> entries = stale.stream()
                    .flatMap(row -> entries(row.kit(), open(row)).stream())
                    .toList();
            rows.replace(kits, OF_CONTACT, entries, edition, clock.instant());
            rows.indexed(kits, edition);
        }
        return kits;
    }

    private List<String> registrationsAnew(String after, Collection<String> erased) {
        return QuarkusTransaction.requiringNew().call(() -> {
            List<CallerIndexWrites.Registration> stale = rows.staleRegistrations(edition, after, erased, AT_A_TIME);
            Set<String> kits = new LinkedHashSet<>();
            List<CallerIndexWrites.Entry> entries = new ArrayList<>();
            for (CallerIndexWrites.Registration one : stale) {
                kits.add(one.kit());
                entries.addAll(entry(one.kit(), ContactKey.REGISTRATION, one.value()));
            }
            if (!kits.isEmpty()) {
                rows.replace(kits, List.of(ContactKey.REGISTRATION), entries, edition, clock.instant());
            }
            return List.copyOf(kits);
        });
    }

    private Contact open(CallerIndexWrites.Sealed row) {
        try {
            return json.readValue(
                            envelope.open(row.kit(), new Envelope.Sealed(row.wrappedKey(), row.content())),
                            ContactService.Content.class)
                    .contact();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<CallerIndexWrites.Entry> entries(String kit, Contact contact) {
        if (contact == null) {
            return List.of();
        }
        List<CallerIndexWrites.Entry> entries = new ArrayList<>(entry(kit, ContactKey.PHONE, contact.phone()));
        entries.addAll(entry(kit, ContactKey.NAME, contact.name()));
        return entries;
    }

    private List<CallerIndexWrites.Entry> entry(String kit, ContactKey kind, String value) {
        String digest = envelope.index(kind.fold(value));
        return digest == null ? List.of() : List.of(new CallerIndexWrites.Entry(kit, kind, digest));
    }
}
