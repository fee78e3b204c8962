package org.dentary.result.outcome;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.dentary.animal.line.LineService;
import org.dentary.custody.identity.IdentitySettled;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.PlanSettings;
import org.dentary.result.FindingStatus;
import org.dentary.result.FindingWord;
import org.dentary.result.Stage;
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
                .filter(at -> !facts(settings, at.season(), at.region(), at.unit())
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
        List<OutcomeQueries.Member> members = queries.members(kits);
        if (members.isEmpty()) {
            return;
        }
        List<String> every = members.stream().map(OutcomeQueries.Member::kit).toList();
        Map<String, String> rootOf = members.stream()
                .collect(Collectors.toMap(OutcomeQueries.Member::kit, OutcomeQueries.Member::root, (a, b) -> a));
        Map<String, List<OutcomeQueries.Tissue>> tissues =
                queries.tissues(every).stream().collect(Collectors.groupingBy(t -> rootOf.get(t.kit())));
        Map<String, List<OutcomeQueries.Finding>> findings =
                queries.findings(every).stream().collect(Collectors.groupingBy(f -> rootOf.get(f.kit())));
        Map<String, List<OutcomeQueries.Identity>> identities =
                queries.identities(every).stream().collect(Collectors.groupingBy(i -> rootOf.get(i.kit())));
        Set<String> released = queries.released(every).stream()
                .filter(r -> r.outcome().equals(Outcome.DETECTED.name()))
                .map(r -> rootOf.get(r.kit()) + " " + r.disease())
                .collect(Collectors.toSet());
        PlanSettings settings = plan.settings();
        List<String> diseases = plan.diseases().stream().map(d -> d.code()).toList();
        List<LineService.OutcomeOf> outcomes = new ArrayList<>();
        List<SuspicionDerived.Suspicion> suspicions = new ArrayList<>();
        Explanations explanations = new Explanations();
        for (OutcomeQueries.Member member : members) {
            PlanFacts facts = facts(settings, member.season(), member.region(), member.unit());
            String rules = facts.words();
            Map<String, Derived> said = said(
                    diseases,
                    findings.getOrDefault(member.root(), List.of()),
                    tissues.getOrDefault(member.root(), List.of()),
                    Identities.of(identities.getOrDefault(member.root(), List.of())),
                    facts,
                    disease -> released.contains(member.root() + " " + disease));
            for (String disease : diseases) {
                Derived derived = said.get(disease);
                Outcome shown = shown(derived.outcome(), released.contains(member.root() + " " + disease));
                outcomes.add(new LineService.OutcomeOf(
                        member.kit(),
                        disease,
                        derived.outcome().name(),
                        shown.name(),
                        shown == derived.outcome()
                                ? derived.footnotes()
                                : Identities.footnotesOfWithheld(derived.footnotes())));
                explanations.add(member.kit(), disease, derived, rules);
                if (member.kit().equals(member.root()) && derived.outcome().isSuspicion()) {
                    suspicions.add(new SuspicionDerived.Suspicion(member.kit(), disease));
                }
            }
        }
        lines.setOutcomes(outcomes, cause);
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
        outcomesDerived.fire(new OutcomesDerived(every, cause));
    }

    /**
     * What the findings say of each disease. While one of them is withheld, a disease that nothing was reported of reads as
     * before the report: that its turn had come would tell that another's finding is there.
     */
    private static Map<String, Derived> said(
            List<String> diseases,
            List<OutcomeQueries.Finding> findings,
            List<OutcomeQueries.Tissue> tissues,
            Identities identities,
            PlanFacts plan,
            Predicate<String> isReleased) {
        Map<String, List<OutcomeQueries.Finding>> byDisease =
                findings.stream().collect(Collectors.groupingBy(OutcomeQueries.Finding::disease));
        Map<String, Derived> said = new LinkedHashMap<>();
        for (String disease : diseases) {
            said.put(disease, derived(byDisease.getOrDefault(disease, List.of()), tissues, true, identities, plan));
        }
        boolean withheld = said.entrySet().stream()
                .anyMatch(each -> shown(each.getValue().outcome(), isReleased.test(each.getKey()))
                        != each.getValue().outcome());
        if (withheld) {
            diseases.stream()
                    .filter(disease -> !byDisease.containsKey(disease))
                    .forEach(disease -> said.put(disease, derived(List.of(), tissues, false, identities, plan)));
        }
        return said;
    }

    /** What is told before and after release: until then a suspicion and a detection both read as pending. */
    static Outcome shown(Outcome derived, boolean released) {
        return switch (derived) {
            case SUSPECT -> Outcome.PENDING;
            case DETECTED -> released ? Outcome.DETECTED : Outcome.PENDING;
            default -> derived;
        };
    }

    private static Derived derived(
            List<OutcomeQueries.Finding> rows,
            List<OutcomeQueries.Tissue> tissues,
            boolean reported,
            Identities identities,
            PlanFacts plan) {
        Map<String, List<OutcomeQueries.Finding>> byId = new LinkedHashMap<>();
        rows.forEach(
                row -> byId.computeIfAbsent(row.id(), id -> new ArrayList<>()).add(row));
        List<TestFact> facts = byId.values().stream()
                .map(same -> fact(same, plan.adjunctsThatCount()))
                .toList();
        List<TissueFact> tissue = tissues.stream()
                .map(t -> new TissueFact(
                        t.code(),
                        t.parent(),
                        t.archived(),
                        t.orders().intValue(),
                        reported ? t.reports().intValue() : 0,
                        t.tissue().endsWith("_NODE"),
                        t.tissue().equals("OBEX")))
                .toList();
        Derived derived =
                OutcomeRules.derive(identities.attributable(facts), identities.attributableTissue(tissue), plan);
        return identities.told(derived, facts);
    }

    /** The rules that the plan sets for a place; empty codes for none. */
    private static PlanFacts facts(PlanSettings settings, String seasonOrNone, String regionOrNone, String unitOrNone) {
        String season = empty(seasonOrNone);
        String region = empty(regionOrNone);
        String unit = empty(unitOrNone);
        return new PlanFacts(
                settings.isSet(PlanSetting.SCREENING_ALONE_DETECTS, season, region, unit),
                settings.isSet(PlanSetting.POOL_PASSES_TO_MEMBERS, season, region, unit),
                settings.codes(PlanSetting.ADJUNCT_METHODS_THAT_COUNT, season, region, unit));
    }

    private static TestFact fact(List<OutcomeQueries.Finding> same, List<String> adjuncts) {
        OutcomeQueries.Finding f = same.get(0);
        return new TestFact(
                UUID.fromString(f.id()),
                f.method(),
                Stage.valueOf(f.stage()),
                FindingWord.valueOf(f.finding()),
                FindingStatus.valueOf(f.status()),
                f.testedOn(),
                same.stream().map(OutcomeQueries.Finding::code).collect(Collectors.toSet()),
                same.stream().allMatch(OutcomeQueries.Finding::accepted),
                f.pool(),
                adjuncts.contains(f.method()),
                f.corrects() == null ? null : UUID.fromString(f.corrects()),
                same.stream().map(OutcomeService::where).collect(Collectors.toCollection(LinkedHashSet::new)).stream()
                        .collect(Collectors.joining(" and ")));
    }

    private static String where(OutcomeQueries.Finding f) {
        String tissue = f.tissue().endsWith("_NODE")
                ? "node"
                : f.tissue().toLowerCase(Locale.ROOT).replace('_', ' ');
        return switch (f.side()) {
            case "LEFT" -> "left " + tissue;
            case "RIGHT" -> "right " + tissue;
            case "BOTH" -> "both " + tissue + "s";
            default -> tissue;
        };
    }

    private static String empty(String code) {
        return code == null || code.isEmpty() ? null : code;
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
