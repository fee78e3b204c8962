package org.dentary.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Page;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.detection.ChanceFixture;
import org.junit.jupiter.api.Test;

/** The pictures of a season at both widths, in light, dark and grey. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PicturesBrowserTest extends Browser {
    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    @Test
    void everyPictureIsReadable() {
        String earlier = lines.season();
        String season = lines.season();
        ALine yearling = ALine.of("YEARLING", "FEMALE", "NOT_DETECTED");
        ALine adult = ALine.of("ADULT", "MALE", "NOT_DETECTED");
        int[] tested = {320, 140, 45, 8, 0};
        StringBuilder units = new StringBuilder();
        for (int i = 0; i < tested.length; i++) {
            String unit = plan.unit();
            units.append(i == 0 ? "" : ",").append(unit);
            int west = -100 + i % 3;
            int south = 45 - i / 3;
            plan.boundary(
                    unit,
                    "[%d,%d],[%d.1,%d],[%d.05,%d.9],[%d,%d],[%d,%d]"
                            .formatted(west, south, west + 1, south, west + 1, south, west, south + 1, west, south));
            plan.set(PlanSetting.HERD_SIZE, "2000", unit);
            if (tested[i] > 0) {
                lines.add(season, tested[i] / 2, adult.in(unit));
                List<String> kits = lines.add(season, tested[i] - tested[i] / 2, yearling.in(unit));
                int year = Integer.parseInt(season.substring(1));
                plan.report(kits.subList(0, kits.size() / 2), LocalDate.of(year, 1, 10), 6 + i);
                plan.report(kits.subList(kits.size() / 2, kits.size()), LocalDate.of(year, 2, 2), 14 + i);
                lines.add(earlier, 60, adult.in(unit));
            }
            if (i == 1) {
                lines.add(season, 3, ALine.of("ADULT", "MALE", "DETECTED").in(unit));
                lines.add(season, 30, ALine.of("ADULT", "MALE", "PENDING").in(unit));
            }
        }
        String path = "/pictures?season=" + season + "&unit=" + units + "&shade=";
        look(Role.EPIDEMIOLOGIST, path + "tested", "pictures");
        Page page = signedIn(DESK, Role.EPIDEMIOLOGIST);
        page.navigate(path + "chance");
        page.evaluate("document.documentElement.style.filter = 'grayscale(1)'");
        shoot(page, "pictures-grey");
        // each picture once at this width, for those who do not see it with title and words
        assertEquals(6, page.locator("figure svg[role=img]:visible").count());
    }
}
