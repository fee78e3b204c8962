package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.function.Function;
import org.dentary.plan.DiseaseView;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.SpeciesView;

/** What people call what a report holds as a code; a code that the plan has no name for stays as it is. */
@ApplicationScoped
public class Names {
    private final PlanService plan;

    Names(PlanService plan) {
        this.plan = plan;
    }

    public String season(String code) {
        return name(plan.seasons(), SeasonView::code, SeasonView::name, code);
    }

    public String disease(String code) {
        return name(plan.diseases(), DiseaseView::code, DiseaseView::name, code);
    }

    public String species(String code) {
        return name(plan.species(), SpeciesView::code, SpeciesView::name, code);
    }

    /** Such as "Chronic wasting disease, Surveillance year 2026-27". */
    public String of(String disease, String season) {
        return disease(disease) + ", " + season(season);
    }

    private static <T> String name(List<T> items, Function<T, String> code, Function<T, String> name, String wanted) {
        return items.stream()
                .filter(item -> code.apply(item).equals(wanted))
                .findFirst()
                .map(name)
                .orElse(wanted);
    }
}
