package org.dentary.result.release;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import org.dentary.kit.KitService;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.account.Account;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.account.Role;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotAllowed;
import org.dentary.platform.problem.NotFound;
import org.dentary.platform.problem.RuleBroken;
import org.dentary.result.WaitingView;
import org.dentary.result.outcome.Outcome;
import org.dentary.result.outcome.OutcomeService;

/** Releases detections: a second person lets the outcome be seen by everybody who reads outcomes. */
@ApplicationScoped
public class ReleaseService {
    private final ReleaseQueries queries;
    private final OutcomeService outcomes;
    private final KitService kits;
    private final PlanService plan;
    private final CurrentAccount account;
    private final Clock clock;
    private final EntityManager entities;

    ReleaseService(
            ReleaseQueries queries,
            OutcomeService outcomes,
            KitService kits,
            PlanService plan,
            CurrentAccount account,
            Clock clock,
            EntityManager entities) {
        this.queries = queries;
        this.outcomes = outcomes;
        this.kits = kits;
        this.plan = plan;
        this.account = account;
        this.clock = clock;
        this.entities = entities;
    }

    /** The release and whether it was made now. */
    public record Done(ReleaseView release, boolean fresh) {}

    /**
     * Releases the detection of a disease in an animal.
     *
     * @param kit a kit of the animal, or a label of it
     * @throws NotAllowed (403) to who is neither coordinator nor a deputy, or recorded the detection
     * @throws RuleBroken (409) if there is no detection to release; the message names the outcome only to those who may
     *     know it
     */
    @Transactional
    public Done release(String kit, String disease, String reason) {
        if (plan.diseases().stream().noneMatch(d -> d.code().equals(disease))) {
            throw InvalidInput.field("disease", "NOT_A_VALUE", "'" + disease + "' is not a disease of this plan");
        }
        String held = kits.kit(kit);
        queries.hold(held);
        ReleaseQueries.State state = queries.state(held, disease)
                .orElseThrow(() -> new NotFound("ANIMAL_UNKNOWN", "No animal is recorded under " + kit));
        Account who = account.get();
        requireReleaser(who, state);
        if (state.outcome().equals(Outcome.DETECTED.name())) {
            ReleaseView there = queries.newest(state.kit(), disease).orElseThrow();
            if (!Objects.equals(there.reason(), reason)) {
                throw new RuleBroken(
                        "ALREADY_RELEASED",
                        "the detection of " + disease + " in " + state.kit() + " was released by " + there.releasedBy()
                                + " with another reason; nothing is left to release");
            }
            return new Done(there, false);
        }
        if (!state.derivedOutcome().equals(Outcome.DETECTED.name())) {
            throw new RuleBroken(
                    "NOTHING_TO_RELEASE",
                    "the outcome of " + state.kit() + " for " + disease + " is " + state.derivedOutcome()
                            + "; only a final detection is released");
        }
        if (state.inDoubt()) {
            throw new RuleBroken(
                    "LABELS_IN_DOUBT",
                    "A label of " + state.kit() + " is in doubt, so what was found may be another animal's; settle the"
                            + " swap or the identity exception first, then release");
        }
        requireNoIncident(state, disease);
        requireSecondPerson(who, state, disease);
        queries.insert(state.kit(), disease, Outcome.DETECTED.name(), reason, who.actor(), clock.instant());
        entities.flush();
        outcomes.derive(List.of(state.kit()), "RELEASE");
        return new Done(queries.newest(state.kit(), disease).orElseThrow(), true);
    }

    private void requireReleaser(Account who, ReleaseQueries.State state) {
        List<String> deputies = plan.settings().codes(PlanSetting.RELEASE_DEPUTIES, state.season(), null, state.unit());
        if (who.role() != Role.COORDINATOR && !deputies.contains(who.username())) {
            throw new NotAllowed(
                    "NOT_A_RELEASER", "Detections are released by the coordinator or a deputy whom the plan names");
        }
    }

    private void requireNoIncident(ReleaseQueries.State state, String disease) {
        if (queries.incidentIsOpen(state.kit(), disease)) {
            throw new RuleBroken(
                    "INCIDENT_OPEN",
                    "The first detection of " + disease + " in unit " + state.unit()
                            + " is still being looked into; finish the incident's steps and close it, then release");
        }
    }

    private void requireSecondPerson(Account who, ReleaseQueries.State state, String disease) {
        if (queries.recorders(state.kit(), disease).contains(who.actor())) {
            throw new NotAllowed(
                    "SECOND_PERSON", "You recorded this detection; another person must look at it and release it");
        }
    }

    /** Suspicions and unreleased detections of all animals. */
    public List<WaitingView> open() {
        return queries.open();
    }

    /**
     * How an animal stands for one disease.
     *
     * @param waiting the open suspicion or unreleased detection; at most one
     * @param released the release, or null
     * @param timeZone of the animal's station
     * @param hindrance why the account at hand cannot release it, or null
     */
    record Standing(
            String kit,
            String disease,
            List<WaitingView> waiting,
            ReleaseView released,
            String timeZone,
            String hindrance) {}

    /**
     * How an animal stands, for who may know unreleased outcomes.
     *
     * @param disease its code, or null for the plan's first
     */
    @Transactional
    Standing standing(String kit, String disease) {
        String of =
                disease == null || disease.isBlank() ? plan.diseases().get(0).code() : disease;
        ReleaseQueries.State state = queries.state(kits.kit(kit), of)
                .orElseThrow(() -> new NotFound("ANIMAL_UNKNOWN", "No animal is recorded under " + kit + " for " + of));
        List<WaitingView> waiting = queries.open().stream()
                .filter(w -> w.kit().equals(state.kit()) && w.disease().equals(of))
                .toList();
        ReleaseView released = state.outcome().equals(Outcome.DETECTED.name())
                ? queries.newest(state.kit(), of).orElse(null)
                : null;
        return new Standing(state.kit(), of, waiting, released, state.timeZone(), hindrance(state, of));
    }

    private String hindrance(ReleaseQueries.State state, String disease) {
        try {
            requireReleaser(account.get(), state);
            requireNoIncident(state, disease);
            requireSecondPerson(account.get(), state, disease);
            return null;
        } catch (NotAllowed | RuleBroken refusal) {
            return refusal.getMessage();
        }
    }
}
