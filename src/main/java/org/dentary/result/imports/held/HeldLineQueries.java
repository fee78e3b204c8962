package org.dentary.result.imports.held;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** Reads and settles lines left out. */
@ApplicationScoped
class HeldLineQueries {
    private static final String HELD = """
            with held as (
              select i.id::text, r.line, i.file_name, i.laboratory, r.specimen_code, r.accession, r.method, r.stage, r.finding,
                     (select string_agg(p.field || ': ' || p.message, chr(10) order by p.field)
                        from result_import_problem p where p.import = r.import and p.line = r.line) as problems,
                     i.posted_by, i.posted_at,
                     case when s.import is not null then 'SETTLED'
                          when exists (select 1 from finding_specimen fs join finding f on f.id = fs.finding
                                        where fs.code = any (string_to_array(r.specimen_code, ' '))
                                          and f.method = r.method and f.stage = r.stage and f.recorded_at > i.posted_at)
                          then 'REPORTED' else 'WAITS' end as state,
                     s.settled_by, s.settled_at, s.note
                from result_import_row r join result_import i on i.id = r.import
                left join held_line_settlement s on s.import = r.import and s.line = r.line
               where r.state = 'HELD' and (cast(:import as uuid) is null or r.import = :import)
                 and (cast(:line as int) is null or r.line = :line))
            select * from held where :all or state = 'WAITS' order by posted_at desc, id, line
            """;
    private static final String COUNT = "select count(*) from (" + HELD + ") counted";
    private static final String SETTLE = """
            insert into held_line_settlement (import, line, note, settled_by, settled_at)
            values (:import, :line, :note, :by, :at)
            """;

    private final EntityManager entities;

    HeldLineQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** Lines left out, those of the newest file first, for a list or a stream of {@link HeldLine}s. */
    Query held(boolean all) {
        return of(entities.createNativeQuery(HELD, HeldLine.class), null, null, all);
    }

    @SuppressWarnings("unchecked")
    List<HeldLine> line(UUID resultImport, int line) {
        return of(entities.createNativeQuery(HELD, HeldLine.class), resultImport, line, true)
                .getResultList();
    }

    long count(boolean all) {
        return ((Number) of(entities.createNativeQuery(COUNT), null, null, all).getSingleResult()).longValue();
    }

    void settle(UUID resultImport, int line, String note, String by, Instant at) {
        entities.createNativeQuery(SETTLE)
                .setParameter("import", resultImport)
                .setParameter("line", line)
                .setParameter("note", note)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    private static Query of(Query query, UUID resultImport, Integer line, boolean all) {
        return query.setParameter("import", resultImport)
                .setParameter("line", line)
                .setParameter("all", all);
    }
}
