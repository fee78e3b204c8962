package org.dentary.running;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/** The built service in a process of its own, as {@code deploy/run} starts it. */
final class PackagedService implements AutoCloseable {
    private static final Duration UP_WITHIN = Duration.ofMinutes(3);
    /** A machine that also does other things takes several times the minute that the demo needs. */
    private static final Duration LOADED_WITHIN = Duration.ofMinutes(10);

    final int port;
    private final Path data;
    private final Path said;
    private final Path faults;
    private final Process process;
    private final HttpClient client = HttpClient.newHttpClient();

    private PackagedService(Path data, int port, Map<String, String> environment, List<String> arguments)
            throws IOException {
        this.data = data;
        this.port = port;
        this.said = Files.createTempFile("dentary", ".out");
        this.faults = Files.createTempFile("dentary", ".err");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-XX:TieredStopAtLevel=1",
                "-jar",
                Path.of("target", "quarkus-app", "quarkus-run.jar").toString()));
        command.addAll(arguments);
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectOutput(said.toFile()).redirectError(faults.toFile());
        builder.environment().keySet().removeIf(name -> name.startsWith("DENTARY_"));
        builder.environment().put("DENTARY_DATA", data.toString());
        builder.environment().put("DENTARY_PORT", Integer.toString(port));
        builder.environment().putAll(environment);
        this.process = builder.start();
    }

    /** Starts it, whatever comes of that. */
    static PackagedService begin(Path data, int port, Map<String, String> environment) throws IOException {
        return new PackagedService(data, port, environment, List.of());
    }

    /** Starts it and waits until it is ready. */
    static PackagedService start(Path data, Map<String, String> environment) throws Exception {
        return begin(data, freePort(), environment).ready(UP_WITHIN);
    }

    /** Starts it with the invented season and waits until that is loaded. */
    static PackagedService startDemo(Path data) throws Exception {
        return new PackagedService(data, freePort(), Map.of(), List.of("--demo")).ready(LOADED_WITHIN);
    }

    private PackagedService ready(Duration within) throws Exception {
        long end = System.nanoTime() + within.toNanos();
        while (System.nanoTime() < end) {
            if (!process.isAlive()) {
                throw new IllegalStateException("it stopped: " + faults() + said());
            }
            try {
                if (get("/q/health/ready", null).statusCode() == 200) {
                    return this;
                }
            } catch (IOException notYet) {
                // nobody listens yet
            }
            Thread.sleep(100);
        }
        close();
        throw new IllegalStateException("not ready in time: " + said());
    }

    HttpResponse<String> get(String path, String basic) throws Exception {
        return send(request(path, basic).GET());
    }

    HttpResponse<String> send(String method, String path, String basic, String type, String body) throws Exception {
        return send(request(path, basic)
                .header("Content-Type", type)
                .method(method, HttpRequest.BodyPublishers.ofString(body)));
    }

    /** Sends so many megabytes without saying beforehand how many. */
    CompletableFuture<HttpResponse<String>> sendMuch(String path, String basic, String type, int megabytes) {
        return client.sendAsync(
                request(path, basic)
                        .header("Content-Type", type)
                        .PUT(HttpRequest.BodyPublishers.ofByteArrays(Collections.nCopies(megabytes, new byte[1 << 20])))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    /** Signs in at the page as a proxy would pass it on that speaks TLS to the caller. */
    HttpResponse<String> signInThroughAProxy(String basic) throws Exception {
        String[] who = new String(java.util.Base64.getDecoder().decode(basic)).split(":", 2);
        return send(request("/sign-in", null)
                .header("X-Forwarded-Proto", "https")
                .header("X-Forwarded-Host", "deer.example.org")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(
                        "username=" + who[0] + "&password=" + URLEncoder.encode(who[1], StandardCharsets.UTF_8))));
    }

    private HttpRequest.Builder request(String path, String basic) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .timeout(Duration.ofMinutes(10));
        return basic == null ? request : request.header("Authorization", "Basic " + basic);
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    /** The first coordinator's sign-in as Basic wants it. */
    String firstSignIn() throws IOException {
        String password = Files.readString(data.resolve("first-sign-in/password.txt"))
                .lines()
                .filter(line -> !line.isBlank())
                .reduce((a, b) -> b)
                .orElseThrow()
                .strip();
        return java.util.Base64.getEncoder().encodeToString(("coordinator:" + password).getBytes());
    }

    /** Ends it as a power cut would. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** The most that it held of the machine's memory so far, as Linux counts it. */
    String mostMemory() throws IOException {
        return Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status")).stream()
                .filter(line -> line.startsWith("VmHWM:"))
                .map(line -> line.substring("VmHWM:".length()).strip())
                .findFirst()
                .orElseThrow();
    }

    /** Waits until it has ended by itself. */
    int exit() throws InterruptedException {
        if (!process.waitFor(UP_WITHIN.toSeconds(), TimeUnit.SECONDS)) {
            throw new IllegalStateException("it did not stop: " + said());
        }
        return process.exitValue();
    }

    String faults() {
        return read(faults);
    }

    String said() {
        return read(said);
    }

    static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws Exception {
        process.destroy();
        if (!process.waitFor(30, TimeUnit.SECONDS)) {
            kill();
        }
        Files.deleteIfExists(said);
        Files.deleteIfExists(faults);
    }
}
