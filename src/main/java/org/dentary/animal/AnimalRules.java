package org.dentary.animal;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;

/** What must hold of an animal's facts, whoever enters them and however. */
public final class AnimalRules {
    private AnimalRules() {}

    /**
     * The day of death from what was typed: a day as it is, an instant as the day it fell on at the station, wherever the
     * clock that wrote it stood.
     *
     * @param typed {@code 2026-11-14} or {@code 2026-11-14T23:30:00-06:00}; null or blank for unknown
     * @param station zone of the station
     * @return null for unknown
     * @throws InvalidInput if it is neither
     */
    public static LocalDate diedOn(String typed, ZoneId station) {
        if (typed == null || typed.isBlank()) {
            return null;
        }
        String text = typed.trim();
        try {
            return text.length() == 10
                    ? CalendarText.day(text)
                    : CalendarText.time(text).atZoneSameInstant(station).toLocalDate();
        } catch (DateTimeParseException e) {
            throw InvalidInput.field(
                    "diedOn",
                    "INVALID_VALUE",
                    "'" + text + "' is not a date such as 2026-11-14, nor a time with offset such as"
                            + " 2026-11-14T07:30:00-06:00");
        }
    }

    /**
     * Everything that does not hold, in the order of the fields.
     *
     * @param today the present day at the station
     */
    public static List<FieldProblem> problems(AnimalFacts facts, LocalDate today) {
        List<FieldProblem> problems = new ArrayList<>();
        if (facts.diedOn() == null && isBlank(facts.diedOnReason())) {
            problems.add(new FieldProblem(
                    "diedOn",
                    "REQUIRED",
                    "Give the day of death such as 2026-11-14, or say in diedOnReason why it is not known"));
        }
        if (facts.diedOn() != null && facts.diedOn().isAfter(today)) {
            problems.add(new FieldProblem(
                    "diedOn",
                    "FUTURE",
                    facts.diedOn() + " is still to come (today at the station is " + today + "); check the date"));
        }
        if (facts.jawStatus() == JawStatus.NOT_EXAMINED && isBlank(facts.jawReason())) {
            problems.add(new FieldProblem(
                    "jawReason", "REQUIRED", "Say why the jaw was not examined, such as head not brought"));
        }
        if (facts.mortalitySource() == MortalitySource.OTHER
                && isBlank(facts.details().mortalitySourceText())) {
            problems.add(new FieldProblem(
                    "mortalitySourceText", "REQUIRED", "Say in words how the animal died, or give UNKNOWN"));
        }
        if (facts.enteredInError() && isBlank(facts.errorReason())) {
            problems.add(new FieldProblem(
                    "reason", "REQUIRED", "Say why this entry was made in error; it stays and is counted nowhere"));
        }
        identifiers(facts.identifiers(), problems);
        return problems;
    }

    private static void identifiers(List<Identifier> identifiers, List<FieldProblem> problems) {
        Set<List<String>> seen = new LinkedHashSet<>();
        for (int i = 0; i < identifiers.size(); i++) {
            Identifier given = identifiers.get(i);
            if (!seen.add(List.of(given.type(), given.issuer() == null ? "" : given.issuer(), given.value()))) {
                problems.add(new FieldProblem(
                        "identifiers[" + i + "]", "TWICE", given.value() + " is given twice; give it once"));
            }
        }
    }

    private static boolean isBlank(String text) {
        return text == null || text.isBlank();
    }
}
