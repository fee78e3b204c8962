package org.dentary.prevalence.cut;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.PlayedSeason;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.Test;

/** What a cut keeps beside its lines: stations' last animals, laboratories' pending. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class DataCutContextTest {
    @Inject
    LineFixture lines;

    @Inject
    EntityManager entities;

    private static RequestSpecification as(String username) {
        return given().auth()
                .preemptive()
                .basic(username, SeasonFixture.PASSWORD)
                .contentType("application/json");
    }

    private static JsonPath cut(String season, String name) {
        return as("epidemiologist")
                .body(Map.of("season", season, "name", name))
                .put("/api/v1/data-cuts/" + UUID.randomUUID())
                .then()
                .statusCode(201)
                .extract()
                .jsonPath();
    }

    @Test
    void thePageOfManyCutsTakesAsManyStatementsAsThatOfFew() {
        String few = lines.season();
        cut(few, "January");
        String many = lines.season();
        for (int month = 1; month <= 6; month++) {
            cut(many, "Month " + month);
        }
        statements(few);
        assertEquals(statements(few), statements(many));
    }

    private long statements(String season) {
        Statistics statistics =
                entities.getEntityManagerFactory().unwrap(SessionFactory.class).getStatistics();
        statistics.setStatisticsEnabled(true);
        statistics.clear();
        as("epidemiologist")
                .accept("text/html")
                .get("/data-cuts?season=" + season)
                .then()
                .statusCode(200);
        return statistics.getPrepareStatementCount();
    }

    @Test
    void aCutKeepsLastSyncPerStationAndPendingPerLaboratory() {
        String season = lines.season();
        List<String> sent = lines.add(season, 3, ALine.of("ADULT", "MALE", "PENDING"));
        lines.sent(sent, SeasonFixture.LABORATORY, "2025-11-10T12:00:00Z");
        lines.sent(sent.subList(0, 1), SeasonFixture.CONFIRMING_LABORATORY, "2025-11-20T12:00:00Z");
        // Suspect, not released, sent on to be confirmed after that was known: must look as if nothing had happened.
        List<String> suspect =
                lines.add(season, 1, ALine.of("ADULT", "MALE", "PENDING").derived("SUSPECT"));
        lines.sent(suspect, SeasonFixture.LABORATORY, "2025-11-10T12:00:00Z");
        lines.sent(suspect, SeasonFixture.CONFIRMING_LABORATORY, "2999-01-01T12:00:00Z");
        lines.add(season, 2, ALine.of("ADULT", "FEMALE", "PENDING"));
        lines.add(season, 5, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        lines.add(season, 1, ALine.of("ADULT", "FEMALE", "PENDING").excluded("DUPLICATE"));
        JsonPath made = cut(season, "First");
        Map<String, Object> station =
                made.getMap("context.stations.find { it.station == '" + SeasonFixture.STATION + "' }");
        assertEquals(12, station.get("animals"));
        assertNotNull(station.get("lastReceivedAt"));
        Map<String, Object> silent =
                made.getMap("context.stations.find { it.station == '" + SeasonFixture.WESTERN_STATION + "' }");
        assertEquals(0, silent.get("animals"));
        assertNull(silent.get("lastReceivedAt"));
        // The one sent on to the confirming laboratory is pending there, and once.
        assertEquals(3, pending(made, "'" + SeasonFixture.LABORATORY + "'"));
        assertEquals(1, pending(made, "'" + SeasonFixture.CONFIRMING_LABORATORY + "'"));
        assertEquals(2, pending(made, "null"));
        assertEquals(
                6,
                made.<Integer>getList("context.laboratories.animals").stream()
                        .mapToInt(n -> n)
                        .sum());
        // The cut keeps it: what happens later shows on the next one.
        lines.revise(sent, "NOT_DETECTED");
        JsonPath later = cut(season, "Second");
        assertEquals(List.of(2, 1), later.getList("context.laboratories.animals"));
        String first = "items.find { it.name == 'First' }";
        JsonPath list = as("auditor").get("/api/v1/data-cuts?season=" + season).jsonPath();
        assertEquals(3, list.getList(first + ".context.laboratories").size());
        as("epidemiologist")
                .accept("text/html")
                .get("/data-cuts?season=" + season)
                .then()
                .statusCode(200)
                .body(containsString("Last animal received"))
                .body(containsString("Not sent yet"))
                .body(containsString("Test laboratory"));
    }

    @Test
    void anAnimalPendingForTwoDiseasesIsOneAnimal() {
        String season = lines.season();
        List<String> kits = lines.add(season, 2, ALine.of("ADULT", "MALE", "PENDING"));
        lines.sent(kits.subList(0, 1), SeasonFixture.LABORATORY, "2025-11-10T12:00:00Z");
        QuarkusTransaction.requiringNew().run(() -> {
            entities.createNativeQuery("insert into disease (code, name, position)"
                            + " values (:code, 'Second disease', 903) on conflict do nothing")
                    .setParameter("code", PlayedSeason.SECOND_DISEASE)
                    .executeUpdate();
            entities.createNativeQuery("""
                            insert into line (kit, disease, season, species, origin, sex, sex_evidence, age_class, age_disputed,
                                   unit, region, station, died_on, mortality_source, collection_route, clinical_signs,
                                   sampling_basis, has_specimen, derived_outcome, outcome, exclusion, cause, opened_at)
                            select kit, :code, season, species, origin, sex, sex_evidence, age_class, age_disputed, unit,
                                   region, station, died_on, mortality_source, collection_route, clinical_signs,
                                   sampling_basis, has_specimen, derived_outcome, outcome, exclusion, cause, opened_at
                              from line where kit in (:kits)
                            """)
                    .setParameter("code", PlayedSeason.SECOND_DISEASE)
                    .setParameter("kits", kits)
                    .executeUpdate();
        });
        JsonPath made = cut(season, "Both");
        assertEquals(4, made.getInt("lines"));
        assertEquals(1, pending(made, "'" + SeasonFixture.LABORATORY + "'"));
        assertEquals(1, pending(made, "null"));
    }

    private static int pending(JsonPath cut, String laboratory) {
        return cut.getInt("context.laboratories.find { it.laboratory == " + laboratory + " }.animals");
    }
}
