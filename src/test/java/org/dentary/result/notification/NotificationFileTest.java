package org.dentary.result.notification;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

/** The work list as a file. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class NotificationFileTest {
    @Inject
    SeasonFixture season;

    @Inject
    LineFixture lines;

    @Test
    void theFileHoldsWhatThePagesHoldInTheirOrder() {
        season.ensure();
        String own = lines.season();
        List<String> detected = lines.add(own, 5, ALine.of("ADULT", "MALE", "DETECTED"));
        lines.add(own, 2, ALine.of("ADULT", "MALE", "PENDING"));
        List<String> paged = byPages("/api/v1/notifications?state=OPEN&limit=2&season=" + own);
        assertEquals(detected.stream().sorted().toList(), paged);
        for (String file : List.of("/notifications/list.csv?state=OPEN&season=", "/api/v1/notifications?season=")) {
            assertEquals(paged, inTheFile(file + own));
        }
    }

    private static List<String> byPages(String first) {
        List<String> kits = new ArrayList<>();
        String next = first;
        while (next != null) {
            Response page = as("notifier").urlEncodingEnabled(false).get(next);
            assertEquals(200, page.statusCode());
            kits.addAll(page.jsonPath().getList("items.kit", String.class));
            String link = page.header("Link");
            next = link == null ? null : link.substring(1, link.indexOf('>'));
        }
        return kits;
    }

    private static List<String> inTheFile(String path) {
        return as("notifier")
                .accept("text/csv")
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
