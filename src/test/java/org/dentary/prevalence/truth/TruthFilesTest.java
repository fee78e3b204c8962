package org.dentary.prevalence.truth;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.comparison.ClassFixture;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.Test;

/** What is taken away as a file says what the answer says. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class TruthFilesTest {
    @Inject
    TruthFixture truths;

    @Inject
    ClassFixture classes;

    @Test
    void theFileSaysWhatTheAnswerSays() {
        String season = truths.season(6, 151);
        String set = truths.stated("0.964", "0.927");
        JsonPath answer = TruthFixture.asked(season, set, "");
        String[] table = TruthFixture.csv("/api/v1/true-prevalence?season=" + season + "&performance=" + set)
                .split("\r\n");
        List<String> head = List.of(table[0].split(","));
        assertEquals(answer.getList("cells").size() + 1, table.length);
        for (int i = 1; i < table.length; i++) {
            String[] cells = table[i].split(",");
            for (String field : List.of("counted", "raw", "truePrevalence", "trueLower", "trueUpper", "prevalence")) {
                Object value = answer.get("cells[" + (i - 1) + "]." + field);
                String text = cells[head.indexOf(field)];
                if (value == null) {
                    assertEquals("", text, field);
                } else {
                    assertEquals(((Number) value).doubleValue(), Double.parseDouble(text), 0, field);
                }
            }
            assertEquals(set, cells[head.indexOf("performance")]);
        }
        ClassFixture.as("epidemiologist")
                .get("/api/v1/true-prevalence.svg?season=" + season + "&performance=" + set)
                .then()
                .statusCode(200)
                .contentType("image/svg+xml")
                .body(containsString("True prevalence 0.0 % (95 % interval 0.0 % to 1.2 %)"));
    }

    @Test
    void theWorkbookHasEveryFigureOfTheAnswerAndWhatItRestsOn() throws Exception {
        String season = truths.season(6, 151);
        truths.add(season, "YEARLING", "FEMALE", 9, 60);
        String set = truths.stated("0.964", "0.927");
        String cut = classes.cut(season, "Workbook");
        String more = "season=" + season + "&performance=" + set + "&cut=" + cut;
        String json =
                TruthFixture.ok("/api/v1/true-prevalence?" + more).extract().asString();
        JsonPath answer = TruthFixture.doubles(json);
        byte[] file = ClassFixture.as("epidemiologist")
                .get("/api/v1/true-prevalence.xlsx?" + more)
                .then()
                .statusCode(200)
                .header("Digest-SHA-256", equalTo(StoredAnswerService.digest(json)))
                .extract()
                .asByteArray();
        try (ReadableWorkbook book = new ReadableWorkbook(new ByteArrayInputStream(file))) {
            List<Row> rows = book.getFirstSheet().read();
            List<String> head = rows.get(0).stream().map(Cell::getText).toList();
            int cells = answer.getList("cells").size();
            assertEquals(cells + 2, rows.size(), "head, cells, all");
            for (int i = 0; i <= cells; i++) {
                String at = i == cells ? "total." : "cells[" + i + "].";
                Row row = rows.get(i + 1);
                for (String field : List.of(
                        "counted",
                        "detected",
                        "prevalence",
                        "lower",
                        "upper",
                        "raw",
                        "truePrevalence",
                        "trueLower",
                        "trueUpper",
                        "pending")) {
                    Object expected = answer.get(at + field);
                    var got = row.getCellAsNumber(head.indexOf(field));
                    if (expected == null) {
                        assertTrue(got.isEmpty(), at + field);
                    } else {
                        assertEquals(
                                ((Number) expected).doubleValue(),
                                got.orElseThrow().doubleValue(),
                                1e-15,
                                at + field);
                    }
                }
                assertEquals(answer.getString(at + "sentence"), row.getCellText(head.indexOf("sentence")));
            }
            String reading = book.getSheets().skip(2).findFirst().orElseThrow().read().stream()
                    .map(row -> row.getCellText(0) + ": " + row.getCellText(1))
                    .collect(Collectors.joining("\n"));
            assertTrue(reading.contains("Source: Nobody 2026, table 1; figures read there on Jan 2, 2026"), reading);
            answer.getList("warnings", String.class)
                    .forEach(text -> assertTrue(reading.contains("Mind: " + text), text));
            answer.getList("notes", String.class).forEach(text -> assertTrue(reading.contains("Note: " + text), text));
            answer.getList("cautions", String.class)
                    .forEach(text -> assertTrue(reading.contains("Caution: " + text), text));
            assertTrue(reading.contains(StoredAnswerService.digest(json)));
            assertEquals(
                    answer.getList("tested.tests").size() + 1,
                    book.getSheets().skip(1).findFirst().orElseThrow().read().size());
        }
    }

    @Test
    void theDocumentHasEveryRowSentenceNoteAndWhatMakesItAgain() throws Exception {
        String season = truths.season(6, 151);
        truths.add(season, "YEARLING", "FEMALE", 9, 60);
        String set = truths.stated("0.964", "0.927");
        String cut = classes.cut(season, "Document");
        String more = "season=" + season + "&performance=" + set + "&cut=" + cut;
        String json =
                TruthFixture.ok("/api/v1/true-prevalence?" + more).extract().asString();
        JsonPath answer = TruthFixture.doubles(json);
        byte[] pdf = ClassFixture.as("epidemiologist")
                .get("/api/v1/true-prevalence.pdf?" + more)
                .then()
                .statusCode(200)
                .contentType("application/pdf")
                .header("Digest-SHA-256", equalTo(StoredAnswerService.digest(json)))
                .extract()
                .asByteArray();
        Path file = Files.createDirectories(Path.of("target", "documents")).resolve("true-prevalence.pdf");
        Files.write(file, pdf);
        Process reader = new ProcessBuilder("pdftotext", "-layout", file.toString(), "-")
                .redirectErrorStream(true)
                .start();
        String flat = flat(new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        assertEquals(0, reader.waitFor());
        for (String row : List.of(
                "AdultMale15164.0 %1.8 % to 8.4 %0.0 %0.0 % to 1.2 %−3.7 %0",
                "YearlingFemale60915.0 %8.1 % to 26.1 %8.6 %")) {
            assertTrue(flat.contains(flat(row)), row);
        }
        assertTrue(flat.contains(flat("Chronic wasting disease in white-tailed deer, " + season)));
        for (String list : List.of("warnings", "notes", "cautions", "methods.source")) {
            answer.getList(list, String.class).forEach(text -> assertTrue(flat.contains(flat(text)), text));
        }
        assertTrue(flat.contains(flat("Adult, Male: " + answer.getString("cells[6].sentence"))));
        assertTrue(flat.contains(flat("All: " + answer.getString("total.sentence"))));
        assertTrue(flat.contains(flat("Source Nobody 2026, table 1; figures read there on Jan 2, 2026")));
        assertTrue(flat.contains(StoredAnswerService.digest(json)));
        int from = flat.indexOf("/api/v1/true-prevalence?");
        String printed = flat.substring(from, flat.indexOf("SHA-256oftheanswer", from));
        assertEquals(
                json, TruthFixture.ok(printed).extract().asString(), "the printed address answers with the same bytes");
    }

    /** Without what breaks lines and pages: blanks, and the footer that stands between two pages. */
    private static String flat(String text) {
        return text.replaceAll("(?m)^.*True prevalence P\\d+\\..*$", "").replaceAll("\\s+", "");
    }

    @Test
    void thePictureGoesOnWithItsFiguresInWords() throws Exception {
        byte[] png = ClassFixture.as("epidemiologist")
                .get("/api/v1/true-prevalence.png?by=sex&season=" + truths.season(23, 150) + "&performance="
                        + truths.stated("0.96", "0.89"))
                .then()
                .statusCode(200)
                .contentType("image/png")
                .header("Cache-Control", equalTo("private, no-store"))
                .extract()
                .asByteArray();
        assertEquals(
                1440, javax.imageio.ImageIO.read(new ByteArrayInputStream(png)).getWidth());
        assertTrue(new String(png, java.nio.charset.StandardCharsets.UTF_8)
                .contains("True prevalence 5.1 % (95 % interval 0.0 % to 12.8 %)"));
    }
}
