package org.dentary.custody.box;

import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.dentary.SeasonFixture;
import org.dentary.custody.CustodyFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class BoxPagesTest {
    @Inject
    CustodyFixture fixture;

    @Inject
    MovementQueries movements;

    @Inject
    DataSource database;

    @Inject
    Clock clock;

    private String box;
    private List<String> codes;

    @BeforeEach
    void aBox() {
        box = fixture.aBoxLabel();
        codes = fixture.collected(2, clock.instant().minusSeconds(600));
    }

    @Test
    void isOpenedMovedAndRefusesAPlaceThatIsNone() {
        as("sampler").get("/boxes/" + box).then().statusCode(200).body(containsString("Open it here"));
        as("auditor").get("/boxes/" + box).then().statusCode(200).body(not(containsString("Open it here")));
        post("sampler", "", Map.of("place", " ")).statusCode(422).body(containsString("Say where it is"));
        post("sampler", "", Map.of("place", SeasonFixture.STATION))
                .statusCode(303)
                .header("Location", endsWith(box));
        as("sampler").get("/boxes/" + box).then().body(containsString("with Test sampler"));
        post("sampler", "", Map.of("place", "shelf 2", "version", "0")).statusCode(303);
        post("sampler", "", Map.of("place", "shelf 3", "version", "0")).statusCode(412);
        as("auditor").get("/api/v1/boxes/" + box).then().body("place", equalTo("shelf 2"));
        as("sampler").get("/boxes/" + codes.get(0)).then().statusCode(422);
        as("sampler").get("/boxes/NOTACODE").then().statusCode(422);
    }

    @Test
    void tellsWhatWentInAndCameOutAlsoAsTables() {
        post("sampler", "", Map.of("place", SeasonFixture.STATION)).statusCode(303);
        for (String code : codes) {
            post("sampler", "/contents", Map.of("content", code, "do", "in")).statusCode(303);
        }
        post("sampler", "/contents", Map.of("content", codes.get(0), "do", "out"))
                .statusCode(303);
        String contents =
                as("auditor").get("/api/v1/boxes/" + box + "/contents.csv").asString();
        assertEquals("box,code,part,depth\r\n" + box + "," + codes.get(1) + ",NODE_LEFT,1\r\n", contents);
        List<String> moved = as("auditor")
                .get("/api/v1/boxes/" + box + "/movements.csv")
                .asString()
                .lines()
                .toList();
        assertEquals(4, moved.size(), moved.toString());
        assertTrue(moved.get(1).startsWith(box + ",TAKEN_OUT,")
                && moved.get(1).endsWith("Test sampler,1," + codes.get(0)));
        assertTrue(moved.get(3).contains(",PUT_IN,"), moved.get(3));
        List<Movement> all = movements.of(box, null, 10);
        assertEquals(3, all.size());
        assertEquals(all.subList(1, 2), movements.of(box, all.get(0).mark(), 1));
        assertEquals(all.subList(2, 3), movements.of(box, all.get(1).mark(), 1));
        assertEquals(List.of(), movements.of(box, all.get(2).mark(), 1));
        as("auditor")
                .get("/boxes/" + box + "?moved=" + all.get(1).mark())
                .then()
                .statusCode(200)
                .body(containsString("From the start"));
        as("auditor").get("/boxes/" + box + "?moved=never").then().statusCode(422);
    }

    @Test
    void refusesWhatIsNotHeldAndWritesNothing() {
        post("sampler", "", Map.of("place", SeasonFixture.STATION)).statusCode(303);
        post("liaison", "/contents", Map.of("content", codes.get(0), "do", "in"))
                .statusCode(409)
                .body(containsString("did not hold"))
                .body(containsString(codes.get(0)));
        post("sampler", "/contents", Map.of("content", "", "do", "in"))
                .statusCode(422)
                .body(containsString("Scan what goes in"));
        post("sampler", "/contents", Map.of("content", "ABC", "do", "in")).statusCode(422);
        post("sampler", "/contents", Map.of("content", codes.get(0), "do", "out"))
                .statusCode(422)
                .body(containsString("does not lie in this box"));
        for (String other : List.of("epidemiologist", "notifier", "auditor")) {
            post(other, "/contents", Map.of("content", codes.get(0), "do", "in"))
                    .statusCode(403);
            post(other, "", Map.of("place", "x")).statusCode(403);
        }
        as("auditor").get("/api/v1/boxes/" + box).then().body("count", equalTo(0));
    }

    @Test
    void movementsAreFoundByTheirIndex() throws SQLException {
        StringBuilder plan = new StringBuilder();
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("set local enable_seqscan = off");
            try (ResultSet row = statement.executeQuery("explain "
                    + MovementQueries.OF_BOX
                            .replace(":box", "'X'")
                            .replace(":afterAct", "''")
                            .replace(":after", "null")
                            .replace(":most", "10"))) {
                while (row.next()) {
                    plan.append(row.getString(1)).append('\n');
                }
            }
            connection.rollback();
        }
        assertTrue(plan.toString().contains("ledger_event_packed"), plan.toString());
    }

    private ValidatableResponse post(String account, String path, Map<String, String> form) {
        return as(account)
                .redirects()
                .follow(false)
                .formParams(form)
                .post("/boxes/" + box + path)
                .then();
    }
}
