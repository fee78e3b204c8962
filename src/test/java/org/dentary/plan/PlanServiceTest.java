package org.dentary.plan;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.problem.NotFound;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PlanServiceTest {
    @Inject
    SeasonFixture season;

    @Inject
    PlanService plan;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        season.ensure();
        season.ensure();
    }

    @Test
    void findsTheSeasonOfADayAtBothEnds() {
        assertEquals(
                "T2026", plan.seasonOn(LocalDate.of(2026, 9, 1)).orElseThrow().code());
        assertEquals(
                "T2025", plan.seasonOn(LocalDate.of(2026, 8, 31)).orElseThrow().code());
        assertEquals(
                "T2026", plan.seasonOn(LocalDate.of(2027, 8, 31)).orElseThrow().code());
        assertTrue(plan.seasonOn(LocalDate.of(1802, 1, 1)).isEmpty());
    }

    @Test
    void aStationKnowsItsRegionAndZone() {
        StationView station = plan.station(SeasonFixture.WESTERN_STATION);
        assertEquals("T_SOUTH", station.region());
        assertEquals("America/Denver", station.zone().getId());
        assertThrows(NotFound.class, () -> plan.station("NOWHERE"));
    }

    @Test
    void aMethodNamesTheTissuesOnWhichItCounts() {
        assertEquals(
                List.of("MEDIAL_RETROPHARYNGEAL_NODE", "OBEX"),
                plan.method(SeasonFixture.SCREENING_METHOD).acceptedTissues());
    }

    @Test
    void acceptanceHoldsFromItsDayOn() {
        assertTrue(plan.acceptance(SeasonFixture.LABORATORY, LocalDate.of(2024, 12, 31))
                .isEmpty());
        assertEquals(
                4,
                plan.acceptance(SeasonFixture.LABORATORY, LocalDate.of(2025, 1, 1))
                        .size());
        assertTrue(plan.acceptance().size() >= 6);
    }

    @Test
    void ofRulesForTheSamePieceTheNewestInForceRules() {
        String laboratory = "P" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(java.util.Locale.ROOT);
        QuarkusTransaction.requiringNew().run(() -> {
            entities.createNativeQuery("insert into laboratory (code, name, position) values ('" + laboratory
                            + "', 'Laboratory " + laboratory + "', 95)")
                    .executeUpdate();
            entities.createNativeQuery(
                            "insert into laboratory_acceptance (laboratory, method, tissue, preservation, side,"
                                    + " max_days, in_force_from, in_force_to) values"
                                    + " ('" + laboratory
                                    + "', 'T_SCREEN', 'OBEX', 'FROZEN', null, 14, '2025-01-01', null),"
                                    + " ('" + laboratory
                                    + "', 'T_SCREEN', 'OBEX', 'FROZEN', null, 5, '2025-06-01', '2025-06-30'),"
                                    + " ('" + laboratory
                                    + "', 'T_SCREEN', 'OBEX', 'FROZEN', 'LEFT', 9, '2025-01-01', null)")
                    .executeUpdate();
        });
        assertEquals(List.of(5, 9), days(laboratory, LocalDate.of(2025, 6, 30)));
        assertEquals(List.of(9, 14), days(laboratory, LocalDate.of(2025, 5, 31)));
        assertEquals(List.of(9, 14), days(laboratory, LocalDate.of(2025, 7, 1)), "its days are over");
    }

    private List<Integer> days(String laboratory, LocalDate on) {
        return plan.acceptance(laboratory, on).stream()
                .map(AcceptanceView::maxDays)
                .sorted()
                .toList();
    }

    @Test
    void everyListHasItsUnitOfReading() {
        assertEquals(
                3,
                plan.boundaries().stream()
                        .filter(b -> b.unit().startsWith("T_UNIT"))
                        .count());
        assertTrue(plan.regions().size() >= 2);
        assertEquals("T_NORTH", plan.unit(SeasonFixture.UNIT).region());
        assertEquals(10, plan.laboratory(SeasonFixture.LABORATORY).turnaroundDays());
        assertEquals(false, plan.species(SeasonFixture.SPECIES_WITHOUT_KEY).keyReviewed());
        assertEquals("0.10", plan.setting(PlanSetting.PENDING_SHARE_INCOMPLETE, SeasonFixture.SEASON, null, null));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "seasons",
                "stations",
                "management-units",
                "laboratories",
                "test-methods",
                "diseases",
                "species",
                "persons"
            })
    void theSetUpListsHaveCodeAndName(String list) {
        given().auth()
                .preemptive()
                .basic("auditor", SeasonFixture.PASSWORD)
                .get("/api/v1/" + list)
                .then()
                .statusCode(200)
                .body("items[0].code", notNullValue())
                .body("items[0].name", notNullValue());
        given().get("/api/v1/" + list).then().statusCode(401);
    }

    @Test
    void seasonsComeOldestFirst() {
        List<String> codes = given().auth()
                .preemptive()
                .basic("sampler", SeasonFixture.PASSWORD)
                .get("/api/v1/seasons")
                .then()
                .body("items.find { it.code == 'T2026' }.startsOn", equalTo("2026-09-01"))
                .body("items.state", hasItem("OPEN"))
                .extract()
                .path("items.code");
        assertTrue(codes.indexOf("T2025") < codes.indexOf("T2026"));
    }
}
