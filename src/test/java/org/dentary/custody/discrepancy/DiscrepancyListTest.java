package org.dentary.custody.discrepancy;

import static org.dentary.custody.Http.as;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.dentary.codes.Part;
import org.dentary.custody.CustodyFixture;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** More discrepancies than a page takes: each is on one of its pages, in the file and in the count. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@ActivateRequestContext
class DiscrepancyListTest {
    private static final int MANY = 1_001;

    @Inject
    CustodyFixture fixture;

    @Inject
    DataSource database;

    private String mark;

    @BeforeEach
    void more() throws SQLException {
        mark = "m" + UUID.randomUUID().toString().substring(0, 8);
        String code = fixture.labels(1, Part.NODE_LEFT).get(0);
        // Due after all others, so that the pages of other tests stay as they are.
        execute("insert into discrepancy (id, code, kind, owner, due_on, evidence, opened_by, opened_at) select"
                + " gen_random_uuid(), '" + code + "', 'OTHER', 'T_SAMPLER', date '2099-12-31', '" + mark
                + " ' || n || ';',"
                + " 'T_SAMPLER', now() from generate_series(1, " + MANY + ") n");
    }

    @AfterEach
    void settled() throws SQLException {
        execute("update discrepancy set closed_at = now(), outcome = 'MISCOUNT' where evidence like '" + mark + " %'");
    }

    @Test
    void areAllOnTheirPages() {
        TreeSet<Integer> seen = new TreeSet<>();
        int pages = 0;
        String next = "/custody/discrepancies";
        while (next != null) {
            String page = as("sampler")
                    .urlEncodingEnabled(false)
                    .get(next)
                    .then()
                    .statusCode(200)
                    .extract()
                    .asString();
            numbers(page).forEach(number -> assertTrue(seen.add(number), number + " stands on two pages"));
            Matcher link = Pattern.compile("href=\"([^\"]+)\" rel=\"next\"").matcher(page);
            next = link.find() ? link.group(1).replace("&amp;", "&") : null;
            assertTrue(++pages < 50, "the pages never end");
        }
        assertEquals(IntStream.rangeClosed(1, MANY).boxed().toList(), List.copyOf(seen));
        assertTrue(pages > 2, "on several pages");
    }

    @Test
    void areAllInTheFileTheListAndTheCount() {
        Response file = as("sampler").get("/api/v1/custody/discrepancies.csv");
        assertEquals(MANY, numbers(file.asString()).size());
        int listed = 0;
        String next = "/api/v1/discrepancies?open=true&limit=1000";
        while (next != null) {
            Response page = as("sampler").urlEncodingEnabled(false).get(next);
            listed += page.jsonPath().getList("items.id").size();
            String link = page.header("Link");
            next = link == null ? null : link.substring(1, link.indexOf('>'));
        }
        assertEquals(file.asString().lines().count() - 1, listed);
        as("sampler").get("/custody").then().body(containsString("Does not add up: " + listed + "<"));
    }

    @Test
    void namesAMarkThatIsNone() {
        as("sampler").get("/custody/discrepancies?after=tomorrow").then().statusCode(422);
        as("sampler").get("/api/v1/discrepancies?after=tomorrow").then().statusCode(422);
    }

    private List<Integer> numbers(String text) {
        return Pattern.compile(mark + " (\\d+);")
                .matcher(text)
                .results()
                .map(found -> Integer.valueOf(found.group(1)))
                .toList();
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
