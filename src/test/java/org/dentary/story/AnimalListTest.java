package org.dentary.story;

import static org.dentary.WholeLists.byPages;
import static org.dentary.WholeLists.inTheFile;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
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
        assertEquals(expected, byPages("epidemiologist", "/api/v1/animals?limit=2&season=" + own));
        assertEquals(expected, inTheFile("epidemiologist", "/api/v1/animals.csv?season=" + own));
        assertEquals(
                expected.subList(0, 3),
                inTheFile("epidemiologist", "/api/v1/animals.csv?outcome=PENDING&season=" + own));
    }
}
