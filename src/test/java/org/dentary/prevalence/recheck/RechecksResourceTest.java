package org.dentary.prevalence.recheck;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.answer.StoredAnswerService;
import org.dentary.prevalence.detection.ChanceFixture;
import org.junit.jupiter.api.Test;

/** Stored answers computed again: untouched ones agree, one that was stored with another number is found. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class RechecksResourceTest {
    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture plan;

    @Inject
    EntityManager entities;

    @Inject
    RecheckService checks;

    private static RequestSpecification as(String username) {
        return given().auth()
                .preemptive()
                .basic(username, SeasonFixture.PASSWORD)
                .contentType("application/json");
    }

    private static String cut(String season, String name) {
        String id = UUID.randomUUID().toString();
        as("epidemiologist")
                .body(Map.of("season", season, "name", name))
                .put("/api/v1/data-cuts/" + id)
                .then()
                .statusCode(201);
        return id;
    }

    /** What a fresh check says of one cut. */
    private static List<Map<String, String>> found(String id, String cutName) {
        as("epidemiologist").put("/api/v1/data-cuts/rechecks/" + id).then().statusCode(201);
        return as("auditor")
                .get("/api/v1/data-cuts/rechecks/" + id)
                .jsonPath()
                .getList("figures.findAll { it.cut == '" + cutName + "' }");
    }

    @Test
    void namesTheNumberThatMovedAndLeavesTheAnswerAsItWas() {
        String season = lines.season();
        lines.add(season, 40, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.add(season, 3, ALine.of("ADULT", "MALE", "DETECTED"));
        String name = "Moved " + UUID.randomUUID();
        String cut = cut(season, name);
        String address = "/api/v1/prevalence?season=" + season + "&cut=" + cut;
        String json = as("epidemiologist").get(address).asString();
        as("epidemiologist").accept("text/csv").get(address).then().statusCode(200);
        assertEquals(List.of(), found(UUID.randomUUID().toString(), name), "an untouched answer agrees");

        // As an earlier release would have stored it: the same question by sex, one animal more detected.
        String other = as("epidemiologist").get(address + "&by=sex").asString();
        String wrong = other.replace("\"detected\":3,", "\"detected\":4,");
        assertFalse(wrong.equals(other));
        String third = cut(season, name + " third");
        store(third, "{\"by\":[\"sex\"]", wrong, StoredAnswerService.digest(wrong), cut);
        String check = UUID.randomUUID().toString();
        List<Map<String, String>> found = found(check, name + " third");
        assertTrue(
                found.stream()
                        .anyMatch(f -> f.get("figure").equals("cells: MALE: detected")
                                && f.get("stored").equals("4")
                                && f.get("computed").equals("3")),
                found.toString());
        assertTrue(found.stream().allMatch(f -> f.get("figure").contains("detected")), found.toString());
        assertEquals(json, as("epidemiologist").get(address).asString());
        as("epidemiologist").put("/api/v1/data-cuts/rechecks/" + check).then().statusCode(200);
        as("auditor")
                .get("/api/v1/data-cuts/rechecks/" + check + ".csv")
                .then()
                .statusCode(200)
                .contentType("text/csv")
                .body(containsString("cells: MALE: detected,4,3"));
        as("epidemiologist")
                .accept("text/html")
                .get("/data-cuts/rechecks?check=" + check)
                .then()
                .statusCode(200)
                .body(containsString("cells: MALE: detected"));
        as("liaison")
                .put("/api/v1/data-cuts/rechecks/" + UUID.randomUUID())
                .then()
                .statusCode(403);
        as("sampler").get("/api/v1/data-cuts/rechecks").then().statusCode(403);
    }

    @Test
    void everyKindOfStoredAnswerIsComputedAgain() {
        String unit = plan.unit();
        String season = lines.season();
        String other = lines.season();
        lines.add(other, 50, ALine.of("ADULT", "FEMALE", "NOT_DETECTED").in(unit));
        lines.add(season, 40, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(unit));
        plan.report(
                lines.add(season, 3, ALine.of("ADULT", "FEMALE", "DETECTED").in(unit)),
                LocalDate.of(Integer.parseInt(season.substring(1)), 2, 2),
                6);
        String name = "Kinds " + UUID.randomUUID();
        String cut = cut(season, name);
        String with = cut(other, name + " other");
        String asked = "?season=" + season + "&unit=" + unit + "&cut=" + cut;
        JsonPath before = checked();
        List<String> addresses = List.of(
                "prevalence" + asked,
                "prevalence.csv" + asked,
                "chance-of-detection" + asked,
                "comparisons" + asked + "&with=" + with + "&ageFawn=0.5&ageYearling=1.5&ageAdult=4",
                "comparisons.csv" + asked + "&with=" + with + "&ageFawn=0.5&ageYearling=1.5&ageAdult=4",
                "pictures/weeks.csv" + asked,
                "pictures/map.csv" + asked,
                "pictures/seasons.csv" + asked,
                "pictures/turnaround.csv" + asked);
        addresses.forEach(
                address -> as("epidemiologist").get("/api/v1/" + address).then().statusCode(200));
        JsonPath after = checked();
        assertEquals(before.getInt("unchecked"), after.getInt("unchecked"), "none is passed over");
        assertEquals(before.getInt("answers") + addresses.size(), after.getInt("answers"));
        assertEquals(List.of(), after.getList("figures.findAll { it.cut == '" + name + "' }"));

        // One animal fewer than was answered, in each kind: as a faulty release would compute it.
        List<String> kinds = List.of("chance-of-detection", "comparisons", "picture");
        kinds.forEach(kind -> spoil(cut, cut(season, name + " " + kind), kind));
        JsonPath spoiled = checked();
        for (String kind : kinds) {
            List<Map<String, String>> found =
                    spoiled.getList("figures.findAll { it.cut == '" + name + " " + kind + "' }");
            assertTrue(
                    found.stream().anyMatch(f -> "44".equals(f.get("stored")) && "43".equals(f.get("computed"))),
                    kind + ": " + found);
        }
    }

    private static JsonPath checked() {
        return as("epidemiologist")
                .put("/api/v1/data-cuts/rechecks/" + UUID.randomUUID())
                .then()
                .statusCode(201)
                .extract()
                .jsonPath();
    }

    /** Stores the JSON answers of a kind on another cut, 44 animals where there are 43. */
    private void spoil(String from, String to, String kind) {
        QuarkusTransaction.requiringNew().run(() -> {
            List<?> rows = entities.createNativeQuery("""
                            select question, answer from report_answer where cut = :cut
                               and media_type = 'application/json' and question like '%"report":"' || :kind || '"%'
                            """)
                    .setParameter("cut", UUID.fromString(from))
                    .setParameter("kind", kind)
                    .getResultList();
            assertFalse(rows.isEmpty(), kind);
            for (Object row : rows) {
                Object[] stored = (Object[]) row;
                String answer = stored[1].toString().replace(":43,", ":44,").replace(":43}", ":44}");
                entities.createNativeQuery("""
                                insert into report_answer (cut, question, media_type, answer, digest, rule_version,
                                       answered_at)
                                values (:cut, :question, 'application/json', :answer, :digest, '1', now())
                                """)
                        .setParameter("cut", UUID.fromString(to))
                        .setParameter("question", stored[0])
                        .setParameter("answer", answer)
                        .setParameter("digest", StoredAnswerService.digest(answer))
                        .executeUpdate();
            }
        });
    }

    @Test
    void bytesThatWereTamperedWithAreFoundByTheirDigest() {
        String season = lines.season();
        lines.add(season, 12, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String name = "Tampered " + UUID.randomUUID();
        String source = cut(season, name + " source");
        String answer = as("epidemiologist")
                .get("/api/v1/prevalence?season=" + season + "&by=sex&cut=" + source)
                .asString();
        String cut = cut(season, name);
        store(cut, "{\"by\":[\"sex\"]", answer.replace(source, cut), "00", source);
        assertTrue(found(UUID.randomUUID().toString(), name).stream()
                .anyMatch(f -> f.get("figure").equals("the stored bytes (SHA-256)")
                        && f.get("stored").equals("00")));
    }

    @Test
    void anAnswerOfAnotherKindOfReportIsCountedAsNotChecked() {
        String season = lines.season();
        String cut = cut(season, "Other kind " + UUID.randomUUID());
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("""
                        insert into report_answer (cut, question, media_type, answer, digest, rule_version, answered_at)
                        values (:cut, '{"kind":"other"}', 'application/json', '{}', :digest, '1', now())
                        """)
                        .setParameter("cut", UUID.fromString(cut))
                        .setParameter("digest", StoredAnswerService.digest("{}"))
                        .executeUpdate());
        JsonPath check = as("epidemiologist")
                .put("/api/v1/data-cuts/rechecks/" + UUID.randomUUID())
                .then()
                .statusCode(201)
                .extract()
                .jsonPath();
        assertTrue(check.getInt("unchecked") >= 1);
        as("epidemiologist")
                .get("/api/v1/data-cuts/rechecks/" + UUID.randomUUID())
                .then()
                .statusCode(404)
                .body("code", equalTo("RECHECK_UNKNOWN"));
    }

    @Test
    void afterAnUpgradeItChecksOnceByItself() {
        lines.season();
        int before = checksMade();
        checks.afterAnUpgrade();
        int after = checksMade();
        // Another test may have checked this release already; then there is nothing to do.
        assertEquals(Math.max(1, before), after);
        checks.afterAnUpgrade();
        assertEquals(after, checksMade(), "not a second time for the same release");
    }

    private static int checksMade() {
        return as("auditor")
                .get("/api/v1/data-cuts/rechecks")
                .jsonPath()
                .getList("items")
                .size();
    }

    /** Stores an answer to the question that another cut was asked, as if it had been the first. */
    private void store(String cut, String questionStart, String answer, String digest, String askedOf) {
        QuarkusTransaction.requiringNew()
                .run(() -> assertEquals(
                        1,
                        entities.createNativeQuery("""
                                insert into report_answer (cut, question, media_type, answer, digest, rule_version, answered_at)
                                select :cut, question, media_type, :answer, :digest, '1', now() from report_answer
                                 where cut = :source and question like :start || '%' and media_type = 'application/json'
                                """)
                                .setParameter("cut", UUID.fromString(cut))
                                .setParameter("source", UUID.fromString(askedOf))
                                .setParameter("start", questionStart)
                                .setParameter("answer", answer)
                                .setParameter("digest", digest)
                                .executeUpdate()));
    }
}
