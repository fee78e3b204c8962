package org.dentary.prevalence.document;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.junit.jupiter.api.Test;

/** The document against the JSON of the same question: read back by poppler and by a workbook reader. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PrevalenceDocumentsResourceTest {
    private static final Path FOLDER = Path.of("target", "screenshots");
    private static final Pattern PERCENT = Pattern.compile("\\d+(\\.\\d+)? ?%");

    @Inject
    LineFixture lines;

    private static RequestSpecification as(String username) {
        return given().auth().preemptive().basic(username, SeasonFixture.PASSWORD);
    }

    private String season() {
        String season = lines.season();
        lines.add(season, 81, ALine.of("ADULT", "MALE", "DETECTED"));
        lines.add(season, 182, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.add(season, 148, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        lines.add(season, 3, ALine.of("YEARLING", "FEMALE", "DETECTED"));
        lines.add(season, 20, ALine.of("YEARLING", "FEMALE", "NOT_DETECTED"));
        lines.add(season, 4, ALine.of("FAWN", "MALE", "NOT_DETECTED"));
        lines.add(season, 61, ALine.of("FAWN", "FEMALE", "PENDING"));
        lines.add(season, 7, ALine.of("ADULT", "MALE", "UNSUITABLE"));
        lines.add(season, 5, ALine.of("ADULT", "MALE", "NOT_DETECTED").from("VEHICLE"));
        lines.footnote(lines.add(season, 9, ALine.of("ADULT", "FEMALE", "NOT_DETECTED")), "POOL", false, "READ", "");
        lines.footnote(
                lines.add(season, 2, ALine.of("ADULT", "FEMALE", "DETECTED")), "SCREENING_ALONE", false, "READ", "");
        lines.footnote(
                lines.add(season, 30, ALine.of("UNKNOWN", "FEMALE", "NOT_DETECTED")),
                "",
                false,
                "NOT_EXAMINED",
                "Head not brought");
        lines.footnote(lines.add(season, 6, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED")), "", true, "READ", "");
        return season;
    }

    private static String cut(String season) {
        String id = UUID.randomUUID().toString();
        as("epidemiologist")
                .contentType("application/json")
                .body(Map.of("season", season, "name", "First of December"))
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(201);
        return id;
    }

    @Test
    void everyNumberOfThePdfIsTheJsons() throws Exception {
        String season = season();
        String question = "season=" + season + "&cut=" + cut(season);
        Response json = as("epidemiologist").get("/api/v1/prevalence?" + question);
        Response pdf = as("epidemiologist").get("/api/v1/prevalence.pdf?" + question);
        pdf.then().statusCode(200).contentType("application/pdf").header("Cache-Control", "private, no-store");
        String digest = json.header("Digest-SHA-256");
        assertEquals(digest, pdf.header("Digest-SHA-256"));
        JsonPath report = json.jsonPath();
        String text = text(pdf.asByteArray(), "prevalence-report");
        // A sentence may run on over the foot of a page.
        String flat = flat(text.replaceAll("(?m)^\\f?Prevalence \\S+ .* page \\d+ of \\d+$", ""));

        List<Map<String, Object>> cells = new ArrayList<>(report.getList("cells"));
        cells.add(report.getMap("total"));
        TreeSet<String> percents = new TreeSet<>();
        for (Map<String, Object> cell : cells) {
            String row = row(cell, percents);
            assertTrue(flat.contains(row), row + " is not in\n" + flat);
        }
        for (Map<String, Object> step : report.<Map<String, Object>>getList("takenToCounted")) {
            int animals = (Integer) step.get("animals");
            assertTrue(
                    Pattern.compile("(?m) " + animals + "$").matcher(text).find()
                            || Pattern.compile("(?m)\\b" + animals + "\\b")
                                    .matcher(flat)
                                    .find(),
                    step.toString());
        }
        for (String list :
                List.of("notes", "warnings", "cautions", "footnotes.text", "methods.what", "methods.source")) {
            for (String sentence : report.<String>getList(list)) {
                assertTrue(flat.contains(flat(sentence)), sentence + " is not in\n" + flat);
                percents(sentence, percents);
            }
        }
        TreeSet<String> printed = new TreeSet<>();
        // The pictures' own tables are held against their CSV in PdfNumbersTest.
        percents(
                text.substring(0, text.indexOf("\nManagement units by"))
                        + text.substring(text.indexOf("\nHow to read it")),
                printed);
        printed.removeAll(percents);
        assertEquals(new TreeSet<>(), printed, "shares in the document that no figure of the JSON gives");
        assertTrue(flat.contains(flat(digest)), "the digest is printed");
        assertTrue(text.contains("page 1 of"), text);
        assertTrue(flat.contains(flat("First of December")), flat);
        assertTrue(flat.contains(flat("9 counted animals: tissue was tested only together")), flat);
        assertTrue(flat.contains(flat("2 counted animals: detected by screening alone")), flat);
        assertTrue(flat.contains(flat("Head not brought")), flat);
    }

    /** The row of a cell as the page rounds: no decimal below 30 counted, one below 1,000, else two. */
    private static String row(Map<String, Object> cell, TreeSet<String> percents) {
        int counted = (Integer) cell.get("counted");
        int pending = (Integer) cell.get("pending");
        StringBuilder row = new StringBuilder().append(counted).append(cell.get("detected"));
        if (counted == 0) {
            row.append(pending == 0 ? "notsampled" : "noresultyet");
        } else {
            for (String figure : List.of("prevalence", "lower", "upper")) {
                String percent = percent(cell.get(figure), counted);
                percents.add(percent.replaceAll("[a-z]", ""));
                row.append(figure.equals("upper") ? "to" : "").append(percent);
            }
        }
        row.append(pending);
        if (pending > 0) {
            String percent = percent(cell.get("pendingShare"), counted + pending);
            percents.add(percent.replaceAll("[a-z]", ""));
            row.append(percent);
        }
        return row.toString();
    }

    /** What is neither none nor all is never printed as such. */
    private static String percent(Object share, int n) {
        int digits = n < 30 ? 0 : n < 1000 ? 1 : 2;
        BigDecimal exact = new BigDecimal(share.toString()).movePointRight(2);
        BigDecimal rounded = exact.setScale(digits, RoundingMode.HALF_UP);
        BigDecimal last = BigDecimal.ONE.movePointLeft(digits);
        BigDecimal all = new BigDecimal(100).setScale(digits);
        if (rounded.signum() == 0 && exact.signum() > 0) {
            return "under" + last.toPlainString() + "%";
        }
        return rounded.equals(all) && exact.compareTo(all) < 0
                ? "over" + all.subtract(last).toPlainString() + "%"
                : rounded + "%";
    }

    private static void percents(String text, TreeSet<String> into) {
        Matcher matcher = PERCENT.matcher(text.replaceAll("\\s+", " "));
        while (matcher.find()) {
            into.add(matcher.group().replace(" ", ""));
        }
    }

    /** Without blanks, as a table's cells and broken lines have none that can be relied on. */
    private static String flat(String text) {
        return text.replaceAll("\\s+", "");
    }

    private static String text(byte[] pdf, String name) throws Exception {
        Files.createDirectories(FOLDER);
        Path file = FOLDER.resolve(name + ".pdf");
        Files.write(file, pdf);
        run(
                "pdftoppm",
                "-r",
                "80",
                "-png",
                file.toString(),
                FOLDER.resolve(name).toString());
        return run("pdftotext", "-layout", file.toString(), "-").replace('\f', '\n');
    }

    private static String run(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), out);
        return out;
    }

    @Test
    void theAddressOnThePdfAsksTheSameAgain() throws Exception {
        String season = season();
        String question = "season=" + season + "&by=sex&unit=" + SeasonFixture.UNIT + "&cut=" + cut(season);
        Response json = as("epidemiologist").get("/api/v1/prevalence?" + question);
        String text = text(
                as("epidemiologist").get("/api/v1/prevalence.pdf?" + question).asByteArray(), "prevalence-again");
        String flat = flat(text);
        int from = flat.indexOf("http");
        String address = flat.substring(from, flat.indexOf("SHA-256oftheanswer"));
        Response again = as("epidemiologist")
                .urlEncodingEnabled(false)
                .get(URI.create(address).getRawPath() + "?"
                        + URI.create(address).getRawQuery());
        assertEquals(json.asString(), again.asString());
        assertEquals(json.header("Digest-SHA-256"), again.header("Digest-SHA-256"));
    }

    @Test
    void theWorkbookHoldsTheJsonsFiguresInFull() throws IOException {
        String season = season();
        String question = "season=" + season + "&cut=" + cut(season);
        JsonPath report = as("epidemiologist")
                .get("/api/v1/prevalence?" + question)
                .jsonPath(io.restassured.path.json.config.JsonPathConfig.jsonPathConfig()
                        .numberReturnType(io.restassured.path.json.config.JsonPathConfig.NumberReturnType.BIG_DECIMAL));
        byte[] xlsx = as("epidemiologist")
                .accept(PrevalenceDocumentsResource.XLSX)
                .get("/api/v1/prevalence?" + question)
                .then()
                .statusCode(200)
                .contentType(PrevalenceDocumentsResource.XLSX)
                .extract()
                .asByteArray();
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(xlsx))) {
            List<Row> rows = workbook.getFirstSheet().read();
            List<String> head = rows.get(0).stream().map(Cell::getText).toList();
            assertEquals(
                    List.of(
                            "ageClass",
                            "sex",
                            "counted",
                            "detected",
                            "prevalence",
                            "lower",
                            "upper",
                            "pending",
                            "pendingShare",
                            "flags"),
                    head);
            List<Map<String, Object>> cells = new ArrayList<>(report.getList("cells"));
            cells.add(report.getMap("total"));
            assertEquals(cells.size(), rows.size() - 1);
            for (int i = 0; i < cells.size(); i++) {
                Row row = rows.get(i + 1);
                for (int column = 0; column < head.size(); column++) {
                    same(
                            cells.get(i).get(head.get(column)),
                            row.getOptionalCell(column).orElse(null),
                            head.get(column));
                }
            }
            Sheet steps = workbook.findSheet("From taken to counted").orElseThrow();
            assertEquals(
                    report.<Map<String, Object>>getList("takenToCounted").stream()
                            .map(step -> step.get("step") + " " + step.get("animals"))
                            .toList(),
                    steps.read().stream()
                            .skip(1)
                            .map(row -> row.getCellText(0) + " " + row.getCellText(2))
                            .toList());
            String reading = workbook.findSheet("How to read it").orElseThrow().read().stream()
                    .map(row -> row.getCellText(1))
                    .collect(Collectors.joining("\n"));
            for (String note : report.<String>getList("notes")) {
                assertTrue(reading.contains(note), note);
            }
        }
    }

    private static void same(Object told, Cell cell, String column) {
        if (told == null) {
            boolean group = column.equals("ageClass") || column.equals("sex");
            assertEquals(group ? "ALL" : "", cell == null ? "" : cell.getText(), column);
        } else if (told instanceof Number number) {
            assertEquals(CellType.NUMBER, cell.getType(), column);
            assertEquals(number.doubleValue(), cell.asNumber().doubleValue(), column);
        } else if (told instanceof List<?> flags) {
            assertEquals(flags.stream().map(Object::toString).collect(Collectors.joining(" ")), cell.getText());
        } else {
            assertEquals(told.toString(), cell.getText());
        }
    }

    @Test
    void aSupersededCutSaysSoOnEveryFormAndKeepsItsBytes() throws Exception {
        String season = season();
        String cut = cut(season);
        String question = "season=" + season + "&cut=" + cut;
        String before =
                as("epidemiologist").get("/api/v1/prevalence?" + question).asString();
        as("epidemiologist")
                .contentType("application/json")
                .header("If-Match", "\"0\"")
                .body(Map.of("season", season, "name", "First of December", "superseded", "A block was entered twice"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(200);
        as("epidemiologist")
                .get("/api/v1/prevalence?" + question)
                .then()
                .header("Data-Cut-Superseded", equalTo("UTF-8''A%20block%20was%20entered%20twice"))
                .body(equalTo(before));
        byte[] pdf =
                as("epidemiologist").get("/api/v1/prevalence.pdf?" + question).asByteArray();
        assertTrue(flat(text(pdf, "prevalence-superseded")).contains(flat("superseded: A block was entered twice")));
        as("epidemiologist")
                .accept("text/html")
                .get("/prevalence?" + question)
                .then()
                .body(containsString("Superseded: A block was entered twice"));
    }

    @Test
    void aLiveReportSaysWhenAndThatItMoves() throws Exception {
        String season = season();
        byte[] pdf = as("epidemiologist")
                .accept("application/pdf")
                .get("/api/v1/prevalence?season=" + season + "&by=managementUnit,ageClass,sex")
                .then()
                .statusCode(200)
                .contentType("application/pdf")
                .extract()
                .asByteArray();
        String flat = flat(text(pdf, "prevalence-live"));
        assertTrue(flat.contains("Live,asof"), flat);
        assertTrue(flat.contains(flat("Make a data cut to have the same figures for ever")), flat);
        assertFalse(flat.contains("Z(America"), flat);
    }

    @Test
    void thePictureComesAsPngToo() throws IOException {
        String season = season();
        byte[] png = as("epidemiologist")
                .get("/api/v1/prevalence.png?season=" + season)
                .then()
                .statusCode(200)
                .contentType("image/png")
                .extract()
                .asByteArray();
        var image = ImageIO.read(new ByteArrayInputStream(png));
        assertNotNull(image);
        assertEquals(1440, image.getWidth());
        boolean dark = false;
        for (int x = 0; x < image.getWidth() && !dark; x++) {
            dark = (image.getRGB(x, image.getHeight() / 2) & 0xff) < 0x80;
        }
        assertTrue(dark, "something is drawn across the middle");
    }

    @Test
    void whoMayNotReadReportsGetsNone() {
        String season = season();
        for (String form : List.of("pdf", "xlsx", "png", "svg")) {
            as("sampler")
                    .get("/api/v1/prevalence." + form + "?season=" + season)
                    .then()
                    .statusCode(403);
            as("epidemiologist")
                    .get("/api/v1/prevalence." + form + "?season=" + season + "&by=shoe")
                    .then()
                    .statusCode(422)
                    .contentType("application/problem+json");
        }
    }
}
