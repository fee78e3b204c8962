package org.dentary.result.imports;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.dentary.result.imports.file.ImportRow;
import org.dentary.result.imports.file.RowProblem;
import org.dentary.result.outcome.OutcomeService;
import org.hibernate.Session;
import org.hibernate.query.MutationQuery;

/** Stores and posts imports set-based: rows arrive as arrays, checks and posting are a fixed number of statements. */
@ApplicationScoped
class ImportWrites {
    private static final int AT_ONCE = 10_000;
    private static final String INSERT = """
            insert into result_import (id, laboratory, format, digest, file_name, state, rows, postable, column_map,
                   uploaded_by, uploaded_at)
            values (:id, :laboratory, :format, :digest, :name, 'PREVIEWED', :rows, 0, :map, :by, :at)
            """;
    private static final String ROWS = """
            insert into result_import_row (import, line, specimen_code, accession, item, method, stage, finding, status,
                   tested_on, reported_on, unsuitable_reason, measured_value, performing_laboratory, corrects, run, tissue)
            select :id, r.* from unnest(cast(:line as int[]), cast(:specimens as text[]), cast(:accession as text[]),
                   cast(:item as text[]), cast(:method as text[]), cast(:stage as text[]), cast(:finding as text[]),
                   cast(:status as text[]), cast(:testedOn as text[]), cast(:reportedOn as text[]), cast(:reason as text[]),
                   cast(:measuredValue as text[]), cast(:performing as text[]), cast(:corrects as text[]),
                   cast(:run as text[]), cast(:tissue as text[])) as r
            """;
    private static final String PROBLEMS = """
            insert into result_import_problem (import, line, field, rule, message)
            select :id, p.* from unnest(cast(:line as int[]), cast(:field as text[]), cast(:rule as text[]),
                   cast(:message as text[])) as p
            """;
    private static final String POST = """
            insert into finding (id, method, disease, stage, finding, status, laboratory, performing_laboratory, accession,
                   item, tested_on, reported_on, reason, measured_value, run, pool, corrects, import, import_line,
                   recorded_by, recorded_at)
            select md5(r.import || ':' || r.line)::uuid, r.method, m.disease, r.stage, r.finding, r.status, i.laboratory,
                   r.performing_laboratory, r.accession, r.item, r.tested_on::date, r.reported_on::date,
                   r.unsuitable_reason, r.measured_value, r.run,
                   (select count(distinct l.kit_bound) > 1 from unnest(string_to_array(r.specimen_code, ' ')) c
                      join label l on l.code = c),
                   cast(r.corrects as uuid), r.import, r.line, :by, :at
              from result_import_row r join result_import i on i.id = r.import join test_method m on m.code = r.method
             where r.import = :id and r.state = 'NEW'
            """;
    private static final String NAME = """
            insert into finding_specimen (finding, code)
            select md5(r.import || ':' || r.line)::uuid, c
              from result_import_row r, unnest(string_to_array(r.specimen_code, ' ')) c
             where r.import = :id and r.state = 'NEW'
            """;
    private static final String HOLD =
            "update result_import_row set state = 'HELD' where import = :id and line = any(cast(:lines as int[])) and state = 'NEW'";
    private static final String POSTED =
            "update result_import_row set state = 'POSTED' where import = :id and state = 'NEW'";
    private static final String CLOSE = """
            update result_import set state = 'POSTED', posted_by = :by, posted_at = :at, posted_rows = :posted,
                   left_out = cast(:leftOut as int[]), accepted_messages = cast(:accepted as text[]), version = version + 1
             where id = :id
            """;

    private final EntityManager entities;

    ImportWrites(EntityManager entities) {
        this.entities = entities;
    }

    void insert(
            UUID id,
            String laboratory,
            String format,
            String digest,
            String name,
            int rows,
            Integer map,
            String by,
            Instant at) {
        mutation(INSERT)
                .setParameter("id", id)
                .setParameter("laboratory", laboratory)
                .setParameter("format", format)
                .setParameter("digest", digest)
                .setParameter("name", name, String.class)
                .setParameter("rows", rows)
                .setParameter("map", map, Integer.class)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }

    /** Stores the lines, and tells how many of how many as they are stored. */
    void rows(UUID id, List<ImportRow> all, OutcomeService.Told told) {
        for (int from = 0; from < all.size(); from += AT_ONCE) {
            List<ImportRow> rows = all.subList(from, Math.min(all.size(), from + AT_ONCE));
            mutation(ROWS)
                    .setParameter("id", id)
                    .setParameter("line", rows.stream().map(ImportRow::line).toArray(Integer[]::new))
                    .setParameter("specimens", column(rows, ImportRow::specimens))
                    .setParameter("accession", column(rows, ImportRow::accession))
                    .setParameter("item", column(rows, ImportRow::item))
                    .setParameter("method", column(rows, ImportRow::method))
                    .setParameter("stage", column(rows, ImportRow::stage))
                    .setParameter("finding", column(rows, ImportRow::finding))
                    .setParameter("status", column(rows, ImportRow::status))
                    .setParameter("testedOn", column(rows, ImportRow::testedOn))
                    .setParameter("reportedOn", column(rows, ImportRow::reportedOn))
                    .setParameter("reason", column(rows, ImportRow::reason))
                    .setParameter("measuredValue", column(rows, ImportRow::measuredValue))
                    .setParameter("performing", column(rows, ImportRow::performingLaboratory))
                    .setParameter("corrects", column(rows, ImportRow::corrects))
                    .setParameter("run", column(rows, ImportRow::run))
                    .setParameter("tissue", column(rows, ImportRow::tissue))
                    .executeUpdate();
            told.of(from + rows.size(), all.size());
        }
    }

    void problems(UUID id, List<RowProblem> all) {
        for (int from = 0; from < all.size(); from += AT_ONCE) {
            List<RowProblem> some = all.subList(from, Math.min(all.size(), from + AT_ONCE));
            mutation(PROBLEMS)
                    .setParameter("id", id)
                    .setParameter("line", some.stream().map(RowProblem::line).toArray(Integer[]::new))
                    .setParameter("field", column(some, RowProblem::field))
                    .setParameter("rule", column(some, RowProblem::rule))
                    .setParameter("message", column(some, RowProblem::message))
                    .executeUpdate();
        }
    }

    /** Posts every row that is still new; returns how many. */
    int post(UUID id, String by, Instant at) {
        int posted = mutation(POST)
                .setParameter("id", id)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
        mutation(NAME).setParameter("id", id).executeUpdate();
        mutation(POSTED).setParameter("id", id).executeUpdate();
        return posted;
    }

    void hold(UUID id, List<Integer> lines) {
        if (!lines.isEmpty()) {
            mutation(HOLD)
                    .setParameter("id", id)
                    .setParameter("lines", lines.toArray(Integer[]::new))
                    .executeUpdate();
        }
    }

    /** @param accepted numbers of messages that were posted though another had the number */
    void close(UUID id, String by, Instant at, int posted, List<Integer> leftOut, List<String> accepted) {
        mutation(CLOSE)
                .setParameter("id", id)
                .setParameter("by", by)
                .setParameter("at", at)
                .setParameter("posted", posted)
                .setParameter("leftOut", leftOut.toArray(Integer[]::new))
                .setParameter("accepted", accepted.toArray(String[]::new))
                .executeUpdate();
    }

    private MutationQuery mutation(String sql) {
        return entities.unwrap(Session.class).createNativeMutationQuery(sql);
    }

    private static <T> String[] column(List<T> rows, Function<T, String> value) {
        return rows.stream().map(value).toArray(String[]::new);
    }
}
