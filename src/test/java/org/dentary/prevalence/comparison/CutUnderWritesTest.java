package org.dentary.prevalence.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.comparison.ClassFixture.Class;
import org.junit.jupiter.api.Test;

/** Reports on a cut are the same, byte for byte, while animals come in, outcomes are corrected and labels put right. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CutUnderWritesTest {
    @Inject
    LineFixture lines;

    @Inject
    ClassFixture classes;

    @Test
    void everyAnswerOnTheCutIsTheSameByteForByteWhileOthersWrite() throws Exception {
        String season = classes.season(List.of(new Class("ADULT", "FEMALE", 6, 60), new Class("FAWN", "MALE", 1, 40)));
        List<String> corrected = lines.add(season, 20, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        List<String> relabeled = lines.add(season, 20, ALine.of("YEARLING", "MALE", "NOT_DETECTED"));
        String cut = classes.cut(season, "Before all this");
        List<String> addresses = new ArrayList<>();
        // Questions that were never asked before the writing began are computed from the cut while it goes on.
        for (String interval : List.of("WILSON", "CLOPPER_PEARSON", "JEFFREYS", "BLAKER", "MID_P")) {
            addresses.add("/api/v1/prevalence?season=" + season + "&cut=" + cut + "&interval=" + interval);
        }
        addresses.add("/api/v1/comparisons?season=" + season + "&cut=" + cut);
        String liveBefore = counts(season, "");
        String onCut = counts(season, "&cut=" + cut);
        AtomicBoolean stop = new AtomicBoolean();
        AtomicInteger written = new AtomicInteger();
        ExecutorService writers = Executors.newFixedThreadPool(3);
        List<Future<?>> all = List.of(
                writers.submit(() ->
                        repeat(stop, written, n -> lines.add(season, 3, ALine.of("ADULT", "MALE", "DETECTED")))),
                writers.submit(() ->
                        repeat(stop, written, n -> lines.revise(corrected, n % 2 == 0 ? "DETECTED" : "NOT_DETECTED"))),
                // What a swapped label does to its animals' lines: their outcome goes back to pending, then is another.
                writers.submit(() ->
                        repeat(stop, written, n -> lines.revise(relabeled, n % 2 == 0 ? "PENDING" : "DETECTED"))));
        List<String> first = new ArrayList<>();
        for (int round = 0; round < 8 || written.get() < 6 && all.stream().noneMatch(Future::isDone); round++) {
            List<String> answers = new ArrayList<>();
            for (String address : addresses) {
                answers.add(ClassFixture.as("epidemiologist")
                        .get(address)
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString());
                answers.add(ClassFixture.as("epidemiologist")
                        .accept("text/csv")
                        .get(address)
                        .asString());
            }
            if (round == 0) {
                first.addAll(answers);
            }
            assertEquals(first, answers, "round " + round);
        }
        stop.set(true);
        for (Future<?> one : all) {
            one.get();
        }
        writers.shutdown();
        assertEquals(onCut, counts(season, "&cut=" + cut + "&confidence=0.9"), "a new question finds the old counts");
        assertNotEquals(liveBefore, counts(season, ""), "the live report has moved meanwhile");
    }

    private interface Write {
        void at(int n);
    }

    private static void repeat(AtomicBoolean stop, AtomicInteger written, Write write) {
        for (int n = 0; !stop.get(); n++) {
            write.at(n);
            written.incrementAndGet();
        }
    }

    private static String counts(String season, String more) {
        JsonPath report = JsonPath.from(ClassFixture.as("epidemiologist")
                .get("/api/v1/prevalence?season=" + season + more)
                .asString());
        return report.getList("cells.counted") + " " + report.getList("cells.detected");
    }
}
