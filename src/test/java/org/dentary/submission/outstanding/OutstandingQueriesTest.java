package org.dentary.submission.outstanding;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.submission.Sight;
import org.dentary.submission.SubmissionFixture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is where: waiting, overdue and turnaround, each from rows of its own. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class OutstandingQueriesTest {
    /** Sent 2025-11-15 at 15:00 UTC to a laboratory that promised ten days. */
    private static final Instant PROMISED_UNTIL = Instant.parse("2025-11-25T15:00:00Z");

    private static final Sight ALL = new Sight(true, true, List.of());

    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @Inject
    OutstandingQueries outstanding;

    @Inject
    IntakeFixture http;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void whatIsCollectedWaitsWithItsAgeUntilItIsPacked() {
        String code = bench.aNode();
        OutstandingQueries.Waiting waiting =
                waiting(LocalDate.of(2025, 11, 20), code).get(0);
        assertEquals(LocalDate.of(2025, 11, 14), waiting.collectedOn());
        assertEquals(6, waiting.days());
        assertEquals("T_STATION_1", waiting.station());
        assertEquals("T_LIAISON", waiting.custodian());
        String id = bench.packed(code);
        assertEquals(List.of(), waiting(LocalDate.of(2025, 11, 20), code));
        as("liaison")
                .delete("/api/v1/submissions/" + id + "/specimens/" + code)
                .then()
                .statusCode(200);
        assertEquals(1, waiting(LocalDate.of(2025, 11, 20), code).size());
    }

    @Test
    void whatIsKeptForGoodDoesNotWait() {
        String code = bench.aNode();
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("update specimen set archived = true where code = :code")
                        .setParameter("code", code)
                        .executeUpdate());
        assertEquals(List.of(), waiting(LocalDate.of(2025, 11, 20), code));
    }

    @Test
    void theLongestWaitingComesFirst() {
        String young = bench.aNodeTaken("2025-11-18T09:20:00-06:00");
        String old = bench.aNode();
        List<String> codes = rows(
                        outstanding.waiting(LocalDate.of(2026, 1, 1), null, null, ALL),
                        OutstandingQueries.WaitingRow.class)
                .map(OutstandingQueries.WaitingRow::row)
                .map(OutstandingQueries.Waiting::code)
                .filter(code -> code.equals(young) || code.equals(old))
                .toList();
        assertEquals(List.of(old, young), codes);
    }

    @Test
    void whatWasSentIsOverdueFromTheMomentThatTheLaboratorysDaysAreOver() {
        String code = bench.aNode();
        String id = bench.sent(code);
        assertEquals(List.of(), overdue(PROMISED_UNTIL, id));
        OutstandingQueries.Overdue overdue =
                overdue(PROMISED_UNTIL.plusSeconds(1), id).get(0);
        assertEquals(code, overdue.code());
        assertEquals("T_LAB", overdue.laboratory());
        assertEquals(10, overdue.promisedDays());
    }

    @Test
    void aPreliminaryWordLeavesItOverdueAndAFinalOneDoesNot() {
        String code = bench.aNode();
        String id = bench.sent(code);
        bench.receive(id, code).statusCode(201);
        finding(code, "T_LAB", "PRELIMINARY", "2025-11-19", "A-1");
        assertEquals(1, overdue(PROMISED_UNTIL.plusSeconds(1), id).size());
        finding(code, "T_LAB", "FINAL", "2025-11-20", "A-2");
        assertEquals(List.of(), overdue(PROMISED_UNTIL.plusSeconds(1), id));
    }

    @Test
    void whatIsSentToTheSameLaboratoryAgainIsOverdueUntilItIsReportedAgain() {
        String laboratory = aLaboratory();
        String code = sentTo(laboratory);
        finding(code, laboratory, "FINAL", "2025-11-18", "A-" + code);
        String again = received(code, laboratory);
        Instant late = Instant.parse("2025-12-31T00:00:00Z");
        assertEquals(1, overdue(late, again).size());
        finding(code, laboratory, "FINAL", "2025-11-29", "B-" + code);
        assertEquals(List.of(), overdue(late, again));
        OutstandingQueries.Turnaround turnaround = outstanding.turnaround(ALL).stream()
                .filter(one -> one.laboratory().equals(laboratory))
                .findFirst()
                .orElseThrow();
        assertEquals(2, turnaround.findings());
        // From 2025-11-15 to the 18th and from the 25th to the 29th: the median of 3 and 4.
        assertEquals(3.5, turnaround.median(), 1e-9);
    }

    /** Counted in and sent once more, on the 25th. */
    private String received(String code, String laboratory) {
        String first = as("liaison")
                .get("/api/v1/submissions?laboratory=" + laboratory)
                .path("items[0].id");
        bench.receive(first, code).statusCode(201);
        String again = bench.begun(laboratory);
        bench.pack(again, code, "{\"packedAt\":\"2025-11-25T08:00:00-06:00\",\"overrideReason\":\"for the repeat\"}")
                .statusCode(201);
        bench.dispatch(again, "2025-11-25T09:00:00-06:00").statusCode(200);
        return again;
    }

    /** A report says that it arrived; it is still owed where the report is preliminary. */
    @Test
    void aReportOfWhatWasNeverCountedInSaysThatItArrived() {
        String here = bench.aNode();
        String lost = bench.aNode();
        String id = bench.sent(here, lost);
        bench.receive(id, here).statusCode(201).body("missing", equalTo(1));
        finding(lost, "T_LAB", "PRELIMINARY", "2025-11-19", "A-" + lost);
        as("liaison")
                .get("/api/v1/submissions/" + id)
                .then()
                .body("received", equalTo(2))
                .body("missing", equalTo(0))
                .body("specimens.find { it.code == '" + lost + "' }.receiptSource", equalTo("RESULT"));
        as("liaison")
                .accept("text/html")
                .get("/submissions/" + id)
                .then()
                .body(containsString("Received, by its result"));
        assertEquals(2, overdue(PROMISED_UNTIL.plusSeconds(1), id).size());
    }

    @Test
    void whatNeverArrivedIsShortAndNotOverdue() {
        String here = bench.aNode();
        String lost = bench.aNode();
        String id = bench.sent(here, lost);
        bench.receive(id, here).statusCode(201);
        assertEquals(
                List.of(here),
                overdue(PROMISED_UNTIL.plusSeconds(1), id).stream()
                        .map(OutstandingQueries.Overdue::code)
                        .toList());
    }

    /** Expected: R 4, {@code quantile(c(3, 5, 8, 20), c(.5, .9))} (type 7) is 6.5 and 16.4. */
    @Test
    void turnaroundIsMedianAndNinetiethOfDaysFromDispatchToFinalReport() {
        String laboratory = aLaboratory();
        for (String reportedOn : List.of("2025-11-18", "2025-11-20", "2025-11-23", "2025-12-05")) {
            String code = sentTo(laboratory);
            finding(code, laboratory, "FINAL", reportedOn, "A-" + code);
        }
        String open = sentTo(laboratory);
        finding(open, laboratory, "PRELIMINARY", "2025-12-30", "A-" + open);
        OutstandingQueries.Turnaround turnaround = outstanding.turnaround(ALL).stream()
                .filter(one -> one.laboratory().equals(laboratory))
                .findFirst()
                .orElseThrow();
        assertEquals(4, turnaround.findings());
        assertEquals(6.5, turnaround.median(), 1e-9);
        assertEquals(16.4, turnaround.ninetieth(), 1e-9);
        assertEquals(7, turnaround.promisedDays());
    }

    private List<OutstandingQueries.Waiting> waiting(LocalDate today, String code) {
        return rows(outstanding.waiting(today, null, null, ALL), OutstandingQueries.WaitingRow.class)
                .map(OutstandingQueries.WaitingRow::row)
                .filter(one -> one.code().equals(code))
                .toList();
    }

    private List<OutstandingQueries.Overdue> overdue(Instant now, String id) {
        return rows(
                        outstanding.overdue(now, OutstandingQueries.After.NOTHING, null, ALL),
                        OutstandingQueries.OverdueRow.class)
                .map(OutstandingQueries.OverdueRow::row)
                .filter(one -> one.submission().equals(id))
                .toList();
    }

    @SuppressWarnings("unchecked")
    private static <T> java.util.stream.Stream<T> rows(jakarta.persistence.Query query, Class<T> kind) {
        return ((List<T>) query.getResultList()).stream().map(kind::cast);
    }

    private String aLaboratory() {
        String code = "T_LAB_" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(java.util.Locale.ROOT);
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("insert into laboratory (code, name, position, turnaround_days)"
                                + " values (:code, :code, 99, 7)")
                        .setParameter("code", code)
                        .executeUpdate());
        return code;
    }

    private String sentTo(String laboratory) {
        String code = bench.aNode();
        String id = bench.begun(laboratory);
        bench.pack(
                        id,
                        code,
                        "{\"packedAt\":\"" + SubmissionFixture.PACKED_AT
                                + "\",\"overrideReason\":\"agreed with the laboratory\"}")
                .statusCode(201);
        bench.dispatch(id).statusCode(200);
        return code;
    }

    private void finding(String code, String laboratory, String status, String reportedOn, String accession) {
        http.put(
                        "liaison",
                        "/findings/" + UUID.randomUUID(),
                        "{\"specimens\":[\"" + code
                                + "\"],\"method\":\"T_SCREEN\",\"stage\":\"SCREENING\",\"finding\":\"NOT_DETECTED\",\"status\":\""
                                + status + "\",\"accession\":\"" + accession + "\",\"laboratory\":\"" + laboratory
                                + "\",\"testedOn\":\"2025-11-17\",\"reportedOn\":\"" + reportedOn + "\"}")
                .statusCode(201);
    }
}
