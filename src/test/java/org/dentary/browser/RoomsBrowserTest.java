package org.dentary.browser;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every room on the rail, seen by the coordinator: nothing for axe-core to find, nothing that the content security policy
 * blocks, no page wider than a phone, every control high enough for gloves.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class RoomsBrowserTest extends Browser {
    private static final String[] ROOMS = {
        "/season",
        "/intake",
        "/animals",
        "/jaws",
        "/custody",
        "/custody/discrepancies",
        "/custody/events",
        "/ledger",
        "/ledger/audit-sample",
        "/submissions",
        "/results",
        "/prevalence?season=T2025",
        "/chance-of-detection?season=T2025",
        "/pictures?season=T2025",
        "/line-list?season=T2025",
        "/data-cuts",
        "/calculators",
        "/first-steps",
        "/protocol"
    };

    @Inject
    SeasonFixture season;

    @Inject
    IntakeFixture intake;

    @ParameterizedTest
    @ValueSource(ints = {PHONE, DESK})
    void everyRoomIsReadableAndReachable(int width) {
        season.ensure();
        IntakeFixture.Deer deer = intake.aDeer();
        intake.take(deer, intake.yearlingWithLeftNode(deer));
        Page page = signedIn(width, Role.COORDINATOR);
        look(page, "/animals/" + deer.kit(), "room-animal-" + width, width);
        for (String room : ROOMS) {
            look(page, room, "room-" + room.replaceAll("[/?=]+", "-") + "-" + width, width);
        }
    }

    private static void look(Page page, String path, String name, int width) {
        page.navigate(path);
        look(page, name, width);
    }
}
