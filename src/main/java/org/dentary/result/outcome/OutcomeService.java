package org.dentary.result.outcome;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.dentary.animal.line.LineService;
import org.dentary.custody.identity.IdentitySettled;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.specimen.SpecimensRecorded;
import org.dentary.submission.OrdersChanged;

/** Derives the outcomes of many animals at once and writes them into their lines. */
@ApplicationScoped
public class OutcomeService {
    private static final int AT_ONCE = 5_000;
    private static final String RULES = "RULES";

    private final OutcomeQueries queries;
    private final PlanService plan;
    private final LineService lines;
    private final Event<SuspicionDerived> suspicionDerived;
    private final Event<OutcomesDerived> outcomesDerived;
    private final Clock clock;

    OutcomeService(
            OutcomeQueries queries,
            PlanService plan,
            LineService lines,
            Event<SuspicionDerived> suspicionDerived,
            Event<OutcomesDerived> outcomesDerived,
            Clock clock) {
        this.queries = queries;
        this.plan = plan;
        this.lines = lines;
        this.suspicionDerived = suspicionDerived;
        this.outcomesDerived = outcomesDerived;
        this.clock = clock;
    }

    @Transactional
    void whenTissueIsRecorded(@Observes SpecimensRecorded recorded) {
        derive(recorded.kits(), recorded.cause());
    }

    @Transactional
    void whenAnIdentityIsSettled(@Observes IdentitySettled settled) {
        derive(settled.kits(), settled.cause());
    }

    @Transactional
    void whenOrdersChange(@Observes OrdersChanged changed) {
        derive(queries.kitsOf(changed.codes()), "ORDER");
    }

    /**
     * Derives anew, for every disease of the plan, in the caller's transaction.
     *
     * @param kits animals by any of their kits; those linked as one are derived together
     * @param cause what happened, in UPPER_SNAKE
     */
    @Transactional
    public void derive(Collection<String> kits, String cause) {
        derive(kits, cause, (done, total) -> {});
    }

    /** Judges anew every animal whose outcome was derived by other rules than the plan sets for its place now. */
    @Transactional
    public void deriveByRulesInForce() {
        PlanSettings settings = plan.settings();
        List<OutcomeQueries.Judged> others = queries.judged().stream()
                .filter(at -> !PlanFacts.of(settings, at.season(), at.region(), at.unit())
                        .words()
                        .equals(at.rules()))
                .toList();
        if (!others.isEmpty()) {
            derive(queries.kitsJudged(others), RULES);
        }
    }

    /**
     * Judges anew every animal with a finding by one of the methods, whose accepted tissues are other ones now.
     *
     * @param methods test method codes; at least one
     */
    @Transactional
    public void deriveTestedBy(Collection<String> methods) {
        derive(queries.kitsTestedBy(methods), RULES);
    }

    /** Told how many animals of how many are done, as they are done. */
    public interface Told {
        void of(int done, int total);
    }

    /** Derives anew and tells how far it is. */
    @Transactional
    public void derive(Collection<String> kits, String cause, Told told) {
        List<String> all = kits.stream().distinct().sorted().toList();
        for (int from = 0; from < all.size(); from += AT_ONCE) {
            int to = Math.min(all.size(), from + AT_ONCE);
            deriveSome(all.subList(from, to), cause);
            told.of(to, all.size());
        }
    }

    private void deriveSome(List<String> kits, String cause) {
        queries.hold(kits);
        Recorded recorded = Recorded.of(kits, queries);
        if (recorded.members().isEmpty()) {
            return;
        }
        PlanSettings settings = plan.settings();
        List<String> diseases = plan.diseases().stream().map(d -> d.code()).toList();
        List<LineService.OutcomeOf> outcomes = new ArrayList<>();
        List<SuspicionDerived.Suspicion> suspicions = new ArrayList<>();
        Explanations explanations = new Explanations();
        Withdrawals withdrawals = new Withdrawals();
        for (OutcomeQueries.Member member : recorded.members()) {
            PlanFacts facts = PlanFacts.of(settings, member.season(), member.region(), member.unit());
            String rules = facts.words();
            Map<String, Derived> said = recorded.said(member.root(), diseases, facts);
            for (String disease : diseases) {
                Derived derived = said.get(disease);
                outcomes.add(line(member.kit(), disease, derived, recorded.isReleased(member.root(), disease)));
                explanations.add(member.kit(), disease, derived, rules);
                if (member.kit().equals(member.root()) && derived.outcome().isSuspicion()) {
                    suspicions.add(new SuspicionDerived.Suspicion(member.kit(), disease));
                }
                if (member.kit().equals(member.root()) && derived.outcome() != Outcome.DETECTED) {
                    recorded.releasedUnder(member.root(), disease)
                            .forEach(kit -> withdrawals.add(kit, disease, derived));
                }
            }
        }
        lines.setOutcomes(outcomes, cause);
        if (!withdrawals.kits.isEmpty()) {
            queries.withdraw(withdrawals.kits, withdrawals.diseases, withdrawals.derived, clock.instant());
        }
        queries.explain(
                explanations.kits,
                explanations.diseases,
                explanations.words,
                explanations.reviews,
                explanations.rules,
                clock.instant());
        if (!suspicions.isEmpty()) {
            suspicionDerived.fire(new SuspicionDerived(suspicions));
        }
        outcomesDerived.fire(new OutcomesDerived(recorded.kits(), cause));
    }

    private static LineService.OutcomeOf line(String kit, String disease, Derived derived, boolean released) {
        Outcome shown = derived.outcome().shown(released);
        return new LineService.OutcomeOf(
                kit,
                disease,
                derived.outcome().name(),
                shown.name(),
                shown == derived.outcome() ? derived.footnotes() : Identities.footnotesOfWithheld(derived.footnotes()));
    }

    /** Releases to take back; parallel columns for one insert. */
    private static final class Withdrawals {
        private final List<String> kits = new ArrayList<>();
        private final List<String> diseases = new ArrayList<>();
        private final List<String> derived = new ArrayList<>();

        void add(String kit, String disease, Derived now) {
            kits.add(kit);
            diseases.add(disease);
            derived.add(now.outcome().name());
        }
    }

    /** Parallel columns for one insert. */
    private static final class Explanations {
        private final List<String> kits = new ArrayList<>();
        private final List<String> diseases = new ArrayList<>();
        private final List<String> words = new ArrayList<>();
        private final List<String> reviews = new ArrayList<>();
        private final List<String> rules = new ArrayList<>();

        void add(String kit, String disease, Derived derived, String by) {
            kits.add(kit);
            diseases.add(disease);
            words.add(derived.explanation());
            reviews.add(derived.review() == null ? "" : derived.review());
            rules.add(by);
        }
    }
}
