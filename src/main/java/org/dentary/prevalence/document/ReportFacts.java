package org.dentary.prevalence.document;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.dentary.plan.DiseaseView;
import org.dentary.plan.PlanService;
import org.dentary.plan.SpeciesView;
import org.dentary.prevalence.PrevalenceAnswers.Answer;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.ReportZone;
import org.dentary.prevalence.linelist.FilterWords;

/** What stands around the figures in every form of the document: title, what it stands on, what was asked. */
@ApplicationScoped
class ReportFacts {
    private final PlanService plan;
    private final ReportZone zone;

    ReportFacts(PlanService plan, ReportZone zone) {
        this.plan = plan;
        this.zone = zone;
    }

    /** Such as "Chronic wasting disease in white-tailed deer, Surveillance year 2026-27". */
    String title(Answer answer) {
        PrevalenceReport report = answer.report();
        String disease = name(plan.diseases(), DiseaseView::code, DiseaseView::name, report.disease());
        String species = name(plan.species(), SpeciesView::code, SpeciesView::name, report.species());
        String title = disease + " in " + species.toLowerCase(Locale.US) + ", "
                + plan.season(report.season()).name();
        return report.incomplete() ? "Incomplete: " + title : title;
    }

    /** The cut by name and moment, or "Live, as of" a moment, on people's clocks. */
    String standsOn(Answer answer) {
        PrevalenceReport report = answer.report();
        return report.cut() == null
                ? "Live, as of " + zone.told(report.asOf())
                : "Data cut \"" + report.cut().name() + "\" of "
                        + zone.told(report.cut().madeAt());
    }

    /** What was asked, in the words of the plan. */
    List<Fact> asked(Answer answer) {
        PrevalenceReport report = answer.report();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Stands on", standsOn(answer)));
        report.with()
                .forEach(other -> facts.add(new Fact(
                        "Beside it",
                        plan.season(other.season()).name() + ": "
                                + (other.cut() == null
                                        ? "live, at the same moment"
                                        : "data cut \"" + other.cut().name() + "\" of "
                                                + zone.told(other.cut().madeAt())))));
        facts.add(new Fact(
                "By",
                String.join(", ", report.by().stream().map(FilterWords::name).toList())));
        if (report.columns() != null) {
            facts.add(new Fact("As columns", FilterWords.name(report.columns())));
        }
        Map<String, List<String>> filters = answer.question().filters();
        if (filters.isEmpty()) {
            facts.add(new Fact("Filters", "none"));
        }
        filters.forEach((column, values) -> facts.add(new Fact(FilterWords.name(column), FilterWords.values(values))));
        report.scope()
                .forEach((field, values) -> facts.add(new Fact(
                        "Counts " + FilterWords.name(field).toLowerCase(Locale.US), FilterWords.values(values))));
        return facts;
    }

    /** The address that asks the same again. */
    String address(Answer answer, java.net.URI base) {
        return base.resolve("/api/v1/prevalence?" + answer.question().query()).toString();
    }

    private static <T> String name(List<T> items, Function<T, String> code, Function<T, String> name, String wanted) {
        return items.stream()
                .filter(item -> code.apply(item).equals(wanted))
                .findFirst()
                .map(name)
                .orElse(wanted);
    }
}
