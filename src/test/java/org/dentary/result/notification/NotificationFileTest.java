package org.dentary.result.notification;

import static org.dentary.WholeLists.byPages;
import static org.dentary.WholeLists.inTheFile;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
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
        List<String> paged = byPages("notifier", "/api/v1/notifications?state=OPEN&limit=2&season=" + own);
        assertEquals(detected.stream().sorted().toList(), paged);
        for (String file : List.of("/notifications/list.csv?state=OPEN&season=", "/api/v1/notifications?season=")) {
            assertEquals(paged, inTheFile("notifier", file + own));
        }
    }
}
