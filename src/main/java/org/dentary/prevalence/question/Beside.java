package org.dentary.prevalence.question;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.dentary.plan.PlanService;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.cut.DataCutQueries;

/**
 * Another season that a report puts beside its own.
 *
 * @param season its code; null as long as only a cut of it was named
 * @param cut a cut of it, or null: live
 */
public record Beside(String season, UUID cut) {
    public static final String PARAMETER = "with";

    /** Reads {@code 2025,2024} or ids of data cuts. */
    static List<Beside> parse(String given) {
        return given == null
                ? List.of()
                : Arrays.stream(given.split(","))
                        .map(String::trim)
                        .filter(text -> !text.isEmpty())
                        .map(Beside::one)
                        .toList();
    }

    private static Beside one(String given) {
        try {
            return new Beside(null, UUID.fromString(given));
        } catch (IllegalArgumentException e) {
            return new Beside(given, null);
        }
    }

    /** As an address names it. */
    String told() {
        return cut == null ? season : cut.toString();
    }

    /**
     * Checks the other seasons of a question and fills in those of cuts.
     *
     * @throws InvalidInput if one is the report's own or named twice, if live lines stand beside a cut or the other way round, or
     *     if no dimension keeps the seasons apart
     */
    public static List<Beside> settle(ReportQuestion question, PlanService plan, DataCutQueries cuts) {
        if (!question.with().isEmpty() && !question.by().contains(Dimension.SEASON)) {
            throw InvalidInput.field(
                    PARAMETER,
                    "IMPOSSIBLE_COMBINATION",
                    "with puts seasons side by side, and nothing keeps them apart; add season to by or to columns");
        }
        Set<String> seen = new HashSet<>(Set.of(question.season()));
        List<Beside> settled = new ArrayList<>();
        for (Beside one : question.with()) {
            if (one.cut() == null != (question.cut() == null)) {
                throw InvalidInput.field(
                        PARAMETER,
                        "NEEDS_A_CUT",
                        question.cut() == null
                                ? "with names cut " + one.cut()
                                        + ", and the report is live; name the season, or give a cut for"
                                        + " the report too"
                                : "season " + one.season()
                                        + " is live and the report stands on a cut, so it could not stay the"
                                        + " same; name a cut of that season (/api/v1/data-cuts?season=" + one.season()
                                        + ")");
            }
            String season = one.cut() == null
                    ? plan.season(one.season()).code()
                    : cuts.require(one.cut()).season();
            if (!seen.add(season)) {
                throw InvalidInput.field(
                        PARAMETER,
                        "SAME_SEASON",
                        "season " + season + " is in this report twice; its animals would count twice. Name each once");
            }
            settled.add(new Beside(season, one.cut()));
        }
        return settled;
    }
}
