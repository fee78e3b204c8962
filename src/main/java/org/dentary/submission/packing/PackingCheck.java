package org.dentary.submission.packing;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.dentary.custody.CustodyService;
import org.dentary.custody.HeadView;
import org.dentary.plan.AcceptanceView;
import org.dentary.plan.PlanService;
import org.dentary.platform.problem.FieldProblem;

/**
 * Judges tubes by one set of rules when they are packed and again when they leave: days pass between the two, jaws are read,
 * labels come into doubt. A fixed number of statements for however many tubes.
 */
@ApplicationScoped
public class PackingCheck {
    private final PackingQueries queries;
    private final PlanService plan;
    private final CustodyService custody;

    PackingCheck(PackingQueries queries, PlanService plan, CustodyService custody) {
        this.queries = queries;
        this.plan = plan;
        this.custody = custody;
    }

    /** What decides whether the specimen may be packed into the submission at that moment; empty if it is none. */
    public Optional<PackingFacts> facts(UUID submission, String code, Instant at) {
        return Optional.ofNullable(queries.facts(submission, List.of(code), at).get(code));
    }

    /**
     * What speaks against packing one.
     *
     * @param box that it is scanned into, or null
     * @param packed what is in the submission
     */
    public Verdict packing(PackingFacts facts, String box, String laboratory, List<PackedView> packed) {
        List<FieldProblem> never = new ArrayList<>(PackingRules.day(facts));
        never.addAll(PackingRules.record(facts));
        List<FieldProblem> reasoned =
                never.isEmpty() ? reasoned(facts, box, laboratory, packed, new HashMap<>()) : new ArrayList<>();
        custody.heldByAnother(List.of(facts.code())).values().stream()
                .map(PackingRules::notWithYou)
                .forEach(reasoned::add);
        return new Verdict(facts.code(), never, reasoned);
    }

    /**
     * What speaks against sending what is packed, those of which nothing does left out. A rule that a reason passed at packing
     * stays passed for that tube. Who holds what is asked where it is moved, at the moment at which it left.
     */
    public List<Verdict> leaving(UUID submission, String laboratory, List<PackedView> packed, Instant at) {
        Map<String, PackingFacts> facts =
                queries.facts(submission, packed.stream().map(PackedView::code).toList(), at);
        Map<LocalDate, List<AcceptanceView>> rules = new HashMap<>();
        return packed.stream()
                .map(piece -> {
                    PackingFacts one = facts.get(piece.code());
                    return new Verdict(
                            piece.code(),
                            PackingRules.record(one),
                            reasoned(one, piece.box(), laboratory, packed, rules));
                })
                .filter(verdict -> !verdict.isClear())
                .toList();
    }

    /** The same as it stands now for who looks, with what somebody else holds. */
    public List<Verdict> standing(UUID submission, String laboratory, List<PackedView> packed, Instant now) {
        Map<String, Verdict> verdicts = new HashMap<>();
        leaving(submission, laboratory, packed, now).forEach(one -> verdicts.put(one.code(), one));
        Map<String, HeadView> others =
                custody.heldByAnother(packed.stream().map(PackedView::code).toList());
        List<Verdict> all = new ArrayList<>();
        for (PackedView piece : packed) {
            Verdict verdict = verdicts.getOrDefault(piece.code(), new Verdict(piece.code(), List.of(), List.of()));
            HeadView other = others.get(piece.code());
            if (other != null) {
                List<FieldProblem> never = new ArrayList<>(verdict.never());
                never.add(PackingRules.cannotLeave(other));
                verdict = new Verdict(piece.code(), never, verdict.unlessReasoned());
            }
            if (!verdict.isClear()) {
                all.add(verdict);
            }
        }
        return all;
    }

    private List<FieldProblem> reasoned(
            PackingFacts facts,
            String box,
            String laboratory,
            List<PackedView> packed,
            Map<LocalDate, List<AcceptanceView>> rules) {
        List<FieldProblem> faults = new ArrayList<>(PackingRules.laboratory(
                facts,
                laboratory,
                rules.computeIfAbsent(facts.on(), day -> plan.acceptance(laboratory, day)),
                facts.on()));
        faults.addAll(PackingRules.apart(facts, box, packed));
        faults.removeIf(fault -> facts.isPassed(fault.rule()));
        return faults;
    }
}
