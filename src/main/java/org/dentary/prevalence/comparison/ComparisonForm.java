package org.dentary.prevalence.comparison;

import java.util.List;
import org.dentary.prevalence.question.Choice;

/** The question as the page's form shows it; {@code query} is the address's part behind the question mark. */
record ComparisonForm(
        List<Choice> seasons,
        List<Choice> diseases,
        List<Choice> units,
        List<Choice> cuts,
        List<Choice> with,
        List<Choice> herds,
        String ageFawn,
        String ageYearling,
        String ageAdult,
        String query) {}
