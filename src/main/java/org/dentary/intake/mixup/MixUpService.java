package org.dentary.intake.mixup;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.dentary.kit.KitService;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Suspected mix-ups: found anew each time from what is recorded, set aside where somebody looked and it was none. */
@ApplicationScoped
public class MixUpService {
    private static final String RESOURCE = "mix-up-set-aside";

    private final MixUpQueries queries;
    private final KitService kits;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Clock clock;

    MixUpService(
            MixUpQueries queries, KitService kits, RepeatableRequests requests, CurrentAccount current, Clock clock) {
        this.queries = queries;
        this.kits = kits;
        this.requests = requests;
        this.current = current;
        this.clock = clock;
    }

    /**
     * The suspicions that the account at hand may look into, newest first: a sampler those of stations they serve.
     *
     * @param all with those that were set aside
     * @param most how many at most
     */
    public List<MixUp> found(boolean all, int most) {
        Account account = current.get();
        boolean everywhere =
                account.role() != Role.SAMPLER || account.stations().contains("*");
        return queries.find(all, everywhere, account.stations(), most).stream()
                .map(MixUpQueries.Row::view)
                .toList();
    }

    /**
     * Keeps that a suspicion was none. Sent again it changes nothing; a sign that comes later is shown again.
     *
     * @return whether that is new
     * @throws InvalidInput where a kit is none of ours, or a sign of two names one
     * @throws RuleBroken if the id stands for something else
     */
    @Transactional
    public boolean setAside(UUID id, SetAside aside) {
        if (requests.compare(RESOURCE, id.toString(), aside, queries.isSetAside(id)) == Seen.REPLAY) {
            return false;
        }
        String kit = kits.kit(aside.kit());
        String other = aside.other() == null || aside.other().isBlank() ? null : kits.kit(aside.other());
        if (aside.sign().isOfTwo() == (other == null)) {
            throw InvalidInput.field(
                    "other",
                    other == null ? "REQUIRED" : "NOT_FOR_THIS_SIGN",
                    other == null
                            ? aside.sign() + " is about two kits; name the other too"
                            : aside.sign() + " is about one kit; leave the other out");
        }
        boolean inOrder = other == null || kit.compareTo(other) < 0;
        queries.setAside(
                id,
                inOrder ? kit : other,
                inOrder ? other : kit,
                aside.sign(),
                aside.reason().strip(),
                current.get().actor(),
                clock.instant());
        requests.accept(RESOURCE, id.toString(), aside);
        return true;
    }

    /**
     * The kit that a scan stands for today: a label's is the one that it is bound to.
     *
     * @throws InvalidInput if it is neither a kit nor a label of ours
     */
    public String kit(String field, String typed) {
        try {
            return kits.kit(typed == null ? "" : typed);
        } catch (DomainException refusal) {
            throw InvalidInput.field(field, refusal.code(), refusal.getMessage());
        }
    }

    /**
     * Keeps that labels were scanned together that are not one kit; the same scans again change nothing.
     *
     * @param kit the one that most were of
     * @param others the kits of the others, each once
     * @param codes what was scanned
     */
    @Transactional
    public void scannedTogether(String kit, List<String> others, List<String> codes) {
        queries.mismatch(kit, others, String.join(" ", codes), current.get().actor(), clock.instant());
    }
}
