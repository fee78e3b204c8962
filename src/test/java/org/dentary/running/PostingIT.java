package org.dentary.running;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import org.dentary.codes.KitStem;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Posting a large file in the built service: all or nothing when it is killed, and how long a hundred thousand take. */
class PostingIT {
    private static final int AT_ONCE = 5_000;

    @TempDir(cleanup = CleanupMode.NEVER)
    Path data;

    @Test
    void aKillInTheMiddleOfPostingLeavesNothingAndTheNextPostingLeavesAll() throws Exception {
        int rows = 5_000;
        try (DebianServer server = DebianServer.start()) {
            Map<String, String> environment = environment(server);
            String path = "/api/v1/result-imports/" + UUID.randomUUID();
            String basic;
            try (PackagedService first = PackagedService.start(data, environment)) {
                basic = first.firstSignIn();
                seed(server, rows);
                assertEquals(201, preview(first, path, basic, rows).statusCode());
                CompletableFuture<Void> posting = CompletableFuture.runAsync(() -> {
                    try {
                        first.send("POST", path + "/posting", basic, "application/json", "{}");
                    } catch (Exception killed) {
                        // that is what the test is about
                    }
                });
                while (!server.ask("dentary", INSIDE).equals("1")) {
                    assertTrue(!posting.isDone(), "it was posted before it could be killed");
                    Thread.sleep(5);
                }
                first.kill();
                posting.join();
            }
            assertEquals("0", server.ask("dentary", "select count(*) from finding"));
            assertEquals("PREVIEWED", server.ask("dentary", "select state from result_import"));
            assertEquals(
                    "0",
                    server.ask(
                            "dentary",
                            "select count(*) from line where outcome <> 'PENDING' or closed_at is not null"));
            try (PackagedService second = PackagedService.start(data, environment)) {
                assertEquals(
                        200,
                        second.send("POST", path + "/posting", basic, "application/json", "{}")
                                .statusCode());
            }
            assertEquals(String.valueOf(rows), server.ask("dentary", "select count(*) from finding"));
            assertEquals(
                    String.valueOf(rows),
                    server.ask(
                            "dentary",
                            "select count(*) from line where closed_at is null and outcome = 'NOT_DETECTED'"));
        }
    }

    @Test
    @Tag("slow")
    void aHundredThousandRowsArePreviewedAndPostedInOneGoWithin512Megabytes() throws Exception {
        int rows = 100_000;
        try (DebianServer server = DebianServer.start();
                PackagedService service = PackagedService.start(data, environment(server))) {
            String basic = service.firstSignIn();
            seed(server, rows);
            String path = "/api/v1/result-imports/" + UUID.randomUUID();
            long begun = System.nanoTime();
            assertEquals(201, preview(service, path, basic, rows).statusCode());
            long previewed = System.nanoTime();
            HttpResponse<String> posted = service.send("POST", path + "/posting", basic, "application/json", "{}");
            long done = System.nanoTime();
            assertEquals(200, posted.statusCode(), posted.body());
            assertEquals(
                    String.valueOf(rows),
                    server.ask(
                            "dentary",
                            "select count(*) from line where closed_at is null and outcome = 'NOT_DETECTED'"));
            Files.writeString(
                    Path.of("target", "posting-drill.txt"),
                    rows + " rows: preview " + (previewed - begun) / 1_000_000 + " ms, posting "
                            + (done - previewed) / 1_000_000 + " ms\n");
            assertTrue(done - begun < 240_000_000_000L, "preview and posting within four minutes");
        }
    }

    /** Findings are being written in a transaction that is not committed. */
    private static final String INSIDE = "select least(1, count(*)) from pg_locks where mode = 'RowExclusiveLock'"
            + " and relation = (select oid from pg_class where relname = 'finding')";

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
