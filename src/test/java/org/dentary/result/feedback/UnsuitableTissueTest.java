package org.dentary.result.feedback;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** How often tissue could not be read; each test's deer are taken by somebody of its own. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class UnsuitableTissueTest {
    @Inject
    FindingsFixture laboratory;

    @Inject
    LineFixture lines;

    @Inject
    EntityManager entities;

    private String taker;

    @BeforeEach
    void setUp() {
        taker = "P_" + UUID.randomUUID().toString().substring(0, 8);
    }

    @Test
    void onlyReasonsOfTissueCountAndWhatWasReadInTheEndDoesNot() {
        for (int i = 0; i < 7; i++) {
            laboratory.finds(taken(), "SCREENING", "NOT_DETECTED", null).statusCode(201);
        }
        laboratory.finds(taken(), "SCREENING", "UNSUITABLE", "AUTOLYSED").statusCode(201);
        laboratory.finds(taken(), "SCREENING", "UNSUITABLE", "WRONG_TISSUE").statusCode(201);
        laboratory.finds(taken(), "SCREENING", "NOT_TESTED", "NO_PAPERWORK").statusCode(201);
        Deer again = taken();
        laboratory.finds(again, "SCREENING", "UNSUITABLE", "INSUFFICIENT").statusCode(201);
        laboratory.finds(again, "REPEAT", "NOT_DETECTED", null).statusCode(201);
        Map<String, Object> rate = rateOfTaker();
        assertEquals(2, rate.get("unsuitable"));
        assertEquals(10, rate.get("reported"));
        // Wilson (1927), 2 of 10 at 95 %: R 4.2.2, prop.test(2, 10, correct = FALSE)
        as("liaison")
                .get("/api/v1/unsuitable-tissue?by=PERSON")
                .then()
                .body("items.find { it.group == '" + taker + "' }.lower.doubleValue()", closeTo(0.056682151, 5e-7))
                .body("items.find { it.group == '" + taker + "' }.upper.doubleValue()", closeTo(0.509837528, 5e-7));
    }

    @Test
    void theFileHoldsEverySpecimenAndThePageTheFirst() {
        String season = lines.season();
        List<String> kits = lines.add(season, 502, ALine.of("ADULT", "MALE", "UNSUITABLE"));
        QuarkusTransaction.requiringNew()
                .run(() -> List.of("""
                        insert into label (code, part, kit_printed, kit_bound) select kit || 'N1', 'NODES', kit, kit
                          from unnest(:kits) kit
                        """, """
                        insert into specimen (code, tissue, side, condition, preservation, collected_at, collected_by,
                               recorded_by, recorded_at)
                        select kit || 'N1', 'MEDIAL_RETROPHARYNGEAL_NODE', 'BOTH', 'GOOD', 'FROZEN', now(), 'test', 'test', now()
                          from unnest(:kits) kit
                        """, """
                        insert into finding (id, method, disease, stage, finding, status, laboratory, accession, item, tested_on,
                               reported_on, reason, pool, recorded_by, recorded_at)
                        select cast(md5(kit) as uuid), 'T_SCREEN', 'CWD', 'SCREENING', 'UNSUITABLE', 'FINAL', 'T_LAB', kit, '1',
                               date '2026-01-02', date '2026-01-03', 'AUTOLYSED', false, 'test', now() from unnest(:kits) kit
                        """, """
                        insert into finding_specimen (finding, code) select cast(md5(kit) as uuid), kit || 'N1'
                          from unnest(:kits) kit
                        """)
                        .forEach(sql -> entities.createNativeQuery(sql)
                                .setParameter("kits", kits.toArray(String[]::new))
                                .executeUpdate()));
        String file = as("liaison")
                .get("/unsuitable-tissue/specimens.csv?season=" + season)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertEquals(kits.size() + 1, file.lines().count());
        List<String> leafed = new ArrayList<>();
        String next = "/unsuitable-tissue?season=" + season;
        while (next != null) {
            String page = as("liaison")
                    .accept("text/html")
                    .get(next)
                    .then()
                    .statusCode(200)
                    .extract()
                    .asString();
            Pattern.compile("href=\"/animals/(\\w+)\"")
                    .matcher(page)
                    .results()
                    .forEach(row -> leafed.add(row.group(1)));
            Matcher link = Pattern.compile("after=([\\w-]+)#").matcher(page);
            next = link.find() ? "/unsuitable-tissue?season=" + season + "&after=" + link.group(1) : null;
        }
        assertEquals(kits.size(), leafed.size());
        assertEquals(Set.copyOf(kits), Set.copyOf(leafed));
        String list = "/api/v1/unsuitable-tissue/specimens?season=" + season + "&limit=";
        as("liaison")
                .get(list + kits.size())
                .then()
                .body("items", hasSize(kits.size()))
                .header("Link", nullValue());
        as("liaison").get(list + (kits.size() - 1)).then().header("Link", containsString("rel=\"next\""));
        as("liaison").get(list + "1&after=moon").then().statusCode(422);
    }

    @Test
    void anAnimalThatIsNotReleasedChangesNothing() {
        laboratory.finds(taken(), "SCREENING", "NOT_DETECTED", null).statusCode(201);
        Map<String, Object> before = rateOfTaker();
        Deer suspect = taken();
        laboratory.finds(suspect, "SCREENING", "SUSPECT", null).statusCode(201);
        assertEquals(before, rateOfTaker(), "a suspect is not counted");
        laboratory.finds(suspect, "CONFIRMATORY", "DETECTED", null).statusCode(201);
        assertEquals(before, rateOfTaker(), "nor a detection before its release");
        laboratory.releases(suspect).statusCode(201);
        assertEquals(2, rateOfTaker().get("reported"));
    }

    @Test
    void tissueIsToldApartByHowSoonItWasFixed() {
        Deer deer = taken();
        sql("insert into specimen_preservation (code, preservation, since, by_actor) values ('"
                + deer.label(Part.NODE_LEFT) + "', 'FORMALIN', '2025-11-16T12:00:00-06:00', 'T_LIAISON')");
        laboratory.finds(deer, "SCREENING", "UNSUITABLE", "AUTOLYSED").statusCode(201);
        as("epidemiologist")
                .get("/api/v1/unsuitable-tissue?by=DAYS_TO_FIXATION")
                .then()
                .statusCode(200)
                .body("items.group.contains('2-3')", equalTo(true));
        for (Grouping by : Grouping.values()) {
            as("auditor")
                    .accept("text/csv")
                    .get("/api/v1/unsuitable-tissue?by=" + by)
                    .then()
                    .statusCode(200)
                    .body(containsString("group,unsuitable,reported"));
        }
        as("auditor").get("/api/v1/unsuitable-tissue?by=MOON").then().statusCode(422);
    }

    @Test
    void aSamplerSeesOnlyWhatTheyTook() {
        Deer others = taken();
        laboratory.finds(others, "SCREENING", "UNSUITABLE", "AUTOLYSED").statusCode(201);
        Deer own = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        laboratory.finds(own, "SCREENING", "UNSUITABLE", "NO_FOLLICLES").statusCode(201);
        as("sampler")
                .get("/api/v1/unsuitable-tissue?by=PERSON")
                .then()
                .body("items.group", equalTo(List.of("T_SAMPLER")))
                .body("own", equalTo(true));
        String specimens =
                as("sampler").get("/api/v1/unsuitable-tissue/specimens").asString();
        assertFalse(specimens.contains(others.label(Part.NODE_LEFT)), specimens);
        as("sampler")
                .get("/unsuitable-tissue")
                .then()
                .statusCode(200)
                .body(containsString("you took"), containsString("No follicles"));
        as("notifier").get("/api/v1/unsuitable-tissue").then().statusCode(403);
    }

    private Deer taken() {
        Deer deer = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        sql("update specimen set collected_by = '" + taker + "' where code = '" + deer.label(Part.NODE_LEFT) + "'");
        return deer;
    }

    private Map<String, Object> rateOfTaker() {
        List<Map<String, Object>> items = as("liaison")
                .get("/api/v1/unsuitable-tissue?by=PERSON")
                .then()
                .statusCode(200)
                .extract()
                .path("items");
        return items.stream()
                .filter(one -> taker.equals(one.get("group")))
                .findFirst()
                .orElse(Map.of());
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
