package org.dentary.animal.vault;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.jboss.logging.Logger;

/** Contacts and exact points: encrypted, read by role, every read audited, erased by destroying the row's key. */
@ApplicationScoped
public class ContactService {
    private static final Logger LOG = Logger.getLogger(ContactService.class);

    private final ContactWrites rows;
    private final CallerIndexService callers;
    private final ErasureList erasures;
    private final Envelope envelope;
    private final PlanService plan;
    private final CurrentAccount current;
    private final ObjectMapper json;
    private final Clock clock;

    ContactService(
            ContactWrites rows,
            CallerIndexService callers,
            ErasureList erasures,
            Envelope envelope,
            PlanService plan,
            CurrentAccount current,
            ObjectMapper json,
            Clock clock) {
        this.rows = rows;
        this.callers = callers;
        this.erasures = erasures;
        this.envelope = envelope;
        this.plan = plan;
        this.current = current;
        this.json = json;
        this.clock = clock;
    }

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Content(Contact contact, ExactPoint point) {}

    /**
     * Keeps what is private of an animal; a part that is null stays as it was kept before.
     *
     * @throws NotAllowed for a sampler where somebody else's is kept, or their own for longer than the plan's days
     */
    @Transactional
    public void write(String kit, Contact contact, ExactPoint point) {
        Optional<ContactWrites.Row> before = rows.read(kit);
        before.ifPresent(this::requireOwn);
        try {
            Content kept = before.isPresent() ? open(kit, before.get()) : new Content(null, null);
            Content content =
                    new Content(contact == null ? kept.contact() : contact, point == null ? kept.point() : point);
            Envelope.Sealed sealed = envelope.seal(kit, json.writeValueAsBytes(content));
            rows.write(
                    kit,
                    sealed,
                    content.contact() != null,
                    callers.edition(),
                    current.get().actor(),
                    clock.instant());
            callers.contact(kit, content.contact());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether something private of the animal is kept, which tells nothing of it. */
    public boolean isKept(String kit) {
        return rows.read(kit).isPresent();
    }

    /**
     * Reads what is private of an animal and audits that it was read.
     *
     * @param purpose why, as the reader says; may be null
     * @throws NotFound if nothing is kept
     * @throws NotAllowed for a sampler who did not write it, or longer ago than the plan's days
     */
    @Transactional
    public PrivateView read(String kit, String purpose) {
        ContactWrites.Row row =
                rows.read(kit).orElseThrow(() -> new NotFound("CONTACT_UNKNOWN", "No contact is kept for kit " + kit));
        requireOwn(row);
        rows.audit("contact", kit, current.get().actor(), purpose, clock.instant());
        try {
            Content content = open(kit, row);
            return new PrivateView(kit, content.contact(), content.point(), row.writtenBy(), row.writtenAt());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Content open(String kit, ContactWrites.Row row) throws IOException {
        return json.readValue(envelope.open(kit, new Envelope.Sealed(row.wrappedKey(), row.content())), Content.class);
    }

    private void requireOwn(ContactWrites.Row row) {
        Account account = current.get();
        if (account.role() == Role.SAMPLER) {
            Duration kept = Duration.ofDays(plan.settings().wholeNumber(PlanSetting.CONTACT_DAYS, null, null, null));
            boolean own = row.writtenBy().equals(account.actor());
            if (!own || row.writtenAt().plus(kept).isBefore(clock.instant())) {
                throw new NotAllowed(
                        "CONTACT_NOT_OWN",
                        "A sampler reads and replaces the contacts they wrote, for " + kept.toDays()
                                + " days; the coordinator and the notifier can always");
            }
        }
    }

    /**
     * The kits of a caller by the keyed index; audited once per kit found, or once where none is, so that a search is
     * never without trace.
     *
     * @param purpose why, as the reader says
     * @return kits in order, at most fifty; empty where nobody is known so
     */
    @Transactional
    public List<String> find(ContactKey key, String value, String purpose) {
        List<String> kits = callers.find(key, value);
        for (String kit : kits.isEmpty() ? List.of("none") : kits) {
            rows.audit("contact-search", kit, current.get().actor(), purpose, clock.instant());
        }
        return kits;
    }

    /**
     * Erases what is private of an animal, and by what a caller found it; nobody can bring it back.
     *
     * @throws NotFound if nothing is kept
     */
    @Transactional
    public void erase(String kit) {
        if (callers.erase(kit) + rows.erase(kit) == 0) {
            throw new NotFound("CONTACT_UNKNOWN", "No contact is kept for kit " + kit);
        }
        rows.audit("contact-erasure", kit, current.get().actor(), null, clock.instant());
        erasures.add(kit, clock.instant());
    }

    /** At every start: what was erased and came back with a restored database is erased again; later contacts stay. */
    @ActivateRequestContext
    @Transactional
    void eraseAgain(@Observes @Priority(CallerIndexService.AFTER_ERASURES - 1) StartupEvent event) {
        Map<String, Instant> erased = erasures.all();
        if (erased.isEmpty()) {
            return;
        }
        callers.eraseUntil(erased);
        int again = rows.eraseUntil(erased);
        if (again > 0) {
            LOG.info("Erased " + again + " contacts again that a restored database had brought back");
        }
    }
}
