package org.dentary.browser;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.Role;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.detection.ChanceFixture;
import org.junit.jupiter.api.Test;

/** The page of the chance of detection with a unit in every state, at both widths, in light and dark. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ChanceBrowserTest extends Browser {
    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    @Test
    void everyStateIsReadable() {
        String season = lines.season();
        ALine yearling = ALine.of("YEARLING", "FEMALE", "NOT_DETECTED");
        ALine adult = ALine.of("ADULT", "MALE", "NOT_DETECTED");
        String reached = plan.unit();
        String short_ = plan.unit();
        String detected = plan.unit();
        String weighted = plan.unit();
        String nobody = plan.unit();
        plan.station(short_);
        plan.set(PlanSetting.HERD_SIZE, "2400", short_);
        lines.add(season, 200, yearling.in(reached));
        lines.add(season, 150, adult.in(reached));
        lines.add(season, 22, adult.in(short_));
        lines.add(season, 6, ALine.of("ADULT", "MALE", "PENDING").in(short_));
        lines.add(season, 40, yearling.in(detected));
        lines.add(season, 2, ALine.of("ADULT", "MALE", "DETECTED").in(detected));
        lines.add(season, 40, adult.in(weighted));
        plan.weight("W_" + weighted, "ADULT", "MALE", "HUNTER_HARVEST", 2.5);
        plan.weight("W_" + weighted, "ADULT", "FEMALE", "HUNTER_HARVEST", 1);
        plan.set(PlanSetting.RISK_WEIGHT_SET, "W_" + weighted, weighted);
        look(
                Role.EPIDEMIOLOGIST,
                "/chance-of-detection?season=" + season + "&unit="
                        + String.join(",", reached, short_, detected, weighted, nobody),
                "chance");
        look(Role.SAMPLER, "/", "chance-home");
    }
}
