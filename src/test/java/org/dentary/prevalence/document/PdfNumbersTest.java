package org.dentary.prevalence.document;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.SeasonFixture;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.detection.ChanceFixture;
import org.junit.jupiter.api.Test;

/**
 * Every number of the document, section by section and in order, against the answers as JSON and CSV: nothing more is printed
 * and nothing less. The text is read back by poppler; the rounding is written anew here.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PdfNumbersTest {
    private static final Path FOLDER = Path.of("target", "screenshots");
    private static final Pattern NUMBER = Pattern.compile("\\d[\\d,]*(\\.\\d+)?");
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);
    private static final List<String> PICTURES = List.of("map", "progress", "weeks", "seasons", "turnaround");

    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    private static RequestSpecification as(String username) {
        return given().auth().preemptive().basic(username, SeasonFixture.PASSWORD);
    }

    /** A question of two units with boundaries, two seasons, reports over weeks and unknown ages; on a cut. */
    private String question() {
        String north = plan.unit();
        String south = plan.unit();
        plan.boundary(north, "[-100,45],[-99,45],[-99,46],[-100,46],[-100,45]");
        plan.boundary(south, "[-100,44],[-98.5,44.2],[-99,45],[-100,45],[-100,44]");
        String earlier = lines.season();
        String season = lines.season();
        lines.add(earlier, 1182, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(north));
        lines.add(earlier, 81, ALine.of("ADULT", "MALE", "DETECTED").in(south));
        LocalDate received = LocalDate.of(Integer.parseInt(season.substring(1)), 1, 20);
        plan.report(lines.add(season, 31, ALine.of("ADULT", "MALE", "DETECTED").in(south)), received, 5);
        plan.report(
                lines.add(season, 182, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(south)), received.plusDays(9), 12);
        plan.report(
                lines.add(
                        season,
                        1048,
                        ALine.of("ADULT", "FEMALE", "NOT_DETECTED").in(north)),
                received.plusDays(30),
                7);
        lines.add(season, 3, ALine.of("YEARLING", "FEMALE", "DETECTED").in(south));
        lines.add(season, 20, ALine.of("YEARLING", "FEMALE", "NOT_DETECTED").in(north));
        lines.add(season, 4, ALine.of("FAWN", "MALE", "NOT_DETECTED").in(north));
        lines.add(season, 61, ALine.of("FAWN", "FEMALE", "PENDING").in(north));
        lines.add(season, 7, ALine.of("ADULT", "MALE", "UNSUITABLE").in(north));
        lines.add(season, 5, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(north).from("VEHICLE"));
        lines.add(season, 2, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(north).excluded("DUPLICATE"));
        lines.add(season, 8, ALine.of("ADULT", "MALE", "NOT_TESTED").in(north).without());
        lines.footnote(
                lines.add(
                        season,
                        30,
                        ALine.of("UNKNOWN", "FEMALE", "NOT_DETECTED").in(south)),
                "",
                false,
                "NOT_EXAMINED",
                "Head not brought");
        lines.footnote(
                lines.add(season, 6, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED").in(south)), "", true, "READ", "");
        String cut = UUID.randomUUID().toString();
        as("epidemiologist")
                .contentType("application/json")
                .body(Map.of("season", season, "name", "Before the meeting"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(201);
        return "season=" + season + "&unit=" + north + "," + south + "&cut=" + cut;
    }

    @Test
    void everySectionHoldsTheAnswersNumbersInOrderAndNoOthers() throws Exception {
        String question = question();
        JsonPath report = as("epidemiologist")
                .get("/api/v1/prevalence?" + question)
                .jsonPath(
                        JsonPathConfig.jsonPathConfig().numberReturnType(JsonPathConfig.NumberReturnType.BIG_DECIMAL));
        String text = text(
                as("epidemiologist")
                        .get("/api/v1/prevalence.pdf?" + question)
                        .then()
                        .statusCode(200)
                        .extract()
                        .asByteArray(),
                "pdf-numbers");

        List<Map<String, Object>> cells = new ArrayList<>(report.getList("cells"));
        cells.add(report.getMap("total"));
        StringBuilder table = new StringBuilder();
        cells.forEach(cell -> table.append(row(cell)));
        String section = section(text, "Detected of counted", "The same as a picture");
        String unmarked = flat(section).replaceAll("[†‡§,]", "");
        assertTrue(unmarked.contains(flat(table.toString())), table + " is not in " + section);
        assertEquals(
                numbers(table),
                numbers(section.substring(0, section.indexOf("†† fewer"))),
                "nothing else stands there");

        List<String> steps = told(report.getList("takenToCounted.animals"));
        assertEquals(
                steps,
                numbers(section(text, "From taken to counted", "Counted animals of unknown age")),
                "from taken to counted");
        assertEquals(
                told(report.getList("unknownAge.rows.animals")),
                numbers(section(text, "Counted animals of unknown age", "Management units by")),
                "unknown age");
        pictures(text, question);
        sentences(text, report);
    }

    @Test
    void aPictureThatCannotBeMadeIsSaidToBeLeftOutAndTheRestStands() throws Exception {
        String unit = plan.unit();
        String season = lines.season();
        lines.add(season, 30, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(unit));
        plan.weight("EMPTY_FOR_ADULTS", "FAWN", "MALE", "HUNTER_HARVEST", 1);
        plan.set(PlanSetting.RISK_WEIGHT_SET, "EMPTY_FOR_ADULTS", unit);
        try {
            String asked = "?season=" + season + "&unit=" + unit;
            String flat = flat(text(
                    as("epidemiologist").get("/api/v1/prevalence.pdf" + asked).asByteArray(), "pdf-left-out"));
            assertTrue(flat.contains(flat("Left out: progress.")), flat);
            assertTrue(flat.contains(flat("Seasons side by side")), flat);
            String byOutcome = flat(text(
                    as("epidemiologist")
                            .get("/api/v1/prevalence.pdf" + asked + "&outcome=NOT_DETECTED")
                            .asByteArray(),
                    "pdf-by-outcome"));
            assertTrue(byOutcome.contains(flat("Pictures of the season are left out")), byOutcome);
        } finally {
            // The next season would count this one among those before it.
            plan.set(PlanSetting.RISK_WEIGHT_SET, "", unit);
        }
    }

    /** The table of each picture is its CSV, cell by cell. */
    private static void pictures(String text, String question) throws Exception {
        String flat = flat(text);
        int from = 0;
        for (String picture : PICTURES) {
            String csv = as("epidemiologist")
                    .get("/api/v1/pictures/" + picture + ".csv?" + question)
                    .asString();
            List<String> rows = new ArrayList<>();
            try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(csv)) {
                for (NamedCsvRecord record : reader) {
                    StringBuilder row = new StringBuilder();
                    record.getFieldsAsMap().forEach((column, value) -> row.append(shown(column, value, record)));
                    rows.add(flat(row.toString()));
                }
            }
            assertTrue(rows.size() > 0, picture);
            for (String row : rows) {
                int at = flat.indexOf(row, from);
                assertTrue(at >= 0, picture + ": " + row + " is not in " + flat.substring(from));
                from = at + row.length();
            }
        }
    }

    private static String shown(String column, String value, NamedCsvRecord record) {
        boolean share =
                Set.of("prevalence", "lower", "upper", "probability", "share").contains(column);
        if (column.equals("week")) {
            return DAY.format(LocalDate.parse(value));
        }
        if (value.isEmpty() || !NUMBER.matcher(value).matches() || column.equals("season") || column.equals("unit")) {
            return value;
        }
        if (!share) {
            return String.format(java.util.Locale.US, "%,d", Integer.parseInt(value));
        }
        if (record.getFieldsAsMap().containsKey("counted")) {
            return percent(value, Integer.parseInt(record.getField("counted")));
        }
        BigDecimal exact = new BigDecimal(value);
        if (exact.compareTo(new BigDecimal("0.9995")) >= 0 && exact.compareTo(BigDecimal.ONE) < 0) {
            return "over 99.9 %";
        }
        return exact.movePointRight(2).setScale(1, RoundingMode.HALF_UP) + " %";
    }

    /** Footnotes, notes, warnings, methods and cautions are the answer's, and so are the numbers in them. */
    private static void sentences(String text, JsonPath report) {
        String flat = flat(text);
        for (String list :
                List.of("notes", "warnings", "cautions", "footnotes.text", "methods.what", "methods.source")) {
            for (String sentence : report.<String>getList(list)) {
                assertTrue(flat.contains(flat(sentence)), sentence);
            }
        }
        Set<String> told = new LinkedHashSet<>();
        for (String list : List.of("notes", "footnotes.text", "methods.what", "methods.source")) {
            report.<String>getList(list).forEach(sentence -> told.addAll(numbers(sentence)));
        }
        Set<String> printed = new LinkedHashSet<>(numbers(section(text, "How to read it", "Cautions")));
        printed.removeAll(told);
        assertEquals(Set.of(), printed, "numbers between How to read it and Cautions that the answer does not tell");
    }

    /** The row of a cell as people read it: no decimal below 30 counted, one below 1,000, else two. */
    private static String row(Map<String, Object> cell) {
        int counted = ((Number) cell.get("counted")).intValue();
        int pending = ((Number) cell.get("pending")).intValue();
        StringBuilder row = new StringBuilder();
        if (cell.containsKey("sex")) {
            for (String by : List.of("ageClass", "sex")) {
                String code = cell.get(by).toString();
                row.append(code.charAt(0)).append(code.substring(1).toLowerCase(java.util.Locale.ROOT));
            }
        } else {
            row.append("All");
        }
        row.append(' ').append(counted).append(' ').append(cell.get("detected")).append(' ');
        if (counted == 0) {
            row.append(pending == 0 ? "not sampled" : "no result yet");
        } else {
            row.append(percent(cell.get("prevalence"), counted))
                    .append(percent(cell.get("lower"), counted))
                    .append("to ")
                    .append(percent(cell.get("upper"), counted));
        }
        row.append(pending).append(' ');
        if (pending > 0) {
            row.append(percent(cell.get("pendingShare"), counted + pending));
        }
        return row.toString();
    }

    /** What is neither none nor all is never printed as such. */
    private static String percent(Object share, int n) {
        int digits = n < 30 ? 0 : n < 1000 ? 1 : 2;
        BigDecimal exact = new BigDecimal(share.toString()).movePointRight(2);
        BigDecimal rounded = exact.setScale(digits, RoundingMode.HALF_UP);
        BigDecimal last = BigDecimal.ONE.movePointLeft(digits);
        if (rounded.signum() == 0 && exact.signum() > 0) {
            return "under " + last.toPlainString() + " % ";
        }
        BigDecimal all = new BigDecimal(100).setScale(digits);
        return rounded.equals(all) && exact.compareTo(all) < 0
                ? "over " + all.subtract(last).toPlainString() + " % "
                : rounded + " % ";
    }

    private static List<String> told(List<?> numbers) {
        return numbers.stream().map(Object::toString).toList();
    }

    private static List<String> numbers(CharSequence text) {
        Matcher matcher = NUMBER.matcher(text);
        List<String> numbers = new ArrayList<>();
        while (matcher.find()) {
            numbers.add(matcher.group());
        }
        return numbers;
    }

    private static String section(String text, String heading, String next) {
        int from = text.indexOf("\n" + heading) + heading.length() + 1;
        int to = text.indexOf("\n" + next, from);
        assertTrue(from > heading.length() && to > from, heading + " up to " + next + " in\n" + text);
        return text.substring(from, to);
    }

    private static String flat(String text) {
        return text.replaceAll("\\s+", "");
    }

    /** What poppler reads as it stands on the pages, without the foot of each page. */
    private static String text(byte[] pdf, String name) throws Exception {
        Files.createDirectories(FOLDER);
        Path file = FOLDER.resolve(name + ".pdf");
        Files.write(file, pdf);
        run("pdftoppm", "-r", "80", "-png", file.toString(), FOLDER + "/" + name);
        run("pdftoppm", "-r", "80", "-gray", "-png", file.toString(), FOLDER + "/" + name + "-gray");
        return run("pdftotext", "-layout", file.toString(), "-")
                .replace("\f", "\n")
                .replaceAll("(?m)^Prevalence P\\d+\\. Data cut .* page \\d+ of \\d+$", "");
    }

    private static String run(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), out);
        return out;
    }
}
