package org.dentary.intake.putright;

import static org.dentary.intake.IntakeFixture.as;
import static org.dentary.intake.putright.SwapFixture.leaving;
import static org.dentary.intake.putright.SwapFixture.stands;
import static org.dentary.intake.putright.SwapFixture.story;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.result.FindingsFixture;
import org.junit.jupiter.api.Test;

/** Swaps that two people decide at one moment, and what hangs on the tissue: pieces and pools. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SwapsAtOnceTest {
    private static final int ROUNDS = 4;

    @Inject
    SwapFixture swaps;

    @Inject
    FindingsFixture laboratory;

    @Inject
    IntakeFixture intake;

    @Test
    void bothWaysOfACrossedSwapAreConfirmedAtOnce() throws Exception {
        String unit = laboratory.unitWithoutTheDisease();
        for (int round = 1; round <= ROUNDS; round++) {
            Deer one = found(unit, "NOT_DETECTED");
            Deer two = found(unit, "INCONCLUSIVE");
            String there = swaps.asked(node(one), two);
            String back = swaps.asked(node(two), one);
            assertEquals(
                    List.of(200, 200),
                    atOnce(
                            () -> swaps.confirms("epidemiologist", there)
                                    .extract()
                                    .statusCode(),
                            () -> swaps.confirms("coordinator-two", back)
                                    .extract()
                                    .statusCode()));
            stands(one, "INCONCLUSIVE", "");
            stands(two, "NOT_DETECTED", "");
            assertEquals(round, leaving(unit, "COUNTED"));
            assertEquals(round, leaving(unit, "INCONCLUSIVE"));
        }
    }

    @Test
    void aSwapIsEitherConfirmedOrRefused() throws Exception {
        String unit = laboratory.unitWithoutTheDisease();
        for (int round = 0; round < ROUNDS; round++) {
            Deer one = found(unit, "NOT_DETECTED");
            Deer two = laboratory.atTheLaboratory(unit);
            String swap = swaps.asked(node(one), two);
            assertEquals(
                    List.of(200, 409),
                    atOnce(
                            () -> swaps.confirms("epidemiologist", swap)
                                    .extract()
                                    .statusCode(),
                            () -> swaps.refuses("coordinator-two", swap)
                                    .extract()
                                    .statusCode()));
            String state = as("auditor").get("/api/v1" + swap).jsonPath().getString("state");
            stands(one, state.equals("CONFIRMED") ? "NOT_TESTED" : "NOT_DETECTED", "");
            story(two).body("notAttributable", equalTo(false));
        }
    }

    @Test
    void aKitThatIsLinkedWhileASwapIsAskedForIsHeldWhicheverComesFirst() throws Exception {
        String unit = laboratory.unitWithoutTheDisease();
        for (int round = 0; round < ROUNDS; round++) {
            Deer one = found(unit, "NOT_DETECTED");
            Deer two = laboratory.atTheLaboratory(unit);
            Deer again = laboratory.atTheLaboratory(unit);
            String swap = "/specimens/" + node(one) + "/re-attribution/" + UUID.randomUUID();
            assertEquals(
                    List.of(201, 201),
                    atOnce(
                            () -> swaps.asks("coordinator", swap, two).extract().statusCode(),
                            () -> swaps.links(again, two).extract().statusCode()));
            story(again).body("notAttributable", equalTo(true));
            swaps.confirmed(swap);
            for (Deer each : new Deer[] {one, two, again}) {
                story(each).body("notAttributable", equalTo(false));
            }
        }
    }

    @Test
    void piecesGoWithTheirTissueButOneThatWasPutElsewhereStaysThere() {
        Deer one = laboratory.atTheLaboratory(laboratory.unitWithoutTheDisease());
        Deer two = laboratory.atTheLaboratory(laboratory.unitWithoutTheDisease());
        Deer third = laboratory.atTheLaboratory(laboratory.unitWithoutTheDisease());
        String goes = piece(one, Part.SPARE_1);
        String stays = piece(one, Part.OBEX);
        swaps.confirmed(swaps.asked(stays, third));
        swaps.confirmed(swaps.asked(node(one), two));
        assertEquals(two.kit(), boundTo(goes));
        assertEquals(third.kit(), boundTo(stays));
        as("auditor")
                .accept("text/html")
                .get("/specimens/" + goes + "/custody")
                .then()
                .statusCode(200)
                .body(containsString("which it was cut from"));
    }

    @Test
    void inAPoolEachAnimalIsTheOneItsTissueCameFrom() {
        String unit = laboratory.unitWithoutTheDisease();
        Deer one = laboratory.atTheLaboratory(unit);
        Deer mate = laboratory.atTheLaboratory(unit);
        Deer other = intake.aDeer();
        intake.take(other, intake.facts().put("managementUnit", unit));
        intake.put(
                        "liaison",
                        "/findings/" + UUID.randomUUID(),
                        "{\"specimens\":[\"" + node(one) + "\",\"" + node(mate)
                                + "\"],\"method\":\"T_SCREEN\",\"stage\":\"SCREENING\",\"finding\":\"SUSPECT\","
                                + "\"status\":\"FINAL\",\"accession\":\"POOL-" + one.kit()
                                + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\",\"reportedOn\":\"2025-11-21\"}")
                .statusCode(201);
        swaps.confirmed(swaps.asked(node(one), other));
        stands(one, "NOT_TESTED", "");
        stands(other, "PENDING", "");
        stands(mate, "PENDING", "");
        story(other).body("findings[0].pool", equalTo(true));
        assertTrue(
                as("sampler").get("/api/v1/animals/" + other.kit()).asString().indexOf("SUSPECT") < 0);
    }

    private Deer found(String unit, String word) {
        Deer deer = laboratory.atTheLaboratory(unit);
        laboratory.finds(deer, "SCREENING", word, null).statusCode(201);
        stands(deer, word, "");
        return deer;
    }

    private String piece(Deer deer, Part part) {
        String code = deer.label(part);
        intake.put(
                        "sampler",
                        "/specimens/" + node(deer) + "/pieces/" + code,
                        "{\"preservation\":\"FORMALIN\",\"collectedAt\":\"2025-11-14T11:00:00-06:00\"}")
                .statusCode(201);
        return code;
    }

    private static String node(Deer deer) {
        return deer.label(Part.NODE_LEFT);
    }

    private static String boundTo(String code) {
        return as("sampler").get("/api/v1/codes/" + code).jsonPath().getString("boundTo");
    }

    @SafeVarargs
    private static List<Integer> atOnce(Callable<Integer>... senders) throws Exception {
        CyclicBarrier start = new CyclicBarrier(senders.length);
        ExecutorService threads = Executors.newFixedThreadPool(senders.length);
        try {
            List<Future<Integer>> sent = new ArrayList<>();
            for (Callable<Integer> sender : senders) {
                sent.add(threads.submit(() -> {
                    start.await();
                    return sender.call();
                }));
            }
            List<Integer> answers = new ArrayList<>();
            for (Future<Integer> one : sent) {
                answers.add(one.get());
            }
            return answers.stream().sorted().toList();
        } finally {
            threads.shutdownNow();
        }
    }
}
