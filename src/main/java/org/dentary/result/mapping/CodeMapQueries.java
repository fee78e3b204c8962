package org.dentary.result.mapping;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/** Reads and writes the editions of code maps. */
@ApplicationScoped
class CodeMapQueries {
    private static final String ALL = """
            select m.laboratory, m.edition, m.in_force_from, m.codes, m.made_by, m.made_at
              from code_map m join laboratory l on l.code = m.laboratory
             order by l.position, l.code, m.edition desc
            """;
    private static final String INSERT = """
            insert into code_map (laboratory, edition, in_force_from, codes, made_by, made_at)
            values (:laboratory, :edition, :from, :codes, :by, :at)
            """;

    private final EntityManager entities;

    CodeMapQueries(EntityManager entities) {
        this.entities = entities;
    }

    record Row(
            String laboratory, Integer edition, LocalDate inForceFrom, String codes, String madeBy, Instant madeAt) {}

    @SuppressWarnings("unchecked")
    List<Row> all() {
        return entities.createNativeQuery(ALL, Row.class).getResultList();
    }

    void insert(String laboratory, int edition, LocalDate from, String codes, String by, Instant at) {
        entities.createNativeQuery(INSERT)
                .setParameter("laboratory", laboratory)
                .setParameter("edition", edition)
                .setParameter("from", from)
                .setParameter("codes", codes)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }
}
