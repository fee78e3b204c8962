package org.dentary.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs the two outside checkers, {@code deploy/verify-custody} and a Python script written from
 * {@code docs/custody-verification.md} alone, over exports that something befell.
 */
class CustodyVerificationTest {

    private static final Path PYTHON = Path.of("src/test/resources/ledger/check_custody.py");

    @TempDir
    static Path folder;

    private static OutsideCheck verifier;
    private static SigningKey ours;
    private static SigningKey other;
    private static Exported exported;
    private static Exported forged;

    private record Exported(List<String> lines, String proof) {}

    @BeforeAll
    static void exportAndCompile() throws IOException {
        ours = SigningKey.loadOrCreate(folder.resolve("ours.key"));
        other = SigningKey.loadOrCreate(folder.resolve("other.key"));
        Files.writeString(folder.resolve("ours.pem"), ours.publicKeyPem());
        exported = export(ours);
        forged = export(other);
        verifier = OutsideCheck.compiled();
    }

    /** Chains A (3 events), B (2), C (1) under checkpoint 1; nothing under 2; D (2) under 3; the proof is of D's second. */
    private static Exported export(SigningKey key) {
        List<LedgerEvent> first = new ArrayList<>();
        first.addAll(LedgerFixture.aChain("A", 3));
        first.addAll(LedgerFixture.aChain("B", 2));
        first.addAll(LedgerFixture.aChain("C", 1));
        List<LedgerEvent> last = LedgerFixture.aChain("D", 2);
        Checkpoint one = seal(null, first, key);
        Checkpoint two = seal(one, List.of(), key);
        Checkpoint three = seal(two, last, key);
        List<String> lines = new ArrayList<>();
        first.forEach(event -> lines.add(ExportLines.event(event)));
        lines.add(ExportLines.checkpoint(one, hashes(first)));
        lines.add(ExportLines.checkpoint(two, List.of()));
        last.forEach(event -> lines.add(ExportLines.event(event)));
        lines.add(ExportLines.checkpoint(three, hashes(last)));
        return new Exported(lines, ExportLines.proof(InclusionProof.of(last.get(1), 1, hashes(last), three)));
    }

    @TestFactory
    Stream<DynamicTest> namesWhatBefellTheFile() {
        return DynamicTest.stream(
                Vectors.each(Vectors.read("export.json")),
                vector -> vector.path("desc").asText(),
                vector -> {
                    List<String> arguments = prepare(vector);
                    OutsideCheck.Outcome outcome = verifier.run(arguments);
                    if (vector.path("expectError").isNull()) {
                        assertEquals(0, outcome.status(), outcome.output());
                        assertTrue(outcome.output().startsWith("As recorded: "), outcome.output());
                    } else {
                        assertEquals(1, outcome.status(), outcome.output());
                        assertNames(vector.path("expectError").asText(), arguments, outcome.output());
                    }
                });
    }

    @TestFactory
    Stream<DynamicTest> agreesWithACheckWrittenFromThePageAlone() {
        return DynamicTest.stream(
                Vectors.each(Vectors.read("export.json")),
                vector -> vector.path("desc").asText(),
                vector -> {
                    List<String> command = new ArrayList<>(List.of("python3", PYTHON.toString()));
                    List<String> arguments = prepare(vector);
                    if (arguments.get(0).equals("--key")) {
                        command.addAll(arguments.subList(2, arguments.size()));
                        command.add(arguments.get(1));
                    } else {
                        command.addAll(arguments);
                    }
                    OutsideCheck.Outcome outcome = run(command);
                    assertEquals(vector.path("expectError").isNull() ? 0 : 1, outcome.status(), outcome.output());
                    assertEquals(
                            !vector.path("expectError").isNull(),
                            outcome.output().startsWith("DIFFERENCE"),
                            outcome.output());
                });
    }

    @Test
    void runsAsACommandWithoutAnythingButJava() throws IOException, InterruptedException {
        Path file = write(exported.lines());
        OutsideCheck.Outcome whole = run(List.of("deploy/verify-custody", file.toString()));
        assertEquals(0, whole.status(), whole.output());
        assertTrue(whole.output().contains("8 events in 4 chains under 3 checkpoints"), whole.output());
        assertTrue(whole.output().contains(ours.fingerprint()), whole.output());
        assertTrue(whole.output().contains("does not show that the first entry was true"), whole.output());
        OutsideCheck.Outcome spoilt = run(List.of(
                "deploy/verify-custody",
                write(ExportSpoiler.spoil(exported.lines(), "FLIP_BIT", 2, ours, other))
                        .toString()));
        assertEquals(1, spoilt.status(), spoilt.output());
        assertTrue(spoilt.output().contains("NOT AS RECORDED: 1 difference\n"), spoilt.output());
    }

    /** What a file may hold that no service wrote; each ends in a difference that names line and fault, and exit 1. */
    @TestFactory
    Stream<DynamicTest> namesWhatAHostileFileHolds() {
        String whole = String.join("\n", exported.lines()) + "\n";
        String first = exported.lines().get(0);
        String deep = "[".repeat(200_000);
        return DynamicTest.stream(
                Stream.of(
                        hostile("nothing", "", "end of file: checkpoint: expected at least one, found none"),
                        hostile("only a line end", "\n", "line 1: readable line"),
                        hostile("arrays without end", whole + deep + "\n", "line 12: readable line"),
                        hostile("objects without end", "{\"event\":".repeat(100_000), "within one another"),
                        hostile(
                                "an event's text nested without end",
                                "{\"event\":\"" + deep + "\",\"hash\":\"" + "0".repeat(64) + "\"}",
                                "more than 100 arrays and objects within one another"),
                        hostile("a byte order mark", "\uFEFF" + whole, "line 1: readable line", "a byte order mark"),
                        hostile("a number of a million digits", "{\"event\":" + "9".repeat(1_000_000) + "}", "line 1"),
                        hostile("a number with an exponent", "{\"event\":1e999999999}", "no whole number"),
                        hostile(
                                "a name twice",
                                first.replaceFirst("\\{", "{\"hash\":\"x\","),
                                "the name hash repeated"),
                        hostile("half a character", "{\"event\":\"\\ud800\",\"hash\":\"x\"}", "a lone surrogate"),
                        hostile("a bare zero character", first.substring(0, 12) + "\0" + first.substring(12), "line 1"),
                        hostile("zeros alone", "\0".repeat(4096), "line 1: readable line"),
                        hostile(
                                "a last line cut short",
                                whole.substring(0, whole.length() - 40),
                                "line 11: readable line"),
                        hostile(
                                "what would write on the terminal",
                                "{\"event\":\"{}\",\"hash\":\"x\",\"\\u001b[2Jgone\":1}",
                                "also \\u001b[2Jgone"),
                        hostile("a line of 20 million characters", "x".repeat(20_000_000), "line 1: readable line")),
                one -> one.desc(),
                one -> {
                    Path file = folder.resolve(UUID.randomUUID() + ".jsonl");
                    Files.writeString(file, one.content());
                    OutsideCheck.Outcome outcome = verifier.run(List.of(file.toString()));
                    assertEquals(1, outcome.status(), outcome.output());
                    one.named().forEach(words -> assertTrue(outcome.output().contains(words), outcome.output()));
                    assertTrue(outcome.output().startsWith("DIFFERENCE "), outcome.output());
                    assertTrue(outcome.output().contains("NOT AS RECORDED: "), outcome.output());
                    assertTrue(outcome.output().length() < 20_000, "prints only the beginning of what is long");
                    assertTrue(
                            outcome.output().chars().noneMatch(unit -> unit < ' ' && unit != '\n'),
                            "no control character reaches the terminal");
                });
    }

    @Test
    void refusesBytesThatAreNoUtf8AndTakesLineEndsOfWindows() throws IOException {
        Path windows = folder.resolve("windows.jsonl");
        Files.writeString(windows, String.join("\r\n", exported.lines()) + "\r\n");
        assertEquals(0, verifier.run(List.of(windows.toString())).status(), "line ends are in no hash");
        byte[] bytes = exported.lines().get(0).getBytes(StandardCharsets.UTF_8);
        bytes[20] = (byte) 0xff;
        Path latin = folder.resolve("latin.jsonl");
        Files.write(latin, bytes);
        OutsideCheck.Outcome outcome = verifier.run(List.of(latin.toString()));
        assertEquals(1, outcome.status(), outcome.output());
        assertTrue(outcome.output().contains("bytes that are no UTF-8"), outcome.output());
    }

    private record Hostile(String desc, String content, List<String> named) {}

    private static Hostile hostile(String desc, String content, String... named) {
        return new Hostile(desc, content, List.of(named));
    }

    @Test
    void saysHowItIsUsedAndWhatItCannotRead() throws IOException {
        assertEquals(2, verifier.run(List.of()).status());
        assertTrue(verifier.run(List.of("--wrong", "x")).output().startsWith("usage: verify-custody"));
        OutsideCheck.Outcome missing =
                verifier.run(List.of(folder.resolve("missing").toString()));
        assertEquals(2, missing.status());
        assertTrue(missing.output().contains("missing"), missing.output());
        Path noKey = Files.writeString(folder.resolve("no-key.pem"), "x");
        assertEquals(
                2,
                verifier.run(List.of(
                                "--key",
                                noKey.toString(),
                                write(exported.lines()).toString()))
                        .status());
    }

    private static List<String> prepare(JsonNode vector) throws IOException {
        String what = vector.path("do").asText();
        List<String> lines = what.equals("FORGE") ? forged.lines() : exported.lines();
        Path file = write(ExportSpoiler.spoil(lines, what, vector.path("line").asInt(), ours, other));
        Files.write(file, ExportSpoiler.spoilBytes(Files.readAllBytes(file), what));
        List<String> arguments = new ArrayList<>();
        if (vector.has("key")) {
            arguments.addAll(List.of("--key", folder.resolve("ours.pem").toString()));
        }
        arguments.add(file.toString());
        if (vector.has("proof")) {
            Path proof = Files.createTempFile(folder, "proof", ".json");
            Files.writeString(
                    proof,
                    ExportSpoiler.spoilProof(
                            exported.proof(), vector.path("proof").asText()));
            arguments.add(proof.toString());
        }
        return arguments;
    }

    /** The expected words, with the id of the event that now stands in the named line. */
    private static void assertNames(String expected, List<String> arguments, String output) throws IOException {
        String words = expected;
        if (expected.contains("{id}")) {
            int line = Integer.parseInt(expected.replaceAll("line (\\d+),.*", "$1"));
            String text = Files.readAllLines(Path.of(arguments.get(0))).get(line - 1);
            String id = CanonicalJson.parse(
                            CanonicalJson.parse(text).path("event").asText())
                    .path("id")
                    .asText();
            words = expected.replace("{id}", id);
        }
        assertTrue(output.contains("DIFFERENCE ") && output.contains(words), words + "\n" + output);
    }

    private static OutsideCheck.Outcome run(List<String> command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new OutsideCheck.Outcome(process.waitFor(), output);
    }

    private static Path write(List<String> lines) throws IOException {
        return Files.write(Files.createTempFile(folder, "export", ".jsonl"), lines);
    }

    private static Checkpoint seal(Checkpoint before, List<LedgerEvent> events, SigningKey key) {
        return Checkpoint.following(before, UUID.randomUUID(), LedgerFixture.MORNING, hashes(events), key);
    }

    private static List<String> hashes(List<LedgerEvent> events) {
        return events.stream().map(LedgerEvent::hash).toList();
    }
}
