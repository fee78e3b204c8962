package org.dentary.running;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.ServerSocket;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** The built service as an operator meets it: its own database, a server's, a kill, and faults at start. */
class RunningIT {
    @TempDir(cleanup = CleanupMode.NEVER)
    Path data;

    @Test
    void afterAKillItStartsAgainAndHasWhatItAcknowledged() throws Exception {
        String basic;
        try (PackagedService first = PackagedService.start(data, Map.of())) {
            basic = first.firstSignIn();
            addDisease(first, basic, "FERN_FEVER");
            first.kill();
        }
        try (PackagedService second = PackagedService.start(data, Map.of())) {
            assertTrue(diseases(second, basic).contains("FERN_FEVER"), "acknowledged before the kill");
            addDisease(second, basic, "TARN_FEVER");
        }
    }

    /** Six times 200 MB would be more than twice its memory, and six times the 64 MB that a file may have most of it. */
    @Test
    void sixFilesOf200MegabytesAtOnceAreRefusedWithoutBeingKept() throws Exception {
        try (PackagedService service = PackagedService.start(data, Map.of())) {
            String basic = service.firstSignIn();
            List<CompletableFuture<HttpResponse<String>>> sent = IntStream.range(0, 6)
                    .mapToObj(i -> service.sendMuch(
                            "/api/v1/result-imports/" + UUID.randomUUID() + "?laboratory=NONE", basic, "text/csv", 200))
                    .toList();
            for (CompletableFuture<HttpResponse<String>> one : sent) {
                assertEquals(413, one.get().statusCode());
            }
            assertTrue(!service.said().contains("OutOfMemoryError"), service.said());
            assertEquals(200, service.get("/api/v1/diseases", basic).statusCode());
        }
    }

    @Test
    void believesTheProxyThatIsNamedAndNobodyElse() throws Exception {
        try (PackagedService alone = PackagedService.start(data, Map.of())) {
            HttpResponse<String> signedIn = alone.signInThroughAProxy(alone.firstSignIn());
            assertEquals(303, signedIn.statusCode());
            assertTrue(location(signedIn).startsWith("http://127.0.0.1:"), location(signedIn));
            assertTrue(!cookie(signedIn).contains("Secure"), cookie(signedIn));
        }
        try (PackagedService behind = PackagedService.start(data, Map.of("DENTARY_PROXY", "127.0.0.1"))) {
            HttpResponse<String> signedIn = behind.signInThroughAProxy(behind.firstSignIn());
            assertEquals("https://deer.example.org/", location(signedIn));
            assertTrue(cookie(signedIn).contains("Secure"), cookie(signedIn));
        }
        assertOneLine(
                PackagedService.begin(data, PackagedService.freePort(), Map.of("DENTARY_PROXY", "the proxy")),
                "DENTARY_PROXY is 'the proxy'",
                "127.0.0.1");
    }

    private static String location(HttpResponse<String> answer) {
        return answer.headers().firstValue("Location").orElseThrow();
    }

    private static String cookie(HttpResponse<String> answer) {
        return answer.headers().firstValue("Set-Cookie").orElseThrow();
    }

    /** Statements as {@code docs/running.md} gives them. */
    @Test
    void servesFromDebiansServerWithTwoRoles() throws Exception {
        try (DebianServer server = DebianServer.start()) {
            server.execute("postgres", statementsOfTheGuide());
            Map<String, String> environment = Map.of(
                    "DENTARY_DB_URL", server.url("dentary"),
                    "DENTARY_DB_OWNER", "dentary_owner",
                    "DENTARY_DB_OWNER_PASSWORD", "choose one",
                    "DENTARY_DB_USER", "dentary_service",
                    "DENTARY_DB_USER_PASSWORD", "choose another");
            String basic;
            try (PackagedService service = PackagedService.start(data, environment)) {
                basic = service.firstSignIn();
                addDisease(service, basic, "FERN_FEVER");
            }
            try (PackagedService again = PackagedService.start(data, environment)) {
                assertTrue(diseases(again, basic).contains("FERN_FEVER"));
            }
            assertEquals("1", server.ask("dentary", "select count(*) from disease where code = 'FERN_FEVER'"));
            assertEquals(
                    "false",
                    server.ask(
                            "dentary", "select has_table_privilege('dentary_service', 'ledger_event', 'delete')::text"),
                    "the service's role may take nothing out of the ledger");
            assertTrue(!Files.exists(data.resolve("postgresql")), "no database of its own beside the server's");

            PackagedService wrong = PackagedService.begin(
                    data, PackagedService.freePort(), with(environment, "DENTARY_DB_USER_PASSWORD", "forgotten"));
            assertOneLine(wrong, "cannot be reached as 'dentary_service'", "DENTARY_DB_URL");
        }
    }

    @Test
    void aTakenPortAFolderThatCannotBeWrittenAndAWrongAddressEndInOneLine() throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
            assertOneLine(
                    PackagedService.begin(data, taken.getLocalPort(), Map.of()),
                    "Port " + taken.getLocalPort(),
                    "DENTARY_PORT");
        }
        Path file = Files.createFile(data.resolve("a-file"));
        assertOneLine(
                PackagedService.begin(file.resolve("data"), PackagedService.freePort(), Map.of()),
                "cannot be written",
                "name a folder");
        assertOneLine(
                PackagedService.begin(
                        data,
                        PackagedService.freePort(),
                        Map.of(
                                "DENTARY_DB_URL",
                                "jdbc:postgresql://127.0.0.1:" + PackagedService.freePort() + "/dentary",
                                "DENTARY_DB_OWNER",
                                "a",
                                "DENTARY_DB_USER",
                                "b")),
                "cannot be reached as 'a'",
                "DENTARY_DB_URL");
        assertOneLine(
                PackagedService.begin(data, PackagedService.freePort(), Map.of("DENTARY_DB_URL", "postgres://here")),
                "DENTARY_DB_URL is 'postgres://here'",
                "jdbc:postgresql://host:port/database");
    }

    private static void assertOneLine(PackagedService service, String what, String whatToDo) throws Exception {
        try (service) {
            assertEquals(1, service.exit(), service.said());
            List<String> lines = service.faults().lines().toList();
            assertEquals(1, lines.size(), service.faults());
            assertTrue(lines.get(0).startsWith("dentary: "), lines.get(0));
            assertTrue(lines.get(0).contains(what) && lines.get(0).contains(whatToDo), lines.get(0));
        }
    }

    private static List<String> statementsOfTheGuide() throws Exception {
        return Files.readAllLines(Path.of("docs", "running.md")).stream()
                .map(String::strip)
                .filter(line -> line.startsWith("create ") && line.endsWith(";"))
                .toList();
    }

    private static Map<String, String> with(Map<String, String> environment, String name, String value) {
        Map<String, String> changed = new java.util.HashMap<>(environment);
        changed.put(name, value);
        return changed;
    }

    private static void addDisease(PackagedService service, String basic, String code) throws Exception {
        String path = "/api/v1/set-up-imports/" + UUID.randomUUID();
        HttpResponse<String> preview = service.send(
                "PUT", path + "?list=diseases", basic, "text/csv", "code,name\n" + code + "," + code + "\n");
        assertEquals(201, preview.statusCode(), preview.body());
        HttpResponse<String> posted = service.send("POST", path + "/posting", basic, "application/json", "{}");
        assertEquals(200, posted.statusCode(), posted.body());
    }

    private static String diseases(PackagedService service, String basic) throws Exception {
        HttpResponse<String> list = service.get("/api/v1/diseases", basic);
        assertEquals(200, list.statusCode(), list.body());
        return list.body();
    }
}
