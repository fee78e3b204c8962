package org.dentary.result;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import javax.sql.DataSource;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** What is reported while another report of the same deer or laboratory is not committed yet. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class FindingsAtOnceTest {
    @Inject
    FindingsFixture laboratory;

    @Inject
    IntakeFixture intake;

    @Inject
    DataSource database;

    @Test
    void aReportOfTheOtherNodeDoesNotLoseADetectionThatIsBeingRecorded() throws Exception {
        Deer deer = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        String left = deer.label(Part.NODE_LEFT);
        String right = deer.label(Part.NODE_RIGHT);
        intake.put(
                        "sampler",
                        "/animals/" + deer.kit() + "/specimens/" + right,
                        intake.specimen(right, "MEDIAL_RETROPHARYNGEAL_NODE", "RIGHT"))
                .statusCode(201);
        CompletableFuture<Response> other;
        try (Connection first = database.getConnection()) {
            first.setAutoCommit(false);
            run(
                    first,
                    "insert into submission_specimen (submission, code, packed_at, packed_by, recorded_at)"
                            + " select submission, '" + right
                            + "', packed_at, packed_by, recorded_at from submission_specimen"
                            + " where code = '" + left + "'");
            first.commit();
            finding(first, UUID.randomUUID(), left, "T_CONFIRM", "CONFIRMATORY", "DETECTED");
            run(first, "select 1 from animal where kit = '" + deer.kit() + "' for no key update");
            other = CompletableFuture.supplyAsync(() -> as("liaison")
                    .contentType("application/json")
                    .body("{\"specimens\":[\"" + right + "\"],\"method\":\"T_CONFIRM\",\"stage\":\"CONFIRMATORY\","
                            + "\"finding\":\"NOT_DETECTED\",\"status\":\"FINAL\",\"accession\":\"R-" + deer.kit()
                            + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\",\"reportedOn\":\"2025-11-21\"}")
                    .put("/api/v1/findings/" + UUID.randomUUID()));
            untilItWaits(other);
            first.commit();
        }
        assertEquals(201, other.join().statusCode(), other.join().asString());
        as("liaison")
                .get("/api/v1/animals/" + deer.kit())
                .then()
                .body("outcomes.find { it.disease == 'CWD' }.derivedOutcome", equalTo("DETECTED"));
    }

    @Test
    void aFileThatIsBeingPostedUnderAnotherIdIsPostedOnce() throws Exception {
        Deer deer = laboratory.atTheLaboratory(SeasonFixture.UNIT);
        String code = deer.label(Part.NODE_LEFT);
        UUID id = UUID.randomUUID();
        as("liaison")
                .contentType("text/csv")
                .body("specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n" + code
                        + ",R-" + deer.kit() + ",T_SCREEN,SCREENING,NOT_DETECTED,2025-11-20,2025-11-21\r\n")
                .put("/api/v1/result-imports/" + id + "?laboratory=T_LAB")
                .then()
                .statusCode(201)
                .body("postable", equalTo(1));
        CompletableFuture<Response> posting;
        try (Connection other = database.getConnection()) {
            other.setAutoCommit(false);
            run(other, "select 1 from laboratory where code = 'T_LAB' for no key update");
            finding(other, UUID.randomUUID(), code, "T_SCREEN", "SCREENING", "NOT_DETECTED");
            posting = CompletableFuture.supplyAsync(() -> as("liaison")
                    .contentType("application/json")
                    .body("{}")
                    .post("/api/v1/result-imports/" + id + "/posting"));
            untilItWaits(posting);
            other.commit();
        }
        assertEquals(200, posting.join().statusCode(), posting.join().asString());
        as("liaison").get("/api/v1/animals/" + deer.kit() + "/findings").then().body("items", hasSize(1));
    }

    private static void finding(Connection in, UUID id, String code, String method, String stage, String word)
            throws SQLException {
        run(
                in,
                "insert into finding (id, method, disease, stage, finding, status, laboratory, accession, tested_on,"
                        + " reported_on, recorded_by, recorded_at) select '" + id + "', '" + method + "', 'CWD', '"
                        + stage
                        + "', '" + word + "', 'FINAL', 'T_LAB', 'R-' || l.kit_bound, '2025-11-20', '2025-11-21',"
                        + " 'T_LIAISON', now() from label l where l.code = '" + code + "'");
        run(in, "insert into finding_specimen (finding, code) values ('" + id + "', '" + code + "')");
    }

    private static void run(Connection in, String sql) throws SQLException {
        try (Statement statement = in.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Until somebody waits for a lock, or is done without having waited. */
    private void untilItWaits(CompletableFuture<Response> sent) throws Exception {
        try (Connection watch = database.getConnection();
                Statement statement = watch.createStatement()) {
            for (int i = 0; i < 3_000 && !sent.isDone(); i++) {
                try (ResultSet waiting = statement.executeQuery(
                        "select count(*) from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'")) {
                    waiting.next();
                    if (waiting.getInt(1) > 0) {
                        return;
                    }
                }
                Thread.sleep(20);
            }
        }
    }
}
