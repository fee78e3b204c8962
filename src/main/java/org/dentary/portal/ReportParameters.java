package org.dentary.portal;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.dentary.prevalence.linelist.LineColumn;
import org.dentary.prevalence.linelist.LineFilter;
import org.dentary.prevalence.question.Scope;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;

/**
 * What the address of a report may ask, in the OpenAPI document: every column of the line list that it can be filtered by, and for
 * the other forms of a report (CSV, pictures, documents) the same as for its JSON.
 */
final class ReportParameters {
    /** Columns that a report by its nature is not filtered by. */
    private static final Map<String, Set<String>> REPORTS = Map.of(
            "/api/v1/line-list", Set.of(),
            "/api/v1/prevalence", Set.of(),
            "/api/v1/true-prevalence", Set.of(),
            "/api/v1/chance-of-detection", Set.of("outcome", "exclusion", "hasSpecimen"),
            "/api/v1/comparisons", Set.of("ageClass", "sex"),
            "/api/v1/ageing-error", Set.of("ageClass"));

    private static final Map<String, List<String>> VALUES = Map.of(
            "sex", List.of("MALE", "FEMALE", "UNKNOWN"),
            "ageClass", List.of("FAWN", "YEARLING", "ADULT", "UNKNOWN"),
            "origin", Scope.ORIGINS,
            "mortalitySource", Scope.SOURCES,
            "clinicalSigns", Scope.SIGNS,
            "samplingBasis", Scope.BASES,
            "ageDisputed", List.of("true", "false"),
            "hasSpecimen", List.of("true", "false"),
            "identityException", List.of("true", "false"));

    private ReportParameters() {}

    /** Adds them to the reports among the paths. */
    static void complete(Map<String, PathItem> paths) {
        REPORTS.forEach((path, left) -> {
            Operation json = paths.get(path).getGET();
            filters(left).forEach((name, filter) -> add(json, filter));
            paths.keySet().stream()
                    .filter(other -> other.matches(Pattern.quote(path) + "(-[a-z-]+)?\\.[a-z]+"))
                    .forEach(other -> json.getParameters()
                            .forEach(parameter -> add(paths.get(other).getGET(), parameter)));
        });
    }

    private static Map<String, Parameter> filters(Set<String> left) {
        Map<String, Parameter> filters = new TreeMap<>();
        LineColumn.fields().stream()
                .filter(field -> !left.contains(field))
                .forEach(field -> filters.put(
                        field,
                        parameter(field, "only animals of which the line list says one of these, with commas between")
                                .style(Parameter.Style.FORM)
                                .explode(false)
                                .schema(values(field))));
        filters.put(
                LineFilter.FROM,
                parameter(LineFilter.FROM, "first day of death").example("2026-11-01"));
        filters.put(LineFilter.TO, parameter(LineFilter.TO, "last day of death").example("2026-11-30"));
        return filters;
    }

    private static Parameter parameter(String name, String description) {
        return OASFactory.createParameter()
                .name(name)
                .in(Parameter.In.QUERY)
                .description(description)
                .schema(OASFactory.createSchema().type(List.of(Schema.SchemaType.STRING)));
    }

    /** One or several of a column's values; several stand in one parameter with commas. */
    private static Schema values(String field) {
        Schema one = OASFactory.createSchema().type(List.of(Schema.SchemaType.STRING));
        if (VALUES.containsKey(field)) {
            one.enumeration(List.copyOf(VALUES.get(field)));
        }
        return OASFactory.createSchema().type(List.of(Schema.SchemaType.ARRAY)).items(one);
    }

    private static void add(Operation operation, Parameter parameter) {
        List<Parameter> there = operation.getParameters();
        if (there == null
                || there.stream().noneMatch(given -> parameter.getName().equals(given.getName()))) {
            operation.addParameter(parameter);
        }
    }
}
