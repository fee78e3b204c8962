package org.dentary.prevalence.ageing;

import static org.dentary.prevalence.comparison.ClassFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.comparison.ClassFixture;
import org.junit.jupiter.api.Test;

/** The what-if on paper: every figure of the answer, the words, and what makes it again; read back by poppler. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class AgeingPdfTest {
    private static final double[][] PLAN = {{.985, .015, 0}, {.01, .92, .07}, {0, .05, .95}};

    @Inject
    LineFixture lines;

    @Inject
    ClassFixture classes;

    @Inject
    AgeingFixture ageing;

    @Test
    void theDocumentHoldsTheAnswersFiguresAndWordsAndTheAddressThatAsksAgain() throws Exception {
        String season = classes.season(AgeingFixture.HERE);
        lines.add(season, 12, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED"));
        String query = "season=" + season + "&matrix=" + ageing.stated(PLAN) + "&cut=" + classes.cut(season, "Paper");
        String json = as("epidemiologist").get("/api/v1/ageing-error?" + query).asString();
        JsonPath answer = JsonPath.from(json);
        byte[] pdf = as("auditor")
                .get("/api/v1/ageing-error.pdf?" + query)
                .then()
                .statusCode(200)
                .contentType("application/pdf")
                .header("Digest-SHA-256", equalTo(StoredAnswerService.digest(json)))
                .header(
                        "Content-Disposition",
                        equalTo("attachment; filename=\"ageing-error-what-if-" + season + ".pdf\""))
                .extract()
                .asByteArray();
        String text = text(pdf);
        String flat = flat(text);
        for (Map<String, Object> pattern : answer.<Map<String, Object>>getList("patterns")) {
            String sex = words(pattern.get("sex"));
            for (Map<String, Object> one : maps(pattern.get("classes"))) {
                Map<String, Object> read = map(one.get("read"));
                Map<String, Object> whatIf = map(one.get("whatIf"));
                String row = sex + words(one.get("ageClass")) + read.get("detected") + " of " + read.get("counted")
                        + percent(read) + tenth(whatIf.get("detected")) + " of " + tenth(whatIf.get("counted"));
                assertTrue(flat.contains(flat(row)), row + " is not in\n" + text);
            }
        }
        assertTrue(flat.contains(flat("Male Unknown age 0 of 12 0 % left as it is")), text);
        for (String list : List.of("sentences", "warnings", "assumptions", "notes", "cautions")) {
            answer.getList(list, String.class).forEach(told -> assertTrue(flat.contains(flat(told)), told));
        }
        assertTrue(flat.contains(flat("Chronic wasting disease by age class, " + season)), text);
        assertTrue(flat.contains(flat("Kind Stated, not measured")), text);
        assertTrue(flat.contains(flat("Both Yearling 1.0 % 92.0 % 7.0 % none given")), text);
        long pages = text.lines()
                .filter(line -> line.matches("What-if: ageing error, .* page \\d+ of \\d+"))
                .count();
        assertTrue(
                pages >= 2 && text.contains("page " + pages + " of " + pages), "each of " + pages + " says what it is");
        int from = flat.indexOf("/api/v1/ageing-error?");
        String printed = flat.substring(from, flat.indexOf("SHA-256oftheanswer", from));
        assertEquals(
                json, as("epidemiologist").get(printed).asString(), "the printed address answers with the same bytes");
    }

    @Test
    void whoMayNotReadReportsGetsNoneAndAMissingMatrixIsSaid() {
        String season = classes.season(AgeingFixture.HERE);
        as("sampler")
                .get("/api/v1/ageing-error.pdf?season=" + season + "&matrix=X")
                .then()
                .statusCode(403);
        as("epidemiologist")
                .get("/api/v1/ageing-error.pdf?season=" + season + "&matrix=X")
                .then()
                .statusCode(422);
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> map(Object told) {
        return (Map<String, Object>) told;
    }

    @SuppressWarnings("unchecked")
    private static List<Map<String, Object>> maps(Object told) {
        return (List<Map<String, Object>>) told;
    }

    private static String words(Object code) {
        String word = code.toString();
        return word.charAt(0) + word.substring(1).toLowerCase(java.util.Locale.ROOT);
    }

    private static String tenth(Object count) {
        return new BigDecimal(count.toString())
                .setScale(1, RoundingMode.HALF_UP)
                .toString();
    }

    private static String percent(Map<String, Object> read) {
        int counted = (Integer) read.get("counted");
        if (counted == 0) {
            return "not sampled";
        }
        int digits = counted < 30 ? 0 : counted < 1000 ? 1 : 2;
        return new BigDecimal((Integer) read.get("detected"))
                        .multiply(BigDecimal.valueOf(100))
                        .divide(new BigDecimal(counted), digits, RoundingMode.HALF_UP)
                + " %";
    }

    private static String flat(String text) {
        return text.replaceAll("(?m)^What-if: ageing error, .* page \\d+ of \\d+$", "")
                .replaceAll("\\s+", "");
    }

    private static String text(byte[] pdf) throws Exception {
        Path file = Files.createDirectories(Path.of("target", "documents")).resolve("ageing-error.pdf");
        Files.write(file, pdf);
        Process reader = new ProcessBuilder("pdftotext", "-layout", file.toString(), "-")
                .redirectErrorStream(true)
                .start();
        String text = new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, reader.waitFor(), text);
        return text.replace("\f", "\n");
    }
}
