package org.dentary.prevalence.question;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.dentary.SeasonFixture;
import org.dentary.plan.PlanClock;
import org.dentary.plan.PlanService;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.cut.DataCutService;
import org.junit.jupiter.api.Test;

/** What a page asks that was opened without a question. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class QuestionFormsTest {
    @Inject
    PlanService plan;

    @Inject
    DataCutService cuts;

    @Inject
    PlanClock zone;

    @Inject
    SeasonFixture seasons;

    /** A season begins on the stations' day, hours after that of Greenwich. */
    @Test
    void theSeasonIsThatOfTheStationsDayAndNotOfGreenwich() {
        seasons.ensure();
        Instant begins = LocalDate.of(2026, 9, 1).atStartOfDay(zone.zone()).toInstant();
        assertEquals(List.of(SeasonFixture.EARLIER_SEASON), opened(begins.minusSeconds(1)));
        assertEquals(List.of(SeasonFixture.SEASON), opened(begins));
    }

    private List<String> opened(Instant at) {
        Clock clock = Clock.fixed(at, ZoneOffset.UTC);
        return new QuestionForms(plan, cuts, zone, clock).asked(Map.of()).get("season");
    }
}
