package org.dentary.result.mapping;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.plan.PlanService;
import org.dentary.plan.TestMethodView;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.RuleBroken;

/** Keeps how the laboratories' files read; an edition is never changed, the next one takes its place. */
@ApplicationScoped
public class ColumnMapService {
    private final ColumnMaps maps;
    private final PlanService plan;
    private final CurrentAccount account;
    private final Clock clock;

    ColumnMapService(ColumnMaps maps, PlanService plan, CurrentAccount account, Clock clock) {
        this.maps = maps;
        this.plan = plan;
        this.account = account;
        this.clock = clock;
    }

    /** An edition and whether it was kept now. */
    record Kept(ColumnMaps.Edition edition, boolean fresh) {}

    List<ColumnMaps.Edition> all() {
        return maps.all();
    }

    /** The number of the laboratory's next edition. */
    int next(String laboratory) {
        return maps.inForce(laboratory).map(one -> one.edition() + 1).orElse(1);
    }

    /**
     * Keeps an edition; the same again changes nothing.
     *
     * @throws InvalidInput (422) with every fault of the map
     * @throws RuleBroken (409) where that edition says something else, or is not the next
     */
    @Transactional
    Kept keep(String laboratory, int edition, ColumnMap map) {
        plan.laboratory(laboratory);
        ColumnMaps.Edition there = all().stream()
                .filter(one -> one.laboratory().equals(laboratory) && one.edition() == edition)
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
        Set<String> methods = plan.methods().stream().map(TestMethodView::code).collect(Collectors.toSet());
        List<FieldProblem> problems = ColumnMapRules.problems(map, methods);
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        if (edition != next(laboratory)) {
            throw new RuleBroken("EDITION_NOT_NEXT", "The next edition is " + next(laboratory));
        }
        maps.keep(laboratory, edition, map, account.get().actor(), clock.instant());
        return new Kept(maps.inForce(laboratory).orElseThrow(), true);
    }
}
