package org.dentary.prevalence.detection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.Test;

/** The list at home is counted once in a while, not with every page, and says when. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class TakeNextBoardTest {
    private static final Duration KEPT = Duration.ofMinutes(5);

    @Inject
    ChanceService chances;

    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    @Inject
    EntityManager entities;

    private Instant now = Instant.parse("2026-11-25T12:00:00Z");

    private final Clock clock = new Clock() {
        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    };

    @Test
    void withinItsTimeNothingIsReadAndAfterItEverythingIsNew() {
        String unit = plan.unit();
        String season = lines.season();
        lines.add(season, 10, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(unit));
        TakeNextBoard board = new TakeNextBoard(chances, clock, KEPT);
        TakeNextBoard.Board first = board.of(season);
        assertEquals(304, more(first, unit));
        assertEquals(now, first.asOf());

        lines.add(season, 4, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(unit));
        Statistics statistics =
                entities.getEntityManagerFactory().unwrap(SessionFactory.class).getStatistics();
        statistics.setStatisticsEnabled(true);
        now = now.plus(KEPT).minusSeconds(1);
        statistics.clear();
        assertSame(first, board.of(season));
        assertEquals(0, statistics.getPrepareStatementCount());

        now = now.plusSeconds(1);
        TakeNextBoard.Board second = board.of(season);
        assertEquals(300, more(second, unit));
        assertEquals(now, second.asOf());
        assertTrue(statistics.getPrepareStatementCount() > 0);
    }

    @Test
    void whereThePlanDoesNotAllowTheFiguresTheListIsEmpty() {
        String unit = plan.unit();
        String season = lines.season();
        plan.set(PlanSetting.TEST_SENSITIVITY_MEANS, "RELATIVE", unit);
        lines.add(season, 10, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(unit));
        try {
            assertTrue(
                    new TakeNextBoard(chances, clock, KEPT).of(season).items().isEmpty());
        } finally {
            plan.set(PlanSetting.TEST_SENSITIVITY_MEANS, "ANIMAL_LEVEL", unit);
        }
    }

    private static int more(TakeNextBoard.Board board, String unit) {
        return board.items().stream()
                .filter(next -> next.unit().equals(unit))
                .findFirst()
                .orElseThrow()
                .choices()
                .get(0)
                .more();
    }
}
