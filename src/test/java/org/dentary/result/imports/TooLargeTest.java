package org.dentary.result.imports;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is sent goes no further than the limit, with or without an announced length, and is told so in words. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class TooLargeTest {
    private static final int MEGABYTE = 1024 * 1024;
    private static final String CHUNKED = "Transfer-Encoding: chunked";
    private static final String ANNOUNCED = "Content-Length: " + 200L * MEGABYTE;

    @Inject
    SeasonFixture season;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void twoHundredMegabytesAreRefusedWithoutBeingKept() throws IOException {
        for (String length : new String[] {CHUNKED, ANNOUNCED}) {
            UUID id = UUID.randomUUID();
            String path = "/api/v1/result-imports/" + id + "?laboratory=T_LAB";
            for (boolean patient : new boolean[] {false, true}) {
                problem(sent("PUT " + path, "text/csv", "", length, "", patient), length + ", patient: " + patient);
            }
            as("liaison").get("/api/v1/result-imports/" + id).then().statusCode(404);
        }
    }

    @Test
    void aBodyOfJsonWithoutALengthIsToldTheSame() throws IOException {
        String path = "/api/v1/findings/" + UUID.randomUUID();
        problem(sent("PUT " + path, "application/json", "", CHUNKED, "{\"accession\":", false, " "), path);
        String answer = sent("PUT " + path, "application/json", "", CHUNKED, "{\"accession\":\"", false);
        assertTrue(answer.startsWith("HTTP/1.1 413") && answer.contains("FIELD_TOO_LARGE"), answer);
    }

    @Test
    void aPageIsToldInAPage() throws IOException {
        String answer = sent(
                "POST /results/imports",
                "multipart/form-data; boundary=part",
                "Accept: text/html\r\n",
                CHUNKED,
                "--part\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n"
                        + "Content-Type: text/csv\r\n\r\n",
                false);
        assertTrue(answer.startsWith("HTTP/1.1 413"), answer);
        assertTrue(answer.contains("text/html") && answer.contains("larger than 64 MB"), answer);
    }

    @Test
    void oneFieldThatIsTooLongIsNotTakenForTheWhole() throws IOException {
        String answer = sent(
                "POST /results/imports",
                "multipart/form-data; boundary=part",
                "Accept: text/html\r\n",
                "Content-Length: " + 2L * MEGABYTE,
                "--part\r\nContent-Disposition: form-data; name=\"laboratory\"\r\n\r\n",
                false);
        assertTrue(answer.startsWith("HTTP/1.1 413"), answer);
        assertFalse(answer.contains("64 MB"), answer);
        assertTrue(answer.contains("A field of what was sent is longer"), answer);
    }

    private static void problem(String answer, String what) {
        assertTrue(answer.startsWith("HTTP/1.1 413"), what + ": " + answer);
        assertTrue(
                answer.contains("application/problem+json")
                        && answer.contains("TOO_LARGE")
                        && answer.contains("larger than 64 MB"),
                what + ": " + answer);
    }

    /**
     * Sends up to 200 MB.
     *
     * @param patient whether all is sent before anything is read, as some programs do
     */
    private static String sent(String what, String type, String heads, String length, String begin, boolean patient)
            throws IOException {
        return sent(what, type, heads, length, begin, patient, "x");
    }

    private static String sent(
            String what, String type, String heads, String length, String begin, boolean patient, String filler)
            throws IOException {
        try (Socket socket = new Socket("127.0.0.1", RestAssured.port)) {
            socket.setSoTimeout(60_000);
            OutputStream out = socket.getOutputStream();
            out.write(bytes(what + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: " + type + "\r\n" + heads
                    + "Authorization: Basic "
                    + Base64.getEncoder().encodeToString(bytes("liaison:" + SeasonFixture.PASSWORD)) + "\r\n" + length
                    + "\r\n\r\n"));
            boolean chunked = length.equals(CHUNKED);
            try {
                part(out, bytes(begin), chunked);
                byte[] some = new byte[MEGABYTE];
                Arrays.fill(some, (byte) filler.charAt(0));
                int sent = 0;
                while (sent < 200 && (patient || socket.getInputStream().available() == 0)) {
                    part(out, some, chunked);
                    sent++;
                }
                if (chunked && sent == 200) {
                    out.write(bytes("0\r\n\r\n"));
                }
            } catch (SocketException closed) {
                assertFalse(patient, "it hung up on one who had not read yet");
            }
            return answer(socket);
        }
    }

    private static void part(OutputStream out, byte[] some, boolean chunked) throws IOException {
        if (some.length == 0) {
            return;
        }
        if (chunked) {
            out.write(bytes(Integer.toHexString(some.length) + "\r\n"));
        }
        out.write(some);
        if (chunked) {
            out.write(bytes("\r\n"));
        }
        out.flush();
    }

    private static String answer(Socket socket) throws IOException {
        byte[] answer = new byte[64 * 1024];
        int read = 0;
        for (int n;
                read < answer.length && (n = socket.getInputStream().read(answer, read, answer.length - read)) > 0; ) {
            read += n;
            String text = new String(answer, 0, read, StandardCharsets.UTF_8).stripTrailing();
            if (text.contains("\r\n\r\n") && (text.endsWith("}") || text.endsWith("</html>"))) {
                break;
            }
        }
        return new String(answer, 0, read, StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
