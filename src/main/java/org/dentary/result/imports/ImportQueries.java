package org.dentary.result.imports;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.result.imports.file.RowProblem;

/** Reads imports, their rows and their faults. */
@ApplicationScoped
class ImportQueries {
    private static final String SELECT = """
            select i.id::text, i.laboratory, i.format, i.file_name, i.state, i.rows, i.postable,
                   (select count(*) from result_import_row r where r.import = i.id and r.state = 'REPEAT')::int,
                   coalesce(i.posted_rows, 0), i.digest, i.uploaded_by, i.uploaded_at, i.posted_by, i.posted_at, i.version,
                   (select count(*) from result_import_problem p where p.import = i.id)::int
              from result_import i
            """;
    private static final String PROBLEMS =
            "select line, field, rule, message from result_import_problem where import = :id order by line, field, rule, message";
    private static final String ROWS = """
            select r.line, r.specimen_code, r.accession, r.method, r.stage, r.finding, r.status, r.tested_on, r.reported_on,
                   r.state, (select string_agg(p.field || ': ' || p.message, chr(10) order by p.field) from result_import_problem p
                              where p.import = r.import and p.line = r.line) as problems
              from result_import_row r where r.import = :id
             order by (exists (select 1 from result_import_problem p where p.import = r.import and p.line = r.line)) desc, r.line
            """;
    private static final String FAULTY_LINES = """
            select distinct p.line from result_import_problem p join result_import_row r on r.import = p.import and r.line = p.line
             where p.import = :id and r.state = 'NEW' order by p.line
            """;
    private static final String KITS = """
            select distinct l.kit_bound from finding f join finding_specimen fs on fs.finding = f.id
              join label l on l.code = fs.code where f.import = :id order by 1
            """;

    /** What says otherwise of the same tissue, method and stage is a fault of its own. */
    private static final String REPEATED = """
            select r.run, count(distinct r.line), min(q.id::text), min(q.posted_at)
              from result_import i join result_import_row r on r.import = i.id and r.state = 'NEW'
              join result_import_row p on p.run = r.run and p.state = 'POSTED' and p.import <> r.import
              join result_import q on q.id = p.import and q.format = 'HL7' and q.laboratory = i.laboratory
             where i.id = :id and i.format = 'HL7' and i.state = 'PREVIEWED' and not r.line = any (cast(:leaveOut as int[]))
               and not exists (select 1 from result_import_problem f where f.import = r.import and f.line = r.line
                                and f.rule = 'MESSAGE_SAID_OTHERWISE')
             group by r.run order by min(r.line)
            """;

    private final EntityManager entities;

    ImportQueries(EntityManager entities) {
        this.entities = entities;
    }

    record Head(
            String id,
            String laboratory,
            String format,
            String fileName,
            String state,
            Integer rows,
            Integer postable,
            Integer repeats,
            Integer posted,
            String digest,
            String uploadedBy,
            Instant uploadedAt,
            String postedBy,
            Instant postedAt,
            Integer version,
            Integer problems) {}

    /** A row as the preview shows it; {@code problems} has a line for each, null where there are none. */
    public record PreviewRow(
            Integer line,
            String specimens,
            String accession,
            String method,
            String stage,
            String finding,
            String status,
            String testedOn,
            String reportedOn,
            String state,
            String problems) {
        /** The problems one by one. */
        public List<String> each() {
            return problems == null ? List.of() : problems.lines().toList();
        }
    }

    @SuppressWarnings("unchecked")
    Optional<Head> find(UUID id) {
        return ((List<Head>) entities.createNativeQuery(SELECT + " where i.id = :id", Head.class)
                        .setParameter("id", id)
                        .getResultList())
                .stream().findFirst();
    }

    /** Newest first. */
    @SuppressWarnings("unchecked")
    List<Head> newest(int limit) {
        return entities.createNativeQuery(SELECT + " order by i.uploaded_at desc, i.id", Head.class)
                .setMaxResults(limit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<RowProblem> problems(UUID id, int limit) {
        return entities.createNativeQuery(PROBLEMS, RowProblem.class)
                .setParameter("id", id)
                .setMaxResults(limit)
                .getResultList();
    }

    /** Waits for whoever posts the same import, so that one file is posted once. */
    void lock(UUID id) {
        entities.createNativeQuery("select 1 from result_import where id = :id for update")
                .setParameter("id", id)
                .getSingleResult();
    }

    /** Messages whose number was posted before, by lines that say something new and are not left out. */
    @SuppressWarnings("unchecked")
    List<ImportView.RepeatedMessage> repeatedMessages(UUID id, List<Integer> leaveOut) {
        return entities.createNativeQuery(REPEATED, ImportView.RepeatedMessage.class)
                .setParameter("id", id)
                .setParameter("leaveOut", leaveOut.toArray(Integer[]::new))
                .getResultList();
    }

    /** Waits for whoever posts another file of the laboratory, so that what two files say is posted once. */
    void lockLaboratory(String laboratory) {
        entities.createNativeQuery("select 1 from laboratory where code = :code for no key update")
                .setParameter("code", laboratory)
                .getSingleResult();
    }

    /** The lines left out when it was posted, ascending, with commas. */
    String leftOut(UUID id) {
        return (String)
                entities.createNativeQuery("select array_to_string(left_out, ',') from result_import where id = :id")
                        .setParameter("id", id)
                        .getSingleResult();
    }

    /** Faulty rows first, then by line. */
    @SuppressWarnings("unchecked")
    List<PreviewRow> rows(UUID id, int limit) {
        return entities.createNativeQuery(ROWS, PreviewRow.class)
                .setParameter("id", id)
                .setMaxResults(limit)
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    List<Integer> faultyLines(UUID id) {
        return entities.createNativeQuery(FAULTY_LINES).setParameter("id", id).getResultList();
    }

    /** Those of the lines that the file does not have. */
    @SuppressWarnings("unchecked")
    List<Integer> notInFile(UUID id, List<Integer> lines) {
        return entities.createNativeQuery("""
                        select distinct l from unnest(cast(:lines as int[])) l
                         where not exists (select 1 from result_import_row r where r.import = :id and r.line = l) order by l
                        """)
                .setParameter("lines", lines.toArray(Integer[]::new))
                .setParameter("id", id)
                .getResultList();
    }

    /** Codes that the import's findings name, parents of pieces included: they arrived. */
    @SuppressWarnings("unchecked")
    List<String> codes(UUID id) {
        return entities.createNativeQuery("""
                        select distinct c from finding f join finding_specimen fs on fs.finding = f.id
                          join specimen s on s.code = fs.code, unnest(array[s.code, s.parent]) c
                         where f.import = :id and c is not null and f.reason is distinct from 'NOT_RECEIVED' order by 1
                        """).setParameter("id", id).getResultList();
    }

    @SuppressWarnings("unchecked")
    List<String> kits(UUID id) {
        return entities.createNativeQuery(KITS).setParameter("id", id).getResultList();
    }
}
