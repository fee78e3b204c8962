package org.dentary.prevalence.document;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.dentary.plan.PlanClock;
import org.dentary.prevalence.Names;
import org.dentary.prevalence.PrevalenceAnswers.Answer;
import org.dentary.prevalence.PrevalenceReport;
import org.dentary.prevalence.linelist.FilterWords;

/** What stands around the figures in every form of the document: title, what it stands on, what was asked. */
@ApplicationScoped
class ReportFacts {
    private final Names names;
    private final FilterWords words;
    private final PlanClock zone;

    ReportFacts(Names names, FilterWords words, PlanClock zone) {
        this.names = names;
        this.words = words;
        this.zone = zone;
    }

    /** Such as "Chronic wasting disease in white-tailed deer, Surveillance year 2026-27". */
    String title(Answer answer) {
        PrevalenceReport report = answer.report();
        String title = names.disease(report.disease()) + " in "
                + names.species(report.species()).toLowerCase(Locale.US) + ", " + names.season(report.season());
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
                        names.season(other.season()) + ": "
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
        filters.forEach(
                (column, values) -> facts.add(new Fact(FilterWords.name(column), words.values(column, values))));
        report.scope()
                .forEach((field, values) -> facts.add(new Fact(
                        "Counts " + FilterWords.name(field).toLowerCase(Locale.US), words.values(field, values))));
        return facts;
    }

    /** The address that asks the same again. */
    String address(Answer answer, java.net.URI base) {
        return base.resolve("/api/v1/prevalence?" + answer.question().query()).toString();
    }
}
