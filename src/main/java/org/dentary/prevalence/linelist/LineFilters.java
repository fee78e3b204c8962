package org.dentary.prevalence.linelist;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.codes.KitStem;
import org.dentary.codes.NotACode;
import org.dentary.plan.PlanService;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.Words;
import org.dentary.prevalence.question.Choice;
import org.dentary.prevalence.question.Scope;

/** A filter for each column of the line list: those that people use most first, every other behind them. */
@ApplicationScoped
public class LineFilters {
    private static final Set<LineColumn> FIRST = EnumSet.of(
            LineColumn.SEASON, LineColumn.MANAGEMENT_UNIT, LineColumn.AGE_CLASS, LineColumn.SEX, LineColumn.OUTCOME);
    private static final Map<LineColumn, List<String>> CODED = Map.ofEntries(
            Map.entry(LineColumn.ORIGIN, Scope.ORIGINS),
            Map.entry(LineColumn.SEX, List.of("MALE", "FEMALE", "UNKNOWN")),
            Map.entry(
                    LineColumn.SEX_EVIDENCE, List.of("GENITALIA_OR_UDDER", "HEAD_ONLY", "TAG_OR_REPORTED", "UNKNOWN")),
            Map.entry(LineColumn.AGE_CLASS, List.of("FAWN", "YEARLING", "ADULT", "UNKNOWN")),
            Map.entry(LineColumn.AGE_DISPUTED, List.of("true", "false")),
            Map.entry(LineColumn.MORTALITY_SOURCE, Scope.SOURCES),
            Map.entry(
                    LineColumn.COLLECTION_ROUTE,
                    List.of("STATION", "DROP_OFF", "PROCESSOR", "TAXIDERMIST", "FIELD", "OTHER")),
            Map.entry(LineColumn.CLINICAL_SIGNS, Scope.SIGNS),
            Map.entry(LineColumn.SAMPLING_BASIS, Scope.BASES),
            Map.entry(LineColumn.HAS_SPECIMEN, List.of("true", "false")),
            Map.entry(
                    LineColumn.OUTCOME,
                    List.of("DETECTED", "NOT_DETECTED", "PENDING", "INCONCLUSIVE", "UNSUITABLE", "NOT_TESTED")),
            Map.entry(LineColumn.EXCLUSION, List.of("ENTERED_IN_ERROR", "DUPLICATE", "NOT_ATTRIBUTABLE")),
            Map.entry(LineColumn.IDENTITY_EXCEPTION, List.of("true", "false")));

    private final PlanService plan;

    LineFilters(PlanService plan) {
        this.plan = plan;
    }

    /**
     * A filter as the form shows it.
     *
     * @param choices empty: a field to type in
     * @param type of that field: text or date
     * @param value what was typed
     */
    public record Field(String name, String words, List<Choice> choices, String type, String value) {}

    /** The filters shown at once, in the order of the columns. */
    List<Field> first(MultivaluedMap<String, String> asked) {
        return Stream.of(LineColumn.values())
                .filter(FIRST::contains)
                .map(column -> field(column, asked))
                .toList();
    }

    /** The filters of every other column. */
    List<Field> others(MultivaluedMap<String, String> asked) {
        return Stream.of(LineColumn.values())
                .filter(column -> !FIRST.contains(column))
                .flatMap(column -> column == LineColumn.DIED_ON
                        ? Stream.of(field(column, asked), day(LineFilter.FROM, asked), day(LineFilter.TO, asked))
                        : Stream.of(field(column, asked)))
                .toList();
    }

    /** A first or last day of death. */
    public static Field day(String name, MultivaluedMap<String, String> asked) {
        String given = asked.getFirst(name);
        return new Field(name, FilterWords.name(name), List.of(), "date", given == null ? "" : given);
    }

    /** Whether one of the filters behind is in use, so that the page opens them. */
    boolean isOtherInUse(MultivaluedMap<String, String> asked) {
        return Stream.of("cut", LineFilter.FROM, LineFilter.TO).anyMatch(asked::containsKey)
                || Stream.of(LineColumn.values())
                        .anyMatch(column -> !FIRST.contains(column) && asked.containsKey(column.field()));
    }

    /**
     * Refuses a value that no line can have.
     *
     * @throws InvalidInput naming the column, what was given and what is allowed
     */
    public void check(LineFilter filter) {
        filter.values().getOrDefault(LineColumn.KIT, List.of()).forEach(LineFilters::kit);
        filter.values().forEach((column, values) -> {
            List<String> allowed =
                    choices(column).stream().map(choice -> choice[0]).toList();
            values.stream()
                    .filter(value -> !allowed.isEmpty() && !allowed.contains(value))
                    .findFirst()
                    .ifPresent(value -> {
                        throw InvalidInput.field(
                                column.field(),
                                "NOT_A_VALUE",
                                "'" + value + "' is not a value of " + column.field() + "; allowed: "
                                        + String.join(", ", allowed));
                    });
        });
    }

    private static void kit(String given) {
        try {
            new KitStem(given);
        } catch (NotACode fault) {
            throw InvalidInput.field("kit", "NOT_A_KIT", "'" + given + "' is not a kit: " + fault.getMessage());
        }
    }

    private Field field(LineColumn column, MultivaluedMap<String, String> asked) {
        String chosen = asked.getFirst(column.field());
        return new Field(
                column.field(),
                column.words(),
                choices(column).isEmpty()
                        ? List.of()
                        : Choice.of(choices(column), choice -> choice[0], choice -> choice[1], chosen, "All"),
                column == LineColumn.DIED_ON ? "date" : "text",
                chosen == null ? "" : chosen);
    }

    /** What people call the values of a column, by code; empty where it has no list. */
    Map<String, String> names(LineColumn column) {
        return choices(column).stream().collect(Collectors.toMap(choice -> choice[0], choice -> choice[1]));
    }

    /** Values and their words; empty where the column has no list. */
    private List<String[]> choices(LineColumn column) {
        return switch (column) {
            case SEASON -> named(plan.seasons().stream().map(s -> new String[] {s.code(), s.name()}), true);
            case DISEASE -> named(plan.diseases().stream().map(d -> new String[] {d.code(), d.name()}), false);
            case SPECIES -> named(plan.species().stream().map(s -> new String[] {s.code(), s.name()}), false);
            case MANAGEMENT_UNIT -> named(plan.units().stream().map(u -> new String[] {u.code(), u.name()}), true);
            case REGION -> named(plan.regions().stream().map(r -> new String[] {r.code(), r.name()}), true);
            case STATION -> named(plan.stations().stream().map(s -> new String[] {s.code(), s.name()}), false);
            default ->
                CODED.getOrDefault(column, List.of()).stream()
                        .map(code -> new String[] {code, words(code)})
                        .toList();
        };
    }

    private static String words(String code) {
        return code.equals("true") ? "Yes" : code.equals("false") ? "No" : Words.of(code);
    }

    private static List<String[]> named(Stream<String[]> items, boolean canBeUnknown) {
        List<String[]> choices = new ArrayList<>(items.toList());
        if (canBeUnknown) {
            choices.add(new String[] {"UNKNOWN", "Unknown"});
        }
        return choices;
    }
}
