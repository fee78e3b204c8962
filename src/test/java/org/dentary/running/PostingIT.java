package org.dentary.running;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.jboss.logging.Logger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Posting a large file in the built service: all or nothing when it is killed, and how long a hundred thousand take. */
class PostingIT {
    private static final Logger LOG = Logger.getLogger(PostingIT.class);
    private static final int AT_ONCE = 5_000;

    @TempDir(cleanup = CleanupMode.NEVER)
    Path data;

    /**
     * Killed while the findings are written, and while the lines are revised, with thousands of rows of work not yet
     * committed: each time nothing of it is there, and the file can be posted.
     */
    @Test
    void aKillInTheMiddleOfPostingLeavesNothingAndTheNextPostingLeavesAll() throws Exception {
        int rows = 12_000;
        try (DebianServer server = DebianServer.start()) {
            Map<String, String> environment = environment(server);
            String path = "/api/v1/result-imports/" + UUID.randomUUID();
            String basic;
            try (PackagedService first = PackagedService.start(data, environment)) {
                basic = first.firstSignIn();
                seed(server, rows);
                assertEquals(201, preview(first, path, basic, rows).statusCode());
                killWhileItWrites("finding", first, server, path, basic);
            }
            assertNothingIsPosted(server);
            for (String written : List.of("line", "finding_specimen", "line")) {
                try (PackagedService next = PackagedService.start(data, environment)) {
                    assertEquals(200, next.get(path, basic).statusCode());
                    killWhileItWrites(written, next, server, path, basic);
                }
                assertNothingIsPosted(server);
            }
            try (PackagedService last = PackagedService.start(data, environment)) {
                HttpResponse<String> posted = last.send("POST", path + "/posting", basic, "application/json", "{}");
                assertEquals(200, posted.statusCode(), posted.body());
            }
            assertAllIsPosted(server, rows);
        }
    }

    @Test
    @Tag("slow")
    void aHundredThousandRowsArePreviewedAndPostedInFewStatementsWithin512Megabytes() throws Exception {
        int rows = 100_000;
        try (DebianServer server = DebianServer.start();
                PackagedService service = PackagedService.start(data, environment(server))) {
            String basic = service.firstSignIn();
            seed(server, rows);
            server.execute("dentary", List.of("create extension pg_stat_statements"));
            String path = "/api/v1/result-imports/" + UUID.randomUUID();
            long begun = System.nanoTime();
            long before = statements(server);
            HttpResponse<String> preview = preview(service, path, basic, rows);
            assertEquals(201, preview.statusCode(), preview.body());
            long previewed = System.nanoTime();
            long ofPreview = statements(server) - before;
            HttpResponse<String> posted = service.send("POST", path + "/posting", basic, "application/json", "{}");
            long done = System.nanoTime();
            assertEquals(200, posted.statusCode(), posted.body());
            long ofPosting = statements(server) - before - ofPreview;
            assertAllIsPosted(server, rows);
            String said = rows + " rows: preview " + (previewed - begun) / 1_000_000 + " ms, " + ofPreview
                    + " statements; posting " + (done - previewed) / 1_000_000 + " ms, " + ofPosting
                    + " statements; " + service.mostMemory() + " at most in a process of 512 MB heap\n"
                    + server.ask("dentary", DEAREST);
            Files.writeString(Path.of("target", "posting-drill.txt"), said);
            LOG.info(said);
            // Rows go in by ten thousand and outcomes are derived by five thousand; none of it is a query per row.
            assertTrue(ofPreview < 150, said);
            assertTrue(ofPosting < 400, said);
        }
    }

    private static final String DEAREST = "select string_agg(round(total_exec_time) || ' ms, ' || calls || ' calls: '"
            + " || left(regexp_replace(query, '[[:space:]]+', ' ', 'g'), 110), chr(10) order by total_exec_time desc)"
            + " from (select * from pg_stat_statements order by total_exec_time desc limit 12) s";

    private static long statements(DebianServer server) throws Exception {
        return Long.parseLong(server.ask(
                "dentary",
                "select coalesce(sum(calls), 0) from pg_stat_statements s join pg_roles r on r.oid = s.userid"
                        + " where r.rolname = 'dentary_service' and query !~* '^(begin|commit|set|show)'"));
    }

    private static void assertNothingIsPosted(DebianServer server) throws Exception {
        assertEquals("0", server.ask("dentary", "select count(*) from finding"));
        assertEquals("PREVIEWED", server.ask("dentary", "select state from result_import"));
        assertEquals("0", server.ask("dentary", "select count(*) from result_import_row where state <> 'NEW'"));
        assertEquals(
                "0",
                server.ask("dentary", "select count(*) from line where outcome <> 'PENDING' or closed_at is not null"));
    }

    private static void assertAllIsPosted(DebianServer server, int rows) throws Exception {
        assertEquals("POSTED", server.ask("dentary", "select state from result_import"));
        assertEquals(String.valueOf(rows), server.ask("dentary", "select count(*) from finding"));
        assertEquals(
                String.valueOf(rows),
                server.ask(
                        "dentary", "select count(*) from line where closed_at is null and outcome = 'NOT_DETECTED'"));
    }

    /** Kills it when a transaction that has written holds the table and has not committed. */
    private static void killWhileItWrites(
            String table, PackagedService service, DebianServer server, String path, String basic) throws Exception {
        CompletableFuture<HttpResponse<String>> posting = CompletableFuture.supplyAsync(() -> {
            try {
                return service.send("POST", path + "/posting", basic, "application/json", "{}");
            } catch (Exception killed) {
                throw new CompletionException(killed);
            }
        });
        String inside = "select count(*) from pg_locks l join pg_stat_activity a on a.pid = l.pid where l.mode ="
                + " 'RowExclusiveLock' and a.backend_xid is not null and l.relation = '" + table + "'::regclass";
        while (server.ask("dentary", inside).equals("0")) {
            assertTrue(!posting.isDone(), "it was posted before it could be killed");
            Thread.sleep(2);
        }
        service.kill();
        assertThrows(CompletionException.class, posting::join, "it answered before it was killed");
        while (!server.ask("dentary", "select count(*) from pg_stat_activity where usename = 'dentary_service'")
                .equals("0")) {
            Thread.sleep(20);
        }
    }

    private static HttpResponse<String> preview(PackagedService service, String path, String basic, int rows)
            throws Exception {
        StringBuilder csv = new StringBuilder(
                "specimen_code,accession_number,laboratory_item,test_method,stage,finding,tested_on,reported_on\r\n");
        for (int i = 0; i < rows; i++) {
            csv.append(label(i))
                    .append(",D-1,")
                    .append(i)
                    .append(",DRILL,SCREENING,NOT_DETECTED,2025-11-20,2025-11-21\r\n");
        }
        return service.send("PUT", path + "?laboratory=DRILL_LAB", basic, "text/csv", csv.toString());
    }

    private static String label(int i) {
        return LabelCode.of(new KitStem(kit(i)), Part.NODE_LEFT).value();
    }

    private static String kit(int i) {
        return "K" + String.format("%07d", i);
    }

    /** Animals whose node is at the laboratory, as so many intakes and a submission would have left them. */
    private static void seed(DebianServer server, int rows) throws Exception {
        List<String> statements = new ArrayList<>(List.of(
                "insert into disease (code, name, position) values ('DRILL_FEVER', 'Drill fever', 90)",
                "insert into species (code, name, position) values ('DRILL_DEER', 'Drill deer', 90)",
                "insert into season (code, name, starts_on, ends_on, state) values"
                        + " ('D2025', 'Drill 2025', '2025-09-01', '2026-08-31', 'OPEN')",
                "insert into management_unit (code, name, position) values ('DRILL_UNIT', 'Drill unit', 90)",
                "insert into station (code, name, position, unit, time_zone) values"
                        + " ('DRILL_STATION', 'Drill station', 90, 'DRILL_UNIT', 'America/Chicago')",
                "insert into laboratory (code, name, position) values ('DRILL_LAB', 'Drill laboratory', 90)",
                "insert into test_method (code, name, position, disease) values ('DRILL', 'Drill test', 90, 'DRILL_FEVER')",
                "insert into kit_block (id, season, station, parts, kits, issued_by, issued_at) values ('"
                        + new UUID(0, 1) + "', 'D2025', 'DRILL_STATION', '{NODE_LEFT}', 1, 'drill', now())",
                "insert into submission (id, laboratory, state, dispatched_at, opened_by, opened_at) values ('"
                        + new UUID(0, 2) + "', 'DRILL_LAB', 'DISPATCHED', '2025-11-15', 'drill', '2025-11-15')",
                "create table drill (kit text, code text)"));
        for (int from = 0; from < rows; from += AT_ONCE) {
            StringBuilder values = new StringBuilder("insert into drill values ");
            for (int i = from; i < Math.min(rows, from + AT_ONCE); i++) {
                values.append(i == from ? "" : ",")
                        .append("('")
                        .append(kit(i))
                        .append("','")
                        .append(label(i))
                        .append("')");
            }
            statements.add(values.toString());
        }
        statements.addAll(List.of(
                "insert into kit (code, block, position) select kit, '" + new UUID(0, 1) + "', 1 from drill",
                "insert into label (code, part, kit_printed, kit_bound) select code, 'NODE_LEFT', kit, kit from drill",
                "insert into animal (kit, species, origin, sex, sex_evidence, died_on, unit, station, season,"
                        + " mortality_source, collection_route, clinical_signs, sampling_basis, jaw_status, recorded_by,"
                        + " recorded_at) select kit, 'DRILL_DEER', 'WILD', 'MALE', 'UNKNOWN', '2025-11-10', 'DRILL_UNIT',"
                        + " 'DRILL_STATION', 'D2025', 'HUNTER_HARVEST', 'STATION', 'NONE_SEEN', 'MANDATORY',"
                        + " 'NOT_EXAMINED', 'drill', now() from drill",
                "insert into line (kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed, unit,"
                        + " station, died_on, mortality_source, collection_route, clinical_signs, sampling_basis,"
                        + " has_specimen, derived_outcome, outcome, cause, opened_at) select kit, 'DRILL_FEVER', season,"
                        + " species, origin, sex, sex_evidence, 'UNKNOWN', false, unit, station, died_on, mortality_source,"
                        + " collection_route, clinical_signs, sampling_basis, true, 'PENDING', 'PENDING', 'INTAKE', now()"
                        + " from animal",
                "insert into specimen (code, tissue, side, condition, preservation, collected_at, collected_by, recorded_by,"
                        + " recorded_at) select code, 'MEDIAL_RETROPHARYNGEAL_NODE', 'LEFT', 'GOOD', 'FRESH_CHILLED',"
                        + " '2025-11-10', 'drill', 'drill', now() from drill",
                "insert into submission_specimen (submission, code, packed_at, packed_by, recorded_at) select '"
                        + new UUID(0, 2) + "', code, '2025-11-14', 'drill', now() from drill",
                "analyze"));
        server.execute("dentary", statements);
    }

    private static Map<String, String> environment(DebianServer server) throws Exception {
        server.execute(
                "postgres",
                Files.readAllLines(Path.of("docs", "running.md")).stream()
                        .map(String::strip)
                        .filter(line -> line.startsWith("create ") && line.endsWith(";"))
                        .toList());
        return Map.of(
                "DENTARY_DB_URL", server.url("dentary"),
                "DENTARY_DB_OWNER", "dentary_owner",
                "DENTARY_DB_OWNER_PASSWORD", "choose one",
                "DENTARY_DB_USER", "dentary_service",
                "DENTARY_DB_USER_PASSWORD", "choose another");
    }
}
