package org.dentary.story;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

/** Animals by pages and as a file. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class AnimalListTest {
    @Inject
    SeasonFixture season;

    @Inject
    LineFixture lines;

    /** Those taken in at one moment too, so that neither a page nor the file repeats or loses one. */
    @Test
    void pagesAndFileHoldEachAnimalOnceNewestFirst() {
        season.ensure();
        String own = lines.season();
        List<String> older = lines.add(own, 4, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        List<String> newer = lines.add(own, 3, ALine.of("FAWN", "FEMALE", "PENDING"));
        List<String> expected = new ArrayList<>();
        newer.stream().sorted(Comparator.reverseOrder()).forEach(expected::add);
        older.stream().sorted(Comparator.reverseOrder()).forEach(expected::add);
        assertEquals(expected, byPages("/api/v1/animals?limit=2&season=" + own));
        assertEquals(expected, inTheFile("/api/v1/animals.csv?season=" + own));
        assertEquals(expected.subList(0, 3), inTheFile("/api/v1/animals.csv?outcome=PENDING&season=" + own));
    }

    private static List<String> byPages(String first) {
        List<String> kits = new ArrayList<>();
        String next = first;
        while (next != null) {
            Response page = as("epidemiologist").urlEncodingEnabled(false).get(next);
            assertEquals(200, page.statusCode());
            kits.addAll(page.jsonPath().getList("items.kit", String.class));
            String link = page.header("Link");
            next = link == null ? null : link.substring(1, link.indexOf('>'));
        }
        return kits;
    }

    private static List<String> inTheFile(String path) {
        return as("epidemiologist")
                .get(path)
                .then()
                .statusCode(200)
                .extract()
                .asString()
                .lines()
                .skip(1)
                .map(line -> line.substring(0, line.indexOf(',')))
                .toList();
    }
}
