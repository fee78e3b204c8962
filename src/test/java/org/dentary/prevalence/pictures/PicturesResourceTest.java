package org.dentary.prevalence.pictures;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.detection.ChanceFixture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PicturesResourceTest {
    private static final ALine ADULT = ALine.of("ADULT", "MALE", "NOT_DETECTED");

    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    private static RequestSpecification as(String username) {
        return given().auth().preemptive().basic(username, SeasonFixture.PASSWORD);
    }

    private static String get(String path) {
        return as("epidemiologist")
                .get("/api/v1/pictures/" + path)
                .then()
                .statusCode(200)
                .header("Cache-Control", "private, no-store")
                .extract()
                .asString();
    }

    @Test
    void theTablesHoldWhatTheReportsCount() {
        String unit = plan.unit();
        String earlier = lines.season();
        String season = lines.season();
        lines.add(earlier, 182, ADULT.in(unit));
        lines.add(earlier, 81, ALine.of("ADULT", "MALE", "DETECTED").in(unit));
        lines.add(season, 20, ADULT.in(unit));
        lines.add(season, 5, ALine.of("ADULT", "MALE", "PENDING").in(unit));
        String asked = "?season=" + season + "&unit=" + unit;
        assertTrue(get("progress.csv" + asked).contains("Chance unit " + unit + ",20,5,314,"), "progress");
        String seasons = get("seasons.csv" + asked);
        // Newcombe 1998, Stat Med 17:857-872: 81/263, score limits .2553 and .3662; 0/20: 0 and .1611
        String[] first = row(seasons, earlier);
        assertEquals(.2553, Double.parseDouble(first[4]), 5e-5);
        assertEquals(.3662, Double.parseDouble(first[5]), 5e-5);
        String[] second = row(seasons, season);
        assertEquals(.1611, Double.parseDouble(second[5]), 5e-5);
    }

    @Test
    void classesAreThoseOfTheReport() {
        String unit = plan.unit();
        String season = lines.season();
        lines.add(season, 182, ADULT.in(unit));
        lines.add(season, 81, ALine.of("ADULT", "MALE", "DETECTED").in(unit));
        lines.add(season, 20, ALine.of("YEARLING", "FEMALE", "NOT_DETECTED").in(unit));
        String asked = "?season=" + season + "&unit=" + unit;
        List<String> rows = get("classes.csv" + asked).lines().skip(1).toList();
        // Newcombe 1998, Stat Med 17:857-872: 81/263, score limits .2553 and .3662; 0/20: 0 and .1611
        String[] males = rows.stream()
                .filter(row -> row.startsWith("Adult,Male,"))
                .findFirst()
                .orElseThrow()
                .split(",", -1);
        assertEquals("263", males[2]);
        assertEquals(.2553, Double.parseDouble(males[5]), 5e-5);
        assertEquals(.3662, Double.parseDouble(males[6]), 5e-5);
        assertTrue(
                rows.stream().anyMatch(row -> row.matches("Yearling,Female,20,0,0\\.0,0\\.0,0\\.161.*,0")),
                rows.toString());
        assertTrue(rows.contains("Fawn,Male,0,0,,,,0"), rows.toString());
        as("epidemiologist")
                .accept("text/html")
                .get("/pictures" + asked)
                .then()
                .body(containsString("<td class=\"num\">30.8 %</td>"))
                .body(containsString("<td class=\"num\">16 %</td>"))
                .body(containsString("<td class=\"num\">not sampled</td>"))
                .body(containsString("/api/v1/pictures/classes.png?"));
    }

    private static String[] row(String csv, String begins) {
        return java.util.Arrays.stream(csv.split("\r\n"))
                .filter(line -> line.startsWith(begins + ","))
                .findFirst()
                .orElseThrow()
                .split(",", -1);
    }

    @Test
    void weeksAndTurnaroundCountWhatIsReleasedAlone() {
        String unit = plan.unit();
        String season = lines.season();
        int year = Integer.parseInt(season.substring(1));
        // The fixture's deer die on January 1; the week from Monday by Java's calendar, not ours.
        LocalDate monday = LocalDate.of(year, 1, 1)
                .with(java.time.temporal.TemporalAdjusters.previousOrSame(java.time.DayOfWeek.MONDAY));
        List<String> known = lines.add(season, 6, ADULT.in(unit));
        List<String> waiting = lines.add(
                season,
                2,
                ALine.of("ADULT", "MALE", "PENDING").derived("DETECTED").in(unit));
        LocalDate received = monday.plusDays(21);
        plan.report(known.subList(0, 4), received, 5);
        plan.report(known.subList(4, 6), received, 12);
        plan.report(waiting, received, 3);
        String asked = "?season=" + season + "&unit=" + unit;
        String weeks = get("weeks.csv" + asked);
        assertEquals(
                List.of(
                        monday + ",8,0,0",
                        monday.plusWeeks(1) + ",0,0,0",
                        monday.plusWeeks(2) + ",0,0,0",
                        monday.plusWeeks(3) + ",0,4,4",
                        monday.plusWeeks(4) + ",0,2,2"),
                weeks.lines().skip(1).toList());
        // 4 after 5 days, 2 after 12: the two reported and not released are in no count
        assertTrue(get("turnaround.csv" + asked).contains("Test laboratory,6,5,5,12,12,10"));
    }

    @Test
    void theMapNamesItsBoundariesAndShadesByThreeThings() {
        String north = plan.unit();
        String south = plan.unit();
        String bare = plan.unit();
        plan.boundary(north, "[-100,45],[-99,45],[-99,46],[-100,46],[-100,45]");
        plan.boundary(south, "[-100,44],[-99,44],[-99,45],[-100,45],[-100,44]");
        String season = lines.season();
        lines.add(season, 120, ADULT.in(north));
        lines.add(season, 40, ADULT.in(south));
        lines.add(season, 2, ALine.of("ADULT", "MALE", "DETECTED").in(south));
        String asked = "?season=" + season + "&unit=" + north + "," + south + "," + bare;
        String map = get("map.svg" + asked);
        assertTrue(map.contains("Chance unit " + south + ": 42"));
        assertTrue(get("map.svg" + asked + "&shade=detected").contains("Chance unit " + south + ": 2 of 42"));
        assertTrue(get("map.svg" + asked + "&shade=chance").contains("Chance unit " + south + ": detected"));
        String csv = get("map.csv" + asked);
        assertTrue(csv.contains(north + ",Chance unit " + north + ",120,0,"));
        assertTrue(csv.contains("edition 2026"));
        assertTrue(csv.contains(bare + ",Chance unit " + bare + ",0,0,,none"));
        as("epidemiologist")
                .accept("text/html")
                .get("/pictures" + asked)
                .then()
                .statusCode(200)
                .body(containsString("WGS 84, edition 2026"))
                .body(containsString("not drawn: Chance unit " + bare))
                .body(not(containsString("style=\"")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"classes", "map", "progress", "weeks", "seasons", "turnaround"})
    void everyPictureIsSvgWithItsWords(String name) throws Exception {
        plan.unit();
        String season = lines.season();
        String svg = get(name + ".svg?season=" + season);
        var root = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
        assertEquals("svg", root.getTagName());
        assertTrue(
                root.getElementsByTagName("title").item(0).getTextContent().contains(season) || name.equals("seasons"));
        assertTrue(!root.getElementsByTagName("desc").item(0).getTextContent().isBlank());
        assertTrue(
                !svg.contains("http://") || svg.indexOf("http://") == svg.indexOf("http://www.w3.org"),
                "no other host");
    }

    @ParameterizedTest
    @ValueSource(strings = {"classes", "map", "progress", "weeks", "seasons", "turnaround"})
    void everyPictureIsPngOfTheSameDrawingWithItsWordsInside(String name) throws Exception {
        String unit = plan.unit();
        plan.boundary(unit, "[-100,45],[-99,45],[-99,46],[-100,46],[-100,45]");
        String season = lines.season();
        plan.report(lines.add(season, 4, ADULT.in(unit)), LocalDate.of(Integer.parseInt(season.substring(1)), 2, 2), 5);
        String asked = "?season=" + season + "&unit=" + unit;
        byte[] png = as("epidemiologist")
                .get("/api/v1/pictures/" + name + ".png" + asked)
                .then()
                .statusCode(200)
                .contentType("image/png")
                .header("Cache-Control", "private, no-store")
                .extract()
                .asByteArray();
        var svg = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(get(name + ".svg" + asked).getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
        var image = ImageIO.read(new ByteArrayInputStream(png));
        assertEquals(2 * Double.parseDouble(svg.getAttribute("width")), image.getWidth());
        assertEquals(2 * Double.parseDouble(svg.getAttribute("height")), image.getHeight());
        long dark = IntStream.range(0, image.getWidth() * image.getHeight())
                .filter(i -> (image.getRGB(i % image.getWidth(), i / image.getWidth()) & 0xff) < 0x90)
                .count();
        assertTrue(dark > 500, name + " has " + dark + " dark dots");
        String words = svg.getElementsByTagName("desc").item(0).getTextContent();
        assertTrue(new String(png, StandardCharsets.UTF_8).contains(words), words);
    }

    @Test
    void onACutAPictureStaysWhateverIsPutRightLater() {
        String unit = plan.unit();
        plan.boundary(unit, "[-100,45],[-99,45],[-99,46],[-100,46],[-100,45]");
        String season = lines.season();
        List<String> kits = lines.add(season, 9, ADULT.in(unit));
        plan.report(kits, LocalDate.of(Integer.parseInt(season.substring(1)), 2, 2), 5);
        String cut = UUID.randomUUID().toString();
        as("epidemiologist")
                .contentType("application/json")
                .body(Map.of("season", season, "name", "Pictures"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(201);
        String live = "?season=" + season + "&unit=" + unit;
        String onCut = live + "&cut=" + cut;
        List<String> forms = List.of("map", "progress", "weeks", "seasons", "turnaround").stream()
                .flatMap(name -> Stream.of(name + ".csv", name + ".svg"))
                .toList();
        List<String> before = forms.stream().map(form -> get(form + onCut)).toList();
        List<String> liveBefore = forms.stream().map(form -> get(form + live)).toList();

        plan.moved(kits.subList(0, 3), lines.add(season, 3, ADULT.in(unit)));
        plan.boundary(unit, "[-100,45],[-98,45],[-98,46],[-100,46],[-100,45]");
        lines.revise(kits.subList(3, 5), "DETECTED");

        assertEquals(before, forms.stream().map(form -> get(form + onCut)).toList());
        List<String> liveAfter = forms.stream().map(form -> get(form + live)).toList();
        for (int i = 0; i < forms.size(); i++) {
            if (!forms.get(i).startsWith("turnaround")) {
                assertNotEquals(liveBefore.get(i), liveAfter.get(i), forms.get(i) + " live");
            }
        }
    }

    @Test
    void whatIsUnknownIsNamed() {
        as("epidemiologist")
                .get("/api/v1/pictures/cake.svg?season=T2025")
                .then()
                .statusCode(404)
                .body("detail", containsString("map, progress, weeks, seasons, turnaround"));
        as("epidemiologist")
                .get("/api/v1/pictures/map.svg?season=T2025&shade=altitude")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("shade"));
        as("epidemiologist")
                .accept("text/html")
                .get("/pictures?season=T2025&shade=altitude")
                .then()
                .statusCode(422)
                .body(containsString("altitude"));
    }

    @ParameterizedTest
    @CsvSource({"sampler, 403", "notifier, 403", "liaison, 200", "coordinator, 200", "auditor, 200"})
    void rolesThatReadReportsSeeThem(String account, int status) {
        plan.unit();
        as(account).get("/api/v1/pictures/progress.csv?season=T2025").then().statusCode(status);
        as(account)
                .accept("text/html")
                .get("/pictures?season=T2025")
                .then()
                .statusCode(status)
                .contentType(startsWith("text/html"));
    }
}
