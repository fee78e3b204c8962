package org.dentary.result.mapping;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.plan.TestMethodView;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;

/** Keeps what the laboratories' codes mean; an edition is never changed, the next one takes its place from its day on. */
@ApplicationScoped
public class CodeMapService {
    private final CodeMaps maps;
    private final PlanService plan;
    private final CurrentAccount account;
    private final Clock clock;

    CodeMapService(CodeMaps maps, PlanService plan, CurrentAccount account, Clock clock) {
        this.maps = maps;
        this.plan = plan;
        this.account = account;
        this.clock = clock;
    }

    /** An edition and whether it was kept now. */
    record Kept(CodeMaps.Edition edition, boolean fresh) {}

    List<CodeMaps.Edition> all() {
        return maps.all();
    }

    /** The number of the laboratory's next edition. */
    int next(String laboratory) {
        return maps.of(laboratory).stream()
                .findFirst()
                .map(one -> one.edition() + 1)
                .orElse(1);
    }

    /**
     * Keeps an edition; the same again changes nothing.
     *
     * @throws InvalidInput (422) with every fault of the map
     * @throws RuleBroken (409) where that edition says something else, or is not the next
     */
    @Transactional
    Kept keep(String laboratory, int edition, CodeMap map) {
        plan.laboratory(laboratory);
        CodeMaps.Edition there = maps.of(laboratory).stream()
                .filter(one -> one.edition() == edition)
                .findFirst()
                .orElse(null);
        if (there != null) {
            if (there.map().equals(map)) {
                return new Kept(there, false);
            }
            throw new RuleBroken(
                    "EDITION_WRITTEN",
                    "Edition " + edition + " says something else and is kept; keep this as edition "
                            + next(laboratory));
        }
        List<FieldProblem> problems = CodeMapRules.problems(
                map,
                CodeMapRules.words(
                        plan.methods().stream().map(TestMethodView::code).collect(Collectors.toSet()),
                        plan.laboratories().stream().map(LaboratoryView::code).collect(Collectors.toSet())));
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        if (edition != next(laboratory)) {
            throw new RuleBroken("EDITION_NOT_NEXT", "The next edition is " + next(laboratory));
        }
        maps.keep(laboratory, edition, map, account.get().actor(), clock.instant());
        return new Kept(maps.of(laboratory).get(0), true);
    }
}
