package org.dentary.prevalence.question;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.prevalence.linelist.LineFilter;
import org.dentary.statistics.Domain;
import org.dentary.statistics.IntervalMethod;

/**
 * A report asked for, as its address says it.
 *
 * @param season season code, or null
 * @param disease disease code, or null for the plan's first
 * @param species species code, or null for the plan's first
 * @param by dimensions in order, those of the rows first; never empty
 * @param columns the last of them where its values stand side by side as columns, or null: each cell is a row
 * @param filter conditions on columns
 * @param scope which animals count
 * @param interval method of the interval
 * @param confidence two-sided level in (0, 1)
 * @param cut data cut, or null for the lines as they are now
 * @param with other seasons beside its own; mostly empty
 */
public record ReportQuestion(
        String season,
        String disease,
        String species,
        List<Dimension> by,
        Dimension columns,
        LineFilter filter,
        Scope scope,
        IntervalMethod interval,
        double confidence,
        UUID cut,
        List<Beside> with) {
    private static final String DEFAULT_ROWS = "ageClass,sex";
    private static final Map<String, List<String>> WORDS = Map.of(
            "ageClass", List.of("FAWN", "YEARLING", "ADULT", "UNKNOWN"),
            "sex", List.of("MALE", "FEMALE", "UNKNOWN"));

    /**
     * Reads the parameters of an address.
     *
     * @throws InvalidInput naming the parameter, what was given and what is allowed
     */
    public static ReportQuestion of(Map<String, List<String>> parameters) {
        Map<String, List<String>> rest = new LinkedHashMap<>(parameters);
        String season = one(rest, "season");
        String disease = one(rest, "disease");
        String species = one(rest, "species");
        List<Dimension> rows = Dimension.parse(or(one(rest, "by"), DEFAULT_ROWS));
        Dimension columns = Dimension.columns(one(rest, "columns"), rows);
        String interval = one(rest, "interval");
        String confidence = one(rest, "confidence");
        String cut = one(rest, "cut");
        List<Beside> with = Beside.parse(
                rest.containsKey(Beside.PARAMETER) ? String.join(",", rest.remove(Beside.PARAMETER)) : null);
        Scope scope = new Scope(
                words(rest, "origin", Scope.ORIGINS, Scope.DEFAULT.origin()),
                words(rest, "mortalitySource", Scope.SOURCES, Scope.DEFAULT.mortalitySource()),
                words(rest, "clinicalSigns", Scope.SIGNS, Scope.DEFAULT.clinicalSigns()),
                words(rest, "samplingBasis", Scope.BASES, Scope.DEFAULT.samplingBasis()));
        WORDS.forEach((field, allowed) -> check(rest.getOrDefault(field, List.of()), field, allowed));
        return new ReportQuestion(
                season,
                disease,
                species,
                Dimension.withColumns(rows, columns),
                columns,
                LineFilter.of(rest),
                scope,
                interval == null ? IntervalMethod.WILSON : interval(interval),
                confidence == null ? 0.95 : confidence(confidence),
                cut == null ? null : uuid(cut),
                with);
    }

    private static String or(String given, String otherwise) {
        return given == null ? otherwise : given;
    }

    private static String one(Map<String, List<String>> parameters, String name) {
        List<String> given = parameters.remove(name);
        if (given == null || given.stream().allMatch(String::isBlank)) {
            return null;
        }
        if (given.size() > 1) {
            throw InvalidInput.field(name, "REPEATED", name + " is given " + given.size() + " times; give it once");
        }
        return given.get(0).trim();
    }

    private static List<String> words(
            Map<String, List<String>> parameters, String name, List<String> allowed, List<String> byDefault) {
        List<String> given = parameters.remove(name);
        if (given == null) {
            return byDefault;
        }
        List<String> words = given.stream()
                .flatMap(text -> Arrays.stream(text.split(",")))
                .map(String::trim)
                .filter(text -> !text.isEmpty())
                .toList();
        check(words, name, allowed);
        return words.isEmpty() ? byDefault : words;
    }

    private static void check(List<String> given, String name, List<String> allowed) {
        given.stream()
                .flatMap(text -> Arrays.stream(text.split(",")))
                .map(String::trim)
                .filter(word -> !word.isEmpty() && !allowed.contains(word))
                .findFirst()
                .ifPresent(word -> {
                    throw InvalidInput.field(
                            name,
                            "NOT_A_VALUE",
                            "'" + word + "' is not a value of " + name + "; allowed: " + String.join(", ", allowed));
                });
    }

    private static IntervalMethod interval(String given) {
        return Arrays.stream(IntervalMethod.values())
                .filter(method -> method.name().equals(given))
                .findFirst()
                .orElseThrow(() -> InvalidInput.field(
                        "interval",
                        "NOT_A_VALUE",
                        "'" + given + "' is not an interval; allowed: "
                                + Arrays.stream(IntervalMethod.values())
                                        .map(Enum::name)
                                        .collect(Collectors.joining(", "))));
    }

    private static double confidence(String given) {
        try {
            double level = Double.parseDouble(given);
            if (Domain.isConfidence(level)) {
                return level;
            }
        } catch (NumberFormatException e) {
            // told below, together with numbers out of range
        }
        throw InvalidInput.field(
                "confidence", "OUT_OF_RANGE", "'" + given + "' is not a confidence; give a fraction such as 0.95");
    }

    private static UUID uuid(String given) {
        try {
            return UUID.fromString(given);
        } catch (IllegalArgumentException e) {
            throw InvalidInput.field(
                    "cut", "NOT_A_UUID", "'" + given + "' is not the id of a data cut; /api/v1/data-cuts lists them");
        }
    }

    /** The same question of another season, on one of its cuts or, with null, live. */
    public ReportQuestion inSeason(String other, UUID itsCut) {
        return new ReportQuestion(
                other, disease, species, by, columns, filter, scope, interval, confidence, itsCut, List.of());
    }

    /** The same animals of the same season in the default rows, with the interval of that method. */
    public ReportQuestion inDefaultRows(IntervalMethod itsInterval) {
        return new ReportQuestion(
                season,
                disease,
                species,
                Dimension.parse(DEFAULT_ROWS),
                null,
                filter,
                scope,
                itsInterval,
                confidence,
                cut,
                List.of());
    }

    /** The same with each cell in a row of its own. */
    public ReportQuestion inRows() {
        return new ReportQuestion(season, disease, species, by, null, filter, scope, interval, confidence, cut, with);
    }

    /** Whether it asks for some values of a field of the line list only. */
    public boolean filters(String field) {
        return filter.values().keySet().stream()
                .anyMatch(column -> column.field().equals(field));
    }

    public ReportQuestion on(String season, String disease, String species, List<Beside> beside) {
        return new ReportQuestion(
                season, disease, species, by, columns, filter, scope, interval, confidence, cut, beside);
    }

    private List<String> beside() {
        return with.stream().map(Beside::told).sorted().toList();
    }

    /** Where its lines come from. */
    public Lines lines() {
        return new Lines(season, disease, species, cut, with);
    }

    /** The address's part behind the question mark that asks the same again, everything said that was left to the plan. */
    public String query() {
        StringBuilder query = new StringBuilder();
        add(query, "season", season);
        add(query, "disease", disease);
        add(query, "species", species);
        add(query, "by", by.stream().map(Dimension::field).collect(Collectors.joining(",")));
        add(query, "columns", columns == null ? null : columns.field());
        filter.told().forEach((field, accepted) -> add(query, field, String.join(",", accepted)));
        scope.told().forEach((field, accepted) -> add(query, field, String.join(",", accepted)));
        add(query, "interval", interval.name());
        add(query, "confidence", String.valueOf(confidence));
        add(query, "cut", cut == null ? null : cut.toString());
        add(query, Beside.PARAMETER, with.isEmpty() ? null : String.join(",", beside()));
        return query.substring(1);
    }

    private static void add(StringBuilder query, String name, String value) {
        if (value != null) {
            query.append('&')
                    .append(name)
                    .append('=')
                    .append(URLEncoder.encode(value, StandardCharsets.UTF_8).replace("%2C", ","));
        }
    }

    /**
     * Reads a question back from its canonical form.
     *
     * @param told as {@link #canonical} tells it
     * @throws InvalidInput if it is the question of another kind of report
     */
    public static ReportQuestion told(Map<String, Object> told, UUID cut) {
        Set<String> named = new HashSet<>(told.keySet());
        named.removeAll(Set.of("columns", Beside.PARAMETER));
        if (!named.equals(Set.of("season", "disease", "species", "by", "filter", "scope", "interval", "confidence"))) {
            throw new InvalidInput("ANOTHER_REPORT", "a question of another kind of report");
        }
        Map<String, List<String>> parameters = new LinkedHashMap<>();
        for (String name : List.of("season", "disease", "species", "interval", "confidence")) {
            parameters.put(name, List.of(told.get(name).toString()));
        }
        parameters.put("by", List.of(String.join(",", words(told.get("by")))));
        if (told.containsKey(Beside.PARAMETER)) {
            parameters.put(Beside.PARAMETER, words(told.get(Beside.PARAMETER)));
        }
        if (told.containsKey("columns")) {
            parameters.put("columns", List.of(told.get("columns").toString()));
        }
        for (String name : List.of("filter", "scope")) {
            ((Map<?, ?>) told.get(name)).forEach((field, values) -> parameters.put(field.toString(), words(values)));
        }
        parameters.put("cut", List.of(cut.toString()));
        return of(parameters);
    }

    private static List<String> words(Object values) {
        return ((List<?>) values).stream().map(Object::toString).toList();
    }

    /** Columns that are filtered, by their field, and the values that pass; a first and last day of death likewise. */
    public Map<String, List<String>> filters() {
        return filter.told();
    }

    /** The question in a fixed order and form, equal for equal questions: the key of a stored answer; free to be added to. */
    public Map<String, Object> canonical() {
        Map<String, Object> told = new java.util.TreeMap<>();
        told.put("season", season);
        told.put("disease", disease);
        told.put("species", species);
        told.put("by", by.stream().map(Dimension::field).toList());
        if (columns != null) {
            told.put("columns", columns.field());
        }
        if (!with.isEmpty()) {
            told.put(Beside.PARAMETER, beside());
        }
        told.put("filter", filters());
        told.put("scope", scope.told());
        told.put("interval", interval.name());
        told.put("confidence", confidence);
        return told;
    }
}
