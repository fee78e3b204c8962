package org.dentary.submission;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** What several send at one moment has one outcome, and each is answered as if all had come one after another. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class AtOnceTest {
    private static final int SENDERS = 6;

    @Inject
    IntakeFixture deer;

    @Inject
    SubmissionFixture parcels;

    @Inject
    Clock clock;

    @Test
    void theSameAnimalSentAtOnceIsTakenInOnceAndAnsweredToAll() throws Exception {
        Deer one = deer.aDeer();
        ObjectNode body = deer.yearlingWithLeftNode(one);
        List<Integer> answers = atOnce(i -> () -> put("sampler", "/animals/" + one.kit(), body));
        assertEquals(List.of(200, 200, 200, 200, 200, 201), answers);
    }

    /** The item is the laboratory's name for one piece; entered by hand by several, it stands on one tube. */
    @Test
    void oneItemOfALaboratoryEnteredAtOnceForSeveralTubesStandsOnOne() throws Exception {
        List<String> tubes =
                IntStream.range(0, SENDERS).mapToObj(i -> parcels.aNode()).toList();
        parcels.sent(tubes.toArray(String[]::new));
        String accession = "A-" + tubes.get(0);
        List<Integer> answers = atOnce(i -> () -> as("liaison")
                .contentType("application/json")
                .body("{\"specimens\":[\"" + tubes.get(i) + "\"],\"method\":\"T_SCREEN\",\"stage\":\"SCREENING\","
                        + "\"finding\":\"NOT_DETECTED\",\"status\":\"FINAL\",\"accession\":\"" + accession
                        + "\",\"item\":\"1\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\","
                        + "\"reportedOn\":\"2025-11-21\"}")
                .put("/api/v1/findings/" + java.util.UUID.randomUUID())
                .statusCode());
        assertEquals(List.of(201, 409, 409, 409, 409, 409), answers);
    }

    @Test
    void otherContentSentAtOnceIsRefusedAsAlreadyRecorded() throws Exception {
        Deer one = deer.aDeer();
        List<Integer> answers = atOnce(i -> () -> put(
                "sampler",
                "/animals/" + one.kit(),
                deer.facts().put("jawStatus", "NOT_EXAMINED").put("jawReason", "r" + i)));
        assertEquals(List.of(201, 409, 409, 409, 409, 409), answers);
        as("sampler")
                .contentType("application/json")
                .body(deer.facts().toString())
                .put("/api/v1/animals/" + one.kit())
                .then()
                .statusCode(409);
    }

    @Test
    void aLabelIsEitherVoidOrOnSomething() throws Exception {
        for (int round = 0; round < 5; round++) {
            Deer one = deer.aDeer();
            String code = one.label(Part.NODE_LEFT);
            ObjectNode body = deer.yearlingWithLeftNode(one);
            atOnce(i -> () -> i % 2 == 0
                    ? put("sampler", "/animals/" + one.kit(), body)
                    : put("coordinator", "/labels/" + code + "/voiding", "{\"reason\":\"torn\"}"));
            var label = as("sampler").get("/api/v1/codes/" + code).then().extract();
            assertNotEquals(label.path("voided"), label.<Boolean>path("specimen"), code);
        }
    }

    @Test
    void aSpecimenIsInOneSubmission() throws Exception {
        String code = parcels.aNode();
        List<String> ids = List.of(parcels.begun("T_LAB"), parcels.begun("T_LAB"));
        List<Integer> answers = atOnce(i -> () -> put(
                "liaison",
                "/submissions/" + ids.get(i % 2) + "/specimens/" + code,
                "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT + "\"}"));
        assertEquals(List.of(200, 200, 201, 422, 422, 422), answers);
    }

    @Test
    void oneReAttributionOfALabelIsAskedAtATime() throws Exception {
        Deer from = deer.aDeer();
        deer.take(from, deer.yearlingWithLeftNode(from));
        List<String> bodies = new ArrayList<>();
        for (int i = 0; i < SENDERS; i++) {
            Deer to = deer.aDeer();
            deer.take(to, deer.facts());
            bodies.add("{\"kit\":\"" + to.kit() + "\",\"reason\":\"jars side by side\",\"evidence\":\"tag\"}");
        }
        List<Integer> answers = atOnce(i -> () -> put(
                "sampler",
                "/specimens/" + from.label(Part.NODE_LEFT) + "/re-attribution/" + UUID.randomUUID(),
                bodies.get(i)));
        assertEquals(List.of(201, 409, 409, 409, 409, 409), answers);
    }

    @Test
    void twoKitsAreLinkedOnceAndAnotherReasonIsRefused() throws Exception {
        Deer one = deer.aDeer();
        Deer other = deer.aDeer();
        deer.take(one, deer.facts());
        deer.take(other, deer.facts());
        String path = "/animals/" + one.kit() + "/same-as/" + other.kit();
        List<Integer> answers =
                atOnce(i -> () -> put("coordinator", path, "{\"reason\":\"two forms\",\"evidence\":\"tag\"}"));
        assertEquals(List.of(200, 200, 200, 200, 200, 201), answers);
        assertEquals(409, put("coordinator", path, "{\"reason\":\"other\",\"evidence\":\"tag\"}"));
        assertEquals(200, undo(one, "coordinator", "misread"));
        assertEquals(200, undo(one, "coordinator", "misread"));
        assertEquals(409, undo(one, "coordinator", "another reason"));
        assertEquals(409, undo(one, "epidemiologist", "misread"));
    }

    @Test
    void aReplayOfTakingOutLeavesTheVersionAndAnotherAccountsDispatchIsRefused() throws Exception {
        String code = parcels.aNode();
        String id = parcels.packed(code, parcels.aNode());
        String taken = as("liaison")
                .delete("/api/v1/submissions/" + id + "/specimens/" + code)
                .header("ETag");
        assertEquals(
                taken,
                as("liaison")
                        .delete("/api/v1/submissions/" + id + "/specimens/" + code)
                        .header("ETag"));
        parcels.dispatch(id).statusCode(200);
        parcels.dispatch(id).statusCode(200);
        as("coordinator")
                .contentType("application/json")
                .body("{\"occurredAt\":\"" + SubmissionFixture.LEFT_AT
                        + "\",\"carrier\":\"T_COURIER\",\"waybill\":\"W-7\",\"shipper\":\"a trained shipper\","
                        + "\"reason\":\"written down on paper\"}")
                .post("/api/v1/submissions/" + id + "/dispatch")
                .then()
                .statusCode(409);
    }

    @Test
    void theSameFileAndTheSameFindingSentAtOnceAreKeptOnce() throws Exception {
        String code = parcels.aNode();
        String id = parcels.sent(code);
        String file = "/result-imports/" + UUID.randomUUID() + "?laboratory=T_LAB";
        String rows = "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n" + code
                + ",A-" + code + "," + SeasonFixture.SCREENING_METHOD
                + ",SCREENING,NOT_DETECTED,2025-11-18,2025-11-19\r\n";
        List<Integer> files = atOnce(i -> () -> as("liaison")
                .contentType("text/csv")
                .body(rows)
                .put("/api/v1" + file)
                .statusCode());
        assertEquals(List.of(200, 200, 200, 200, 200, 201), files);
        String finding = "/findings/" + UUID.randomUUID();
        String word = "{\"specimens\":[\"" + code + "\"],\"method\":\"" + SeasonFixture.SCREENING_METHOD
                + "\",\"stage\":\"SCREENING\",\"finding\":\"NOT_DETECTED\",\"status\":\"FINAL\",\"accession\":\"B-"
                + code
                + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-18\",\"reportedOn\":\"2025-11-19\"}";
        assertEquals(List.of(200, 200, 200, 200, 200, 201), atOnce(i -> () -> put("liaison", finding, word)));
        assertNotEquals(null, id);
    }

    @Test
    void theSameOfferAndTheSameDiscrepancySentAtOnceAreRecordedOnceAndAnsweredToAll() throws Exception {
        String code = parcels.aNode("sampler", "FRESH_CHILLED");
        String offer = "/hand-overs/" + UUID.randomUUID();
        String offered = "{\"codes\":[\"" + code + "\"],\"to\":\"liaison\",\"occurredAt\":\"" + clock.instant() + "\"}";
        assertEquals(List.of(200, 200, 200, 200, 200, 201), atOnce(i -> () -> put("sampler", offer, offered)));
        String discrepancy = "/discrepancies/" + UUID.randomUUID();
        String damaged = "{\"code\":\"" + code
                + "\",\"kind\":\"DAMAGED\",\"owner\":\"sampler\",\"dueOn\":\"2026-12-24\",\"evidence\":\"lid cracked\"}";
        assertEquals(List.of(200, 200, 200, 200, 200, 201), atOnce(i -> () -> put("sampler", discrepancy, damaged)));
        assertEquals(
                List.of("COLLECTED", "HANDOVER_OFFERED", "DISCREPANCY_OPENED"),
                as("auditor").get("/api/v1/specimens/" + code + "/custody").path("events.kind"));
    }

    private int undo(Deer one, String account, String reason) {
        return as(account)
                .contentType("application/json")
                .body("{\"reason\":\"" + reason + "\"}")
                .post("/api/v1/animals/" + one.kit() + "/same-as/undoing")
                .statusCode();
    }

    private static int put(String account, String path, Object body) {
        return as(account)
                .contentType("application/json")
                .body(body.toString())
                .put("/api/v1" + path)
                .statusCode();
    }

    private interface Sender {
        Callable<Integer> of(int i);
    }

    /** What each sender was answered, sorted. */
    private static List<Integer> atOnce(Sender sender) throws Exception {
        CyclicBarrier start = new CyclicBarrier(SENDERS);
        ExecutorService threads = Executors.newFixedThreadPool(SENDERS);
        try {
            List<Future<Integer>> sent = IntStream.range(0, SENDERS)
                    .mapToObj(i -> threads.submit(() -> {
                        start.await();
                        return sender.of(i).call();
                    }))
                    .toList();
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
