package org.dentary.prevalence.cut;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

/** Cuts made while animals come in and results are revised: each is of one moment and stays so. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CutsUnderWritesTest {
    private static final int CUTS = 6;
    /** Each writer adds so many animals in one transaction, so a cut has a whole number of them or it was torn. */
    private static final int AT_ONCE = 7;

    @Inject
    LineFixture lines;

    private static RequestSpecification as(String username) {
        return given().auth()
                .preemptive()
                .basic(username, SeasonFixture.PASSWORD)
                .contentType("application/json");
    }

    @Test
    void aCutIsOfOneMomentAndStaysEqualWhileOthersWrite() throws Exception {
        String season = lines.season();
        AtomicBoolean going = new AtomicBoolean(true);
        ExecutorService writers = Executors.newFixedThreadPool(3);
        List<Future<?>> running = new ArrayList<>();
        for (int writer = 0; writer < 2; writer++) {
            running.add(writers.submit(() -> {
                while (going.get()) {
                    List<String> kits = lines.add(season, AT_ONCE, ALine.of("ADULT", "MALE", "PENDING"));
                    lines.revise(kits, "NOT_DETECTED");
                }
            }));
        }
        Map<String, String> answers = new TreeMap<>();
        Set<Long> sizes = new TreeSet<>();
        // However slow the writers are, the last cuts are made after they wrote.
        for (int made = 0; made < CUTS || sizes.size() < 2 && running.stream().noneMatch(Future::isDone); made++) {
            String id = UUID.randomUUID().toString();
            long held = as("epidemiologist")
                    .body(Map.of("season", season, "name", "Cut " + made))
                    .put("/api/v1/data-cuts/" + id)
                    .then()
                    .statusCode(201)
                    .extract()
                    .jsonPath()
                    .getLong("lines");
            String answer = answer(season, id);
            JsonPath report = JsonPath.from(answer);
            assertEquals(held, report.getLong("takenToCounted.find { it.step == 'TAKEN' }.animals"));
            assertEquals(0, held % AT_ONCE, "no transaction is in a cut by halves");
            assertEquals(0, report.getInt("total.pending") % AT_ONCE);
            assertEquals(held, report.getLong("total.pending") + report.getLong("total.counted"));
            answers.put(id, answer);
            sizes.add(held);
        }
        going.set(false);
        writers.shutdown();
        assertTrue(writers.awaitTermination(60, TimeUnit.SECONDS));
        for (Future<?> done : running) {
            done.get();
        }
        assertTrue(sizes.size() > 1, "others wrote between the cuts");
        answers.forEach((cut, answer) -> assertEquals(answer, answer(season, cut)));
        // And computed again from the lines that each cut holds, no number moves.
        String check = UUID.randomUUID().toString();
        as("epidemiologist").put("/api/v1/data-cuts/rechecks/" + check).then().statusCode(201);
        JsonPath found =
                as("epidemiologist").get("/api/v1/data-cuts/rechecks/" + check).jsonPath();
        assertEquals(
                List.of(),
                found.getList(
                        "figures.findAll { it.cut.startsWith('Cut ') && it.question.contains('" + season + "') }"));
    }

    private static String answer(String season, String cut) {
        return as("epidemiologist")
                .get("/api/v1/prevalence?season=" + season + "&by=sex&cut=" + cut)
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }
}
