package org.dentary.prevalence.ageing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the ageing-error matrices that are set up. */
@ApplicationScoped
public class ErrorMatrixQueries {
    private static final String ALL = """
            select code, name, species, kind, source, as_of, sex, true_class, read_class, jaws, share
              from ageing_error_matrix
             order by code, array_position(array['BOTH', 'MALE', 'FEMALE'], sex),
                      array_position(array['FAWN', 'YEARLING', 'ADULT'], true_class),
                      array_position(array['FAWN', 'YEARLING', 'ADULT'], read_class)
            """;

    private final EntityManager entities;

    ErrorMatrixQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** One pair of classes of a matrix. */
    public record Row(
            String code,
            String name,
            String species,
            String kind,
            String source,
            LocalDate asOf,
            String sex,
            String trueClass,
            String readClass,
            Integer jaws,
            BigDecimal share) {}

    /** All of them, by code. */
    @SuppressWarnings("unchecked")
    List<ErrorMatrix> all() {
        Map<String, List<Row>> codes = new LinkedHashMap<>();
        for (Row row : (List<Row>) entities.createNativeQuery(ALL, Row.class).getResultList()) {
            codes.computeIfAbsent(row.code(), code -> new ArrayList<>()).add(row);
        }
        return codes.values().stream().map(ErrorMatrixQueries::matrix).toList();
    }

    private static ErrorMatrix matrix(List<Row> rows) {
        Row first = rows.get(0);
        Map<String, Map<String, List<Row>>> sexes = new LinkedHashMap<>();
        rows.forEach(row -> sexes.computeIfAbsent(row.sex(), sex -> new LinkedHashMap<>())
                .computeIfAbsent(row.trueClass(), age -> new ArrayList<>())
                .add(row));
        List<ErrorMatrix.Table> tables = new ArrayList<>();
        sexes.forEach((sex, ages) -> tables.add(new ErrorMatrix.Table(
                sex,
                ages.entrySet().stream()
                        .map(age -> row(age.getKey(), age.getValue()))
                        .toList())));
        return new ErrorMatrix(
                first.code(),
                first.name(),
                first.species(),
                first.kind(),
                first.source(),
                first.asOf().toString(),
                tables);
    }

    private static ErrorMatrix.Row row(String trueClass, List<Row> reads) {
        if (reads.get(0).jaws() != null) {
            return ErrorMatrixRules.row(
                    trueClass, reads.stream().mapToInt(Row::jaws).toArray(), null, null);
        }
        return ErrorMatrixRules.row(
                trueClass,
                reads.stream().mapToDouble(row -> row.share().doubleValue()).toArray());
    }
}
