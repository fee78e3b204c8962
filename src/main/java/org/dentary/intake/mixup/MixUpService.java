package org.dentary.intake.mixup;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.dentary.kit.KitService;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.database.Snapshot;
import org.dentary.platform.problem.DomainException;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.platform.request.RepeatableRequests;
import org.dentary.platform.request.RepeatableRequests.Seen;

/** Suspected mix-ups: found anew each time from what is recorded, set aside where somebody looked and it was none. */
@ApplicationScoped
public class MixUpService {
    private static final String RESOURCE = "mix-up-set-aside";
    /** Animals whose signs one page looks for: what a large service takes in within some weeks. */
    private static final int LOOKED_THROUGH = 2_000;

    private static final int AT_ONCE = 1_000;

    private final MixUpQueries queries;
    private final KitService kits;
    private final RepeatableRequests requests;
    private final CurrentAccount current;
    private final Snapshot snapshot;
    private final Clock clock;

    MixUpService(
            MixUpQueries queries,
            KitService kits,
            RepeatableRequests requests,
            CurrentAccount current,
            Snapshot snapshot,
            Clock clock) {
        this.queries = queries;
        this.kits = kits;
        this.requests = requests;
        this.current = current;
        this.snapshot = snapshot;
        this.clock = clock;
    }

    /**
     * A page of suspicions.
     *
     * @param next where the next page begins; null on the last
     * @param back how far back this one looked; null to the beginning
     */
    public record Page(List<MixUp> found, String next, Instant back) {}

    /**
     * The suspicions that the account at hand may look into, newest first: a sampler those of stations they serve. A page
     * looks among the next 2,000 animals taken in and may be short, or empty, where others follow.
     *
     * @param all with those that were set aside
     * @param after where the page before ended, or null
     * @param limit how many at most
     */
    public Page page(boolean all, String after, int limit) {
        return page(reach(all), MixUpMark.parse(after), limit);
    }

    MixUpQueries.Reach reach(boolean all) {
        Account account = current.get();
        return new MixUpQueries.Reach(
                all, account.role() != Role.SAMPLER || account.stations().contains("*"), account.stations());
    }

    /** Hands over every one, newest first, as far as they reach. */
    @ActivateRequestContext
    void each(MixUpQueries.Reach reach, Consumer<MixUp> taker) {
        snapshot.read(() -> {
            for (MixUpMark after = MixUpMark.START; after != null; ) {
                Page page = page(reach, after, AT_ONCE);
                page.found().forEach(taker);
                after = page.next() == null ? null : MixUpMark.parse(page.next());
            }
            return null;
        });
    }

    private Page page(MixUpQueries.Reach reach, MixUpMark after, int limit) {
        Instant floor = queries.floor(after.at(), LOOKED_THROUGH);
        List<MixUp> found = queries.find(after, floor == null ? Instant.EPOCH : floor, reach, limit + 1).stream()
                .map(MixUpQueries.Row::view)
                .toList();
        if (found.size() > limit) {
            MixUp last = found.get(limit - 1);
            return new Page(found.subList(0, limit), MixUpMark.of(last).toString(), last.at());
        }
        return new Page(found, floor == null ? null : MixUpMark.from(floor).toString(), floor);
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
