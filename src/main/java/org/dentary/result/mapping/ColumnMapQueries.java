package org.dentary.result.mapping;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;

/** Reads and writes the editions of column maps. */
@ApplicationScoped
class ColumnMapQueries {
    private static final String ALL = """
            select m.laboratory, m.edition, m.mapping, m.made_by, m.made_at
              from column_map m join laboratory l on l.code = m.laboratory
             order by l.position, l.code, m.edition desc
            """;
    private static final String INSERT = """
            insert into column_map (laboratory, edition, mapping, made_by, made_at)
            values (:laboratory, :edition, :mapping, :by, :at)
            """;

    private final EntityManager entities;

    ColumnMapQueries(EntityManager entities) {
        this.entities = entities;
    }

    record Row(String laboratory, Integer edition, String mapping, String madeBy, Instant madeAt) {}

    @SuppressWarnings("unchecked")
    List<Row> all() {
        return entities.createNativeQuery(ALL, Row.class).getResultList();
    }

    void insert(String laboratory, int edition, String mapping, String by, Instant at) {
        entities.createNativeQuery(INSERT)
                .setParameter("laboratory", laboratory)
                .setParameter("edition", edition)
                .setParameter("mapping", mapping)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }
}
