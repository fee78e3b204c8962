package org.dentary.result.imports;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import org.dentary.result.outcome.OutcomeService;
import org.hibernate.Session;

/**
 * Holds the rows of an import against what is recorded, one statement a rule whatever the number of rows. Rows with a
 * fault already told of in the same field are passed over.
 */
@ApplicationScoped
class ImportCheckQueries {
    /** Rules whose faults come from the file alone and stay true: kept when an import is checked again. */
    private static final String FORGET = """
            delete from result_import_problem p where p.import = :id and p.rule in
                ('SPECIMEN_UNKNOWN', 'METHOD_UNKNOWN', 'NOT_ON_ROUTE', 'ALREADY_FINAL', 'CONTRADICTS_POSTED',
                 'TESTED_BEFORE_COLLECTED', 'CORRECTS_UNKNOWN', 'ALREADY_CORRECTED', 'CORRECTS_OTHER_TISSUE', 'CORRECTED_TWICE',
                 'ITEM_ON_TWO_SPECIMENS',
                 'LABORATORY_UNKNOWN', 'TISSUE_DIFFERS', 'MESSAGE_SAID_OTHERWISE')
            """;

    private static final String FRESH =
            "update result_import_row set state = 'NEW' where import = :id and state = 'REPEAT'";

    /** A correction may name the accession of what it corrects: it becomes the finding's id where exactly one stands. */
    private static final String RESOLVE_CORRECTS = """
            update result_import_row r set corrects = x.id
              from (select r.line, min(f.id::text) as id
                      from result_import_row r join result_import i on i.id = r.import
                      join finding_specimen named on named.code = split_part(r.specimen_code, ' ', 1)
                      join finding f on f.id = named.finding and f.laboratory = i.laboratory and f.method = r.method
                       and (r.corrects is null or upper(f.accession) = upper(r.corrects))
                       and (r.corrects is not null or (f.accession = r.accession and f.stage = r.stage))
                     where r.import = :id and (r.corrects is not null or r.status = 'CORRECTED')
                       and (r.corrects is null or r.corrects !~ '^[0-9a-fA-F]{8}-[0-9a-fA-F-]{27}$')
                       and not exists (select 1 from finding c where c.corrects = f.id)
                       and f.id <> md5(r.import || ':' || r.line)::uuid
                       and (select string_agg(fs.code, ' ' order by fs.code) from finding_specimen fs where fs.finding = f.id)
                           = r.specimen_code
                     group by r.line having count(*) = 1) x
             where r.import = :id and r.line = x.line
            """;

    /** Said before, word for word: nothing to post and nothing wrong. */
    private static final String REPEATS = """
            update result_import_row r set state = 'REPEAT'
              from result_import i, finding_specimen named, finding f
             where r.import = :id and i.id = r.import and r.state = 'NEW'
               and named.code = split_part(r.specimen_code, ' ', 1) and f.id = named.finding
               and f.laboratory = i.laboratory and f.accession = r.accession
               and f.item is not distinct from r.item and f.method = r.method and f.stage = r.stage
               and f.finding = r.finding and f.status = r.status
               and f.tested_on::text is not distinct from r.tested_on and f.reported_on::text = r.reported_on
               and f.reason is not distinct from r.unsuitable_reason
               and f.run is not distinct from r.run
               and (select string_agg(fs.code, ' ' order by fs.code) from finding_specimen fs where fs.finding = f.id)
                   = r.specimen_code
            """;

    private static final String ROW_CODES = " from result_import_row r join result_import i on i.id = r.import,"
            + " unnest(string_to_array(r.specimen_code, ' ')) c"
            + " where r.import = :id and r.state = 'NEW'"
            + " and not exists (select 1 from result_import_problem p where p.import = r.import and p.line = r.line"
            + " and p.field = 'specimen_code')";

    private static final List<String> CHECKS = List.of(
            problem(
                    "r.line",
                    "specimen_code",
                    "SPECIMEN_UNKNOWN",
                    "'no specimen is recorded under ' || c || '; record it at its animal first, or check the code'",
                    ROW_CODES + " and not exists (select 1 from specimen s where s.code = c)"),
            problem(
                    "r.line",
                    "test_method",
                    "METHOD_UNKNOWN",
                    "'test method ''' || r.method || ''' is not set up; allowed: ' || (select string_agg(code, ', ' order by position) from test_method)",
                    " from result_import_row r where r.import = :id and r.state = 'NEW' and r.method is not null"
                            + " and not exists (select 1 from test_method m where m.code = r.method)"),
            problem(
                    "r.line",
                    "performing_laboratory",
                    "LABORATORY_UNKNOWN",
                    "'laboratory ''' || r.performing_laboratory || ''' is not set up; check it with the laboratory, set it up, or map its identifier (OBX-23) in the laboratory''s code map and send the file again under an id of its own; set up are: ' || (select string_agg(code, ', ' order by position) from laboratory)",
                    " from result_import_row r where r.import = :id and r.state = 'NEW' and r.performing_laboratory is not null"
                            + " and not exists (select 1 from laboratory l where l.code = r.performing_laboratory)"),
            problem(
                    "r.line",
                    "specimen_code",
                    "NOT_ON_ROUTE",
                    "c || ' was not sent to ' || i.laboratory || '; check tube and laboratory, or add it to the submission'",
                    ROW_CODES + " and exists (select 1 from specimen s where s.code = c)"
                            + " and not exists (select 1 from (values (c), ((select s.parent from specimen s where s.code = c)))"
                            + " v(code) join submission_specimen x on x.code = v.code join submission b on b.id = x.submission"
                            + " where b.laboratory = i.laboratory)"),
            problem(
                    "r.line",
                    "specimen_code",
                    "TISSUE_DIFFERS",
                    "'the message calls the tissue ' || r.tissue || ', but ' || c || ' is recorded as ' || s.tissue || '; check whether the tube is the one named, or what the laboratory''s code means'",
                    " from result_import_row r, unnest(string_to_array(r.specimen_code, ' ')) c join specimen s on s.code = c"
                            + " where r.import = :id and r.state = 'NEW' and r.tissue is not null and r.tissue <> s.tissue"),
            problem(
                    "r.line",
                    "finding",
                    "MESSAGE_SAID_OTHERWISE",
                    "'message ' || r.run || ' was posted before and says ' || p.finding || ' (' || p.status || ') of this tissue, method and stage; nothing of a repeated message is taken. A laboratory that corrects its word sends a message with a number of its own'",
                    " from result_import_row r join result_import i on i.id = r.import and i.format = 'HL7'"
                            + " join result_import_row p on p.run = r.run and p.specimen_code = r.specimen_code"
                            + " and p.method = r.method and p.stage = r.stage and p.state = 'POSTED' and p.import <> r.import"
                            + " join result_import q on q.id = p.import and q.format = 'HL7' and q.laboratory = i.laboratory"
                            + " where r.import = :id and r.state = 'NEW'"),
            problem(
                    "r.line",
                    "tested_on",
                    "TESTED_BEFORE_COLLECTED",
                    "'tested on ' || r.tested_on || ', but ' || c || ' was collected on ' || (s.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date || '; check the day, or whether the tube is the one named'",
                    " from result_import_row r, unnest(string_to_array(r.specimen_code, ' ')) c"
                            + " join specimen s on s.code = c join label l on l.code = c"
                            + " left join animal a on a.kit = l.kit_bound left join station t on t.code = a.station"
                            + " where r.import = :id and r.state = 'NEW' and r.tested_on ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$'"
                            + " and not exists (select 1 from result_import_problem p where p.import = r.import and p.line = r.line and p.field = 'tested_on')"
                            + " and r.tested_on < (s.collected_at at time zone coalesce(t.time_zone, 'UTC'))::date::text"),
            problem(
                    "r.line",
                    "corrects",
                    "CORRECTS_UNKNOWN",
                    "'what this line corrects is not found: ' || coalesce(r.corrects, 'a finding of the same accession, method and stage on this tissue') || '; give the finding''s id or its accession'",
                    " from result_import_row r where r.import = :id and r.state = 'NEW' and (r.corrects is not null or r.status = 'CORRECTED')"
                            + " and not exists (select 1 from finding f where f.id::text = r.corrects)"),
            problem(
                    "r.line",
                    "corrects",
                    "ALREADY_CORRECTED",
                    "'finding ' || r.corrects || ' was corrected before; correct the newest'",
                    " from result_import_row r join finding f on f.corrects::text = r.corrects where r.import = :id and r.state = 'NEW'"),
            problem(
                    "r.line",
                    "corrects",
                    "CORRECTS_OTHER_TISSUE",
                    "'finding ' || r.corrects || ' names ' || o.codes || ', the line ' || r.specimen_code || '; a correction names the same tissue. A swapped label is put right at the label'",
                    " from result_import_row r join finding f on f.id::text = r.corrects"
                            + " cross join lateral (select string_agg(fs.code, ' ' order by fs.code) as codes"
                            + " from finding_specimen fs where fs.finding = f.id) o"
                            + " where r.import = :id and r.state = 'NEW' and o.codes <> r.specimen_code"),
            problem(
                    "r.line",
                    "corrects",
                    "CORRECTED_TWICE",
                    "'line ' || o.line || ' corrects finding ' || r.corrects || ' too; leave one of them out'",
                    " from result_import_row r join (select corrects, min(line) as line from result_import_row"
                            + " where import = :id and state = 'NEW' and corrects is not null group by corrects) o"
                            + " on o.corrects = r.corrects and o.line < r.line"
                            + " where r.import = :id and r.state = 'NEW'"),
            problem(
                    "r.line",
                    "finding",
                    "CONTRADICTS_POSTED",
                    "'line says ' || r.finding || ', but ' || f.finding || ' (' || f.status || ', accession ' || f.accession || ') is posted for this tissue, method and stage; if the laboratory corrected it, say so in status and corrects'",
                    sameTest("f.finding <> r.finding")),
            problem(
                    "r.line",
                    "finding",
                    "ALREADY_FINAL",
                    "'a final ' || f.finding || ' of this method and stage is posted under accession ' || f.accession || '; leave the line out, or name the run if the test was made again'",
                    sameTest("f.finding = r.finding and r.run is not distinct from f.run")),
            problem(
                    "r.line",
                    "laboratory_item",
                    "ITEM_ON_TWO_SPECIMENS",
                    "'item ' || r.item || ' of accession ' || r.accession || ' is recorded on other tissue (' || array_to_string(array_remove(o.codes, r.specimen_code), ' or ') || '); check the laboratory''s list'",
                    // Grouped once, not joined line to line: one accession may have a hundred thousand items.
                    " from (with other as materialized (select accession, item, array_agg(distinct codes) as codes from ("
                            + "select f.accession, f.item, string_agg(fs.code, ' ' order by fs.code) as codes"
                            + " from (select distinct i.laboratory, x.accession from result_import i"
                            + " join result_import_row x on x.import = i.id where i.id = :id and x.item is not null) told"
                            + " join finding f on f.laboratory = told.laboratory and f.accession = told.accession"
                            + " join finding_specimen fs on fs.finding = f.id where f.item is not null group by f.id"
                            + " union all select accession, item, specimen_code from result_import_row"
                            + " where import = :id and item is not null and specimen_code is not null) said"
                            + " group by accession, item having count(distinct codes) > 1)"
                            + " select * from other) o"
                            + " join result_import_row r on r.import = :id and r.accession = o.accession and r.item = o.item"
                            + " where r.state = 'NEW'"));

    private static final String COUNT = """
            update result_import i set postable =
                   (select count(*) from result_import_row r where r.import = i.id and r.state = 'NEW'
                      and not exists (select 1 from result_import_problem p where p.import = r.import and p.line = r.line))
             where i.id = :id
            """;

    private final EntityManager entities;

    ImportCheckQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** Checks every row of the import anew, tells how many rules are behind, and counts what can be posted. */
    void check(UUID id, OutcomeService.Told told) {
        run(FORGET, id);
        run(FRESH, id);
        run(RESOLVE_CORRECTS, id);
        run(REPEATS, id);
        for (int i = 0; i < CHECKS.size(); i++) {
            told.of(i, CHECKS.size());
            run(CHECKS.get(i), id);
        }
        run(COUNT, id);
    }

    private void run(String sql, UUID id) {
        entities.unwrap(Session.class)
                .createNativeMutationQuery(sql)
                .setParameter("id", id)
                .executeUpdate();
    }

    private static String problem(String line, String field, String rule, String message, String from) {
        return "insert into result_import_problem (import, line, field, rule, message) select distinct :id, " + line
                + ", '" + field + "', '" + rule + "', " + message + from;
    }

    private static String sameTest(String condition) {
        return " from result_import_row r join result_import i on i.id = r.import"
                + " join lateral (select f.* from finding f join finding_specimen fs on fs.finding = f.id"
                + " where fs.code = any (string_to_array(r.specimen_code, ' ')) and f.laboratory = i.laboratory"
                + " and f.method = r.method and f.stage = r.stage and f.status in ('FINAL', 'CORRECTED')"
                + " and f.finding not in ('INVALID_RUN', 'NOT_TESTED')"
                + " and not exists (select 1 from finding c where c.corrects = f.id)) f on true"
                + " where r.import = :id and r.state = 'NEW' and r.corrects is null and r.status in ('FINAL', 'CORRECTED')"
                + " and r.finding not in ('INVALID_RUN', 'NOT_TESTED') and " + condition;
    }
}
