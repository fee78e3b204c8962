package org.dentary.bench;

import static io.restassured.RestAssured.given;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.dentary.SeasonFixture;
import org.dentary.animal.line.LineService;
import org.dentary.codes.Part;
import org.dentary.custody.CustodyFixture;
import org.dentary.kit.KitFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;

/**
 * What a design choice is worth, as ratios of two things measured in turn in one run; {@code deploy/bench} prints them.
 * No test: nothing here can fail for being slow, and the surefire run does not pick it up by its name.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
@TestProfile(Ratios.Quiet.class)
class Ratios {
    /** Requests are not logged while they are measured. */
    public static class Quiet implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("quarkus.log.level", "WARN");
        }
    }

    private static final int ROUNDS = 5;
    private static final List<String> TABLE = new ArrayList<>();

    @TestHTTPResource
    URI root;

    @Inject
    SeasonFixture season;

    @Inject
    LineFixture lines;

    @Inject
    LineService lineService;

    @Inject
    CustodyFixture custody;

    @Inject
    KitFixture kits;

    @Inject
    DataSource database;

    @BeforeEach
    void theSeason() {
        season.ensure();
    }

    @AfterAll
    static void print() {
        System.out.printf(
                "%n%-86s %10s %10s %8s%n",
                "one thing / the other (medians of " + ROUNDS + ")", "one", "other", "ratio");
        TABLE.forEach(System.out::println);
    }

    @Test
    @ActivateRequestContext
    void linesRevisedAtOnceAndOneByOne() throws Exception {
        List<String> animals = lines.add(lines.season(), 1_000, ALine.of("ADULT", "FEMALE", "PENDING"));
        compare(
                "1,000 lines revised in one statement / one at a time",
                () -> lineService.setOutcomes(outcomes(animals), "BENCH"),
                () -> animals.forEach(kit -> lineService.setOutcomes(outcomes(List.of(kit)), "BENCH")));
    }

    @Test
    void aReportOfTwiceAsManyLines() throws Exception {
        String small = lines.season();
        lines.add(small, 20_000, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        String large = lines.season();
        lines.add(large, 40_000, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        compare(
                "prevalence by age class and sex of 40,000 lines / of 20,000",
                () -> read("/api/v1/prevalence?by=ageClass,sex&season=" + large),
                () -> read("/api/v1/prevalence?by=ageClass,sex&season=" + small));
        compare(
                "the same report / its count by plain SQL alone, 40,000 lines",
                () -> read("/api/v1/prevalence?by=ageClass,sex&season=" + large),
                () -> count(large));
        compare(
                "line list as streamed CSV / PostgreSQL's own copy, 40,000 lines",
                () -> read("/api/v1/line-list.csv?season=" + large),
                () -> copy(large));
        UUID cut = UUID.randomUUID();
        String onCut = "/api/v1/prevalence?by=ageClass,sex&season=" + large + "&cut=" + cut;
        given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .contentType("application/json")
                .body(Map.of("season", large, "name", "Bench"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(201);
        compare(
                "a report asked again on a data cut / live, 40,000 lines",
                () -> read(onCut),
                () -> read("/api/v1/prevalence?by=ageClass,sex&season=" + large));
    }

    @Test
    @ActivateRequestContext
    void tubesHandedOver() throws Exception {
        Instant day = Instant.now().truncatedTo(ChronoUnit.SECONDS).minus(3, ChronoUnit.HOURS);
        List<List<String>> many = new ArrayList<>();
        List<List<String>> one = new ArrayList<>();
        for (int i = 0; i <= ROUNDS; i++) {
            many.add(custody.collected(500, day));
            one.add(custody.collected(1, day));
        }
        compare(
                "500 tubes offered in one hand-over / 1 tube",
                () -> offer(many.remove(0), day),
                () -> offer(one.remove(0), day));
    }

    @Test
    void labelSheets() throws Exception {
        UUID large = kits.aBlock(500, Part.JAW, Part.NODE_LEFT, Part.NODE_RIGHT, Part.STUB)
                .id();
        UUID small = kits.aBlock(50, Part.JAW, Part.NODE_LEFT, Part.NODE_RIGHT, Part.STUB)
                .id();
        compare(
                "labels of 500 kits as PDF / of 50 kits",
                () -> readAs("coordinator", "/api/v1/kit-blocks/" + large + "/labels.pdf"),
                () -> readAs("coordinator", "/api/v1/kit-blocks/" + small + "/labels.pdf"));
    }

    private static List<LineService.OutcomeOf> outcomes(List<String> kits) {
        // Another footnote each time, so that every line differs.
        String footnote = UUID.randomUUID().toString();
        return kits.stream()
                .map(kit -> new LineService.OutcomeOf(kit, SeasonFixture.DISEASE, "PENDING", "PENDING", footnote))
                .toList();
    }

    private void offer(List<String> codes, Instant day) {
        given().auth()
                .preemptive()
                .basic("sampler", SeasonFixture.PASSWORD)
                .contentType("application/json")
                .body(Map.of(
                        "codes",
                        codes,
                        "to",
                        "liaison",
                        "place",
                        SeasonFixture.STATION,
                        "occurredAt",
                        day.plus(1, ChronoUnit.HOURS).toString()))
                .put("/api/v1/hand-overs/" + UUID.randomUUID())
                .then()
                .statusCode(201);
    }

    private void count(String season) throws SQLException {
        try (var connection = database.getConnection();
                var statement = connection.prepareStatement("select age_class, sex, count(*),"
                        + " count(*) filter (where outcome = 'DETECTED') from line"
                        + " where season = ? and closed_at is null and outcome in ('DETECTED', 'NOT_DETECTED')"
                        + " group by age_class, sex")) {
            statement.setString(1, season);
            try (var rows = statement.executeQuery()) {
                while (rows.next()) {
                    rows.getInt(3);
                }
            }
        }
    }

    private void copy(String season) throws SQLException, IOException {
        try (var connection = database.getConnection()) {
            connection
                    .unwrap(PGConnection.class)
                    .getCopyAPI()
                    .copyOut(
                            "copy (select * from line where season = '" + season
                                    + "' and closed_at is null order by kit) to stdout with csv header",
                            OutputStream.nullOutputStream());
        }
    }

    private void read(String path) throws IOException {
        readAs("epidemiologist", path);
    }

    private void readAs(String who, String path) throws IOException {
        HttpURLConnection get = (HttpURLConnection) root.resolve(path).toURL().openConnection();
        get.setRequestProperty(
                "Authorization",
                "Basic "
                        + Base64.getEncoder()
                                .encodeToString((who + ":" + SeasonFixture.PASSWORD).getBytes(StandardCharsets.UTF_8)));
        try (InputStream body = get.getInputStream()) {
            body.transferTo(OutputStream.nullOutputStream());
        }
    }

    private interface Act {
        void run() throws Exception;
    }

    /** One round to warm up, then both in turn. */
    private static void compare(String words, Act one, Act other) throws Exception {
        double[] ones = new double[ROUNDS];
        double[] others = new double[ROUNDS];
        one.run();
        other.run();
        for (int i = 0; i < ROUNDS; i++) {
            ones[i] = milliseconds(one);
            others[i] = milliseconds(other);
        }
        Arrays.sort(ones);
        Arrays.sort(others);
        double a = ones[ROUNDS / 2];
        double b = others[ROUNDS / 2];
        TABLE.add(String.format("%-86s %,7.1f ms %,7.1f ms %8.2f", words, a, b, a / b));
    }

    private static double milliseconds(Act act) throws Exception {
        long begin = System.nanoTime();
        act.run();
        return (System.nanoTime() - begin) / 1e6;
    }
}
