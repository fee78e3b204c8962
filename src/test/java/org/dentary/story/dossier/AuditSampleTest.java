package org.dentary.story.dossier;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An audit sample over HTTP: drawn again from its seed, its dossiers in one PDF that other programs read. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class AuditSampleTest {
    private static final String SAMPLE = "/api/v1/custody/audit-sample";

    @Inject
    DossierFixture tissue;

    @Inject
    LineFixture seasons;

    @TempDir
    Path folder;

    private String season;

    /** A season of its own: what other tests leave in theirs, thousands and some altered on purpose, is never drawn. */
    @BeforeEach
    void aSeason() {
        season = seasons.season();
    }

    @Test
    void printsTheDossiersOfWhatItDrewWithItsSeed() throws IOException {
        List<String> mine = List.of(aNode(), aNode(), aNode());
        String asked = "?season=" + season + "&size=2&seed=autumn-7";
        JsonPath drawn = as("auditor").get(SAMPLE + asked).jsonPath();
        List<String> codes = drawn.getList("items.code");
        assertEquals(2, codes.size());
        assertTrue(mine.containsAll(codes), codes + " of " + mine);
        assertEquals(3, drawn.getInt("sample.population"));
        Response answer = as("auditor").get(SAMPLE + ".pdf" + asked);
        assertEquals(200, answer.statusCode());
        assertEquals("private, no-store", answer.header("Cache-Control"));
        assertEquals(
                "attachment; filename=\"audit-sample-" + season + "-autumn-7.pdf\"",
                answer.header("Content-Disposition"));
        Path pdf = Files.write(folder.resolve("sample.pdf"), answer.asByteArray());
        String words = Papers.words(pdf);
        assertTrue(words.contains("autumn-7"), words);
        assertTrue(words.contains(drawn.getString("sample.populationDigest")), words);
        assertTrue(words.contains("2 of 3 specimens"), words);
        assertTrue(words.contains("Audit sample " + season + ", seed autumn-7, page 1 of 1"), words);
        List<String> read = new ArrayList<>();
        for (Path page : Papers.pages(pdf, 150)) {
            read.addAll(Papers.bars(page));
        }
        assertEquals(codes, read, "each dossier begins on a page of its own, in the order drawn");
        for (String code : codes) {
            String dossier = "Custody dossier " + grouped(code) + ", page ";
            int pages = Papers.count(words, dossier);
            assertTrue(pages >= 1, words);
            assertEquals(1, Papers.count(words, dossier + pages + " of " + pages), words);
            assertEquals(1, Papers.count(words, "End of dossier " + grouped(code)), words);
        }
        assertFalse(words.contains("Aspenquist"), "no hunter on it");
    }

    @Test
    void theSameSeedDrawsTheSameAndAnotherAnother() {
        for (int i = 0; i < 8; i++) {
            aNode();
        }
        assertEquals(codes("autumn-7"), codes("autumn-7"));
        List<List<String>> others = List.of(codes("a"), codes("b"), codes("c"), codes("d"));
        assertTrue(others.stream().distinct().count() > 1, others.toString());
        String fresh = as("auditor")
                .get(SAMPLE + "?season=" + season + "&size=1")
                .then()
                .statusCode(200)
                .extract()
                .path("sample.seed");
        String another = as("auditor")
                .get(SAMPLE + "?season=" + season + "&size=1")
                .then()
                .extract()
                .path("sample.seed");
        assertTrue(!fresh.equals(another));
    }

    @Test
    void saysWhatIsWrongInItsTable() {
        String code = tissue.withAStory(aNode());
        String csv = as("auditor")
                .get(SAMPLE + ".csv?season=" + season + "&size=500&seed=s")
                .then()
                .statusCode(200)
                .contentType("text/csv;charset=UTF-8")
                .extract()
                .asString();
        String line = csv.lines().filter(one -> one.startsWith(code)).collect(Collectors.joining());
        assertTrue(line.contains("tamper seal TS 0042 was expected"), line);
        assertTrue(line.contains("Test courier"), line);
    }

    @Test
    void isForThoseWhoReadTheLedgerAndAsksForWhatCanBe() {
        aNode();
        String asked = "?season=" + season + "&size=1&seed=s";
        for (String reader : List.of("liaison", "epidemiologist", "coordinator", "auditor")) {
            as(reader).get(SAMPLE + asked).then().statusCode(200);
        }
        for (String other : List.of("sampler", "notifier")) {
            for (String kind : List.of("", ".csv", ".pdf")) {
                as(other).get(SAMPLE + kind + asked).then().statusCode(403);
            }
            as(other).get("/ledger/audit-sample").then().statusCode(403);
        }
        as("auditor")
                .get(SAMPLE + "?season=" + season + "&size=501")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("size"));
        as("auditor").get(SAMPLE + "?size=5").then().statusCode(422).body("errors[0].field", equalTo("season"));
        as("auditor").get(SAMPLE + "?season=T1900&size=5").then().statusCode(404);
        as("auditor")
                .get(SAMPLE + "?season=" + season + "&size=5&seed=a%20b")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("seed"));
    }

    @Test
    void thePageTakesAFreshSeedIntoItsAddress() {
        aNode();
        String address = as("auditor")
                .redirects()
                .follow(false)
                .get("/ledger/audit-sample?season=" + season + "&size=3&seed=")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        assertTrue(address.matches(".*season=" + season + "&size=3&seed=[0-9a-f]{12}"), address);
        String page = as("auditor")
                .get("/ledger/audit-sample?season=" + season + "&size=3&seed=autumn-7")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(
                page.contains("/api/v1/custody/audit-sample.pdf?season=" + season + "&amp;size=3&amp;seed=autumn-7"),
                page);
        as("auditor")
                .get("/ledger/audit-sample?season=" + season + "&size=none")
                .then()
                .statusCode(422);
    }

    /** Code of a node of a deer that died in the season. */
    private String aNode() {
        return tissue.aNode(tissue.aDeer(), season.substring(1) + "-11-14");
    }

    private List<String> codes(String seed) {
        return as("auditor")
                .get(SAMPLE + "?season=" + season + "&size=5&seed=" + seed)
                .then()
                .statusCode(200)
                .extract()
                .path("items.code");
    }

    private static String grouped(String code) {
        return code.substring(0, 4) + "-" + code.substring(4, 8) + "-" + code.substring(8);
    }
}
