package org.dentary.result;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Sheet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every route that can be read is read before and after a laboratory reports a suspect, by those who may not know of it:
 * no answer may differ. The routes are those of the API's own document, so that a new one is walked too, and the pages.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class EmbargoWalkTest {
    private static final List<String> BLIND = List.of("sampler", "epidemiologist");
    private static final String SEASON = SeasonFixture.EARLIER_SEASON;

    /** Drawn pictures stand for the same in dots. */
    private static final String FILE = ".*\\.(pdf|xlsx|svg)";

    private static final List<String> PICTURES =
            List.of("classes", "map", "progress", "weeks", "seasons", "turnaround");

    @Inject
    FindingsFixture laboratory;

    @ParameterizedTest
    @ValueSource(strings = {"SCREENING", "CONFIRMATORY"})
    void nothingThatARoleWithoutTheRightCanFetchDiffersWhileASuspectIsOpen(String stage) {
        String unit = laboratory.unitWithoutTheDisease();
        Deer deer = laboratory.atTheLaboratory(unit);
        Deer other = laboratory.atTheLaboratory(unit);
        laboratory.finds(other, "SCREENING", "NOT_DETECTED", null).statusCode(201);
        Map<String, String> before = walk(deer);
        Map<String, String> again = walk(deer);
        // What tells the time or counts its readers differs from one reading to the next by itself.
        before.keySet().removeIf(route -> !before.get(route).equals(again.get(route)));
        assertTrue(before.size() > 120, "routes that read the same twice: " + before.size());
        assertTrue(
                before.values().stream()
                                .filter(answer -> answer.startsWith("200"))
                                .count()
                        > 60,
                "routes that answer at all");
        List<String> files = before.keySet().stream()
                .filter(route -> route.matches(FILE) && before.get(route).startsWith("200"))
                .toList();
        assertTrue(files.size() >= 12, "files that read the same twice: " + files);
        assertTrue(files.stream().anyMatch(file -> file.endsWith("/custody.pdf")), files.toString());
        laboratory
                .finds(deer, stage, stage.equals("SCREENING") ? "SUSPECT" : "DETECTED", null)
                .statusCode(201);
        Map<String, String> after = walk(deer);
        before.forEach((route, answer) -> assertEquals(answer, after.get(route), route));
        as("liaison")
                .get("/api/v1/animals/" + deer.kit())
                .then()
                .body("outcomes[0].derivedOutcome", org.hamcrest.Matchers.not("PENDING"));
    }

    private static Map<String, String> walk(Deer deer) {
        Map<String, Object> paths = as("liaison")
                .accept("application/json")
                .get("/q/openapi?format=json")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getMap("paths");
        Map<String, String> answers = new LinkedHashMap<>();
        for (Map.Entry<String, Object> path : paths.entrySet()) {
            if (!((Map<?, ?>) path.getValue()).containsKey("get")) {
                continue;
            }
            for (String account : BLIND) {
                for (String type : List.of("application/json", "text/csv", "text/html")) {
                    String address = filled(path.getKey(), deer);
                    Response answer = seasoned(account, type, address);
                    answers.put(account + " " + type + " " + address, answer.statusCode() + " " + untimed(answer));
                }
            }
        }
        paths.keySet().stream()
                .filter(path -> path.matches(FILE))
                .flatMap(path -> PICTURES.stream().map(picture -> path.replace("{picture}", picture)))
                .distinct()
                .map(path -> filled(path, deer))
                .forEach(address -> BLIND.forEach(
                        account -> answers.put(account + " " + address, paper(seasoned(account, "*/*", address)))));
        for (String account : BLIND) {
            for (String address : List.of(
                    "/api/v1/line-list?season=" + SEASON,
                    "/api/v1/prevalence?season=" + SEASON,
                    "/api/v1/animals?q=" + deer.kit(),
                    "/find?q=" + deer.label(Part.NODE_LEFT),
                    "/find?q=A-" + deer.kit() + "-SCREENING",
                    "/api/v1/chance-of-detection?season=" + SEASON,
                    "/",
                    "/animals",
                    "/animals?q=" + deer.kit(),
                    "/animals/" + deer.kit(),
                    "/jaws",
                    "/custody",
                    "/day",
                    "/submissions",
                    "/results",
                    "/incidents",
                    "/notifications",
                    "/corrections",
                    "/column-maps",
                    "/specimens/" + deer.label(Part.NODE_LEFT) + "/custody",
                    "/custody/discrepancies",
                    "/unsuitable-tissue?by=STATION",
                    "/chance-of-detection?season=" + SEASON,
                    "/unsuitable-tissue?by=PERSON",
                    "/prevalence?season=" + SEASON,
                    "/line-list?season=" + SEASON,
                    "/data-cuts")) {
                Response answer = as(account).redirects().follow(false).get(address);
                answers.put(account + " " + address, answer.statusCode() + " " + untimed(answer));
            }
        }
        return answers;
    }

    /** The answer about the season; a route that asks for none is not told of it. */
    private static Response seasoned(String account, String type, String address) {
        Response answer = as(account).accept(type).queryParam("season", SEASON).get(address);
        return answer.statusCode() == 422 && answer.asString().contains("UNKNOWN_PARAMETER")
                ? as(account).accept(type).get(address)
                : answer;
    }

    /** What a file says: a paper's text, a workbook's cells, a drawing's marks; without clocks and digests of the whole. */
    private static String paper(Response answer) {
        String type = String.valueOf(answer.contentType());
        byte[] bytes = answer.asByteArray();
        String text = type.startsWith("application/pdf")
                ? textOf(bytes)
                : type.contains("spreadsheet") ? cellsOf(bytes) : new String(bytes, StandardCharsets.UTF_8);
        return answer.statusCode() + " "
                + text.replaceAll("\\d{1,2}:\\d{2}(:\\d{2})?(\\.\\d+)?Z?|\\b[0-9a-f]{16,64}\\b", "#");
    }

    private static String textOf(byte[] pdf) {
        try (PdfReader reader = new PdfReader(pdf)) {
            PdfTextExtractor text = new PdfTextExtractor(reader);
            StringBuilder all = new StringBuilder();
            for (int page = 1; page <= reader.getNumberOfPages(); page++) {
                all.append(text.getTextFromPage(page)).append('\f');
            }
            return all.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String cellsOf(byte[] workbook) {
        try (ReadableWorkbook book = new ReadableWorkbook(new ByteArrayInputStream(workbook))) {
            StringBuilder all = new StringBuilder();
            for (Sheet sheet : book.getSheets().toList()) {
                sheet.read()
                        .forEach(row -> row.forEach(cell ->
                                all.append(cell == null ? "" : cell.getText()).append('\t')));
                all.append('\f');
            }
            return all.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Hours since 2025 and the minute of a list grow by themselves. */
    private static String untimed(Response answer) {
        return answer.asString().replaceAll("\\b\\d{4,}\\.\\d\\b|As of [^;]{0,40};|Live, as of [^<]{0,40}<", "#");
    }

    private static String filled(String path, Deer deer) {
        return path.replace("{kit}", deer.kit())
                .replace("{code}", deer.label(Part.NODE_LEFT))
                .replace("{childCode}", deer.label(Part.SPARE_1))
                .replace("{disease}", SeasonFixture.DISEASE)
                .replace("{season}", SEASON)
                .replace("{station}", SeasonFixture.STATION)
                .replace("{laboratory}", SeasonFixture.LABORATORY)
                .replace("{person}", "T_SAMPLER")
                .replace("{of}", deer.kit())
                .replaceAll("\\{[^}]*\\}", UUID.nameUUIDFromBytes(new byte[0]).toString());
    }
}
