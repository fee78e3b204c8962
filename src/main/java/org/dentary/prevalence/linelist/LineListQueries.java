package org.dentary.prevalence.linelist;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.util.List;
import java.util.UUID;

/** Reads the line list: a page by keyset, or all of it for a stream. */
@ApplicationScoped
class LineListQueries {
    private static final String OPEN = " from line l where l.closed_at is null";
    private static final String OF_CUT = " from data_cut_line c join line l on l.id = c.line where c.cut = :cut";

    private final EntityManager entities;

    LineListQueries(EntityManager entities) {
        this.entities = entities;
    }

    /**
     * A query over the line list in order of kit and disease; its rows are read by {@link LineView#of}.
     *
     * @param cut a data cut, or null for the lines as they are now
     * @param afterKit start behind this kit, or null
     * @param afterDisease and this disease of that kit
     */
    Query lines(LineFilter filter, UUID cut, String afterKit, String afterDisease) {
        Query query = entities.createNativeQuery("select " + LineColumn.selectList() + (cut == null ? OPEN : OF_CUT)
                + filter.sql() + (afterKit == null ? "" : " and (l.kit, l.disease) > (:afterKit, :afterDisease)")
                + " order by l.kit, l.disease");
        filter.bind(query);
        if (cut != null) {
            query.setParameter("cut", cut);
        }
        if (afterKit != null) {
            query.setParameter("afterKit", afterKit).setParameter("afterDisease", afterDisease);
        }
        return query;
    }

    @SuppressWarnings("unchecked")
    List<LineView> page(LineFilter filter, UUID cut, String afterKit, String afterDisease, int limit) {
        List<Object[]> rows =
                lines(filter, cut, afterKit, afterDisease).setMaxResults(limit).getResultList();
        return rows.stream().map(LineView::of).toList();
    }
}
