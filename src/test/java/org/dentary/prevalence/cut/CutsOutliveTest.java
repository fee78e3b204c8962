package org.dentary.prevalence.cut;

import static org.dentary.intake.IntakeFixture.as;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.PlayedSeason;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A cut of a played season while people go on working through the service: animals come in, findings are corrected, labels are
 * put right and printed again, facts are changed. Then a later release changes the tables. No byte of an answer moves.
 */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CutsOutliveTest {
    private static final String JSON = "application/json";
    private static final int ROUNDS = 4;
    private static final int WRITES = 10;

    @Inject
    PlayedSeason plays;

    @Inject
    IntakeFixture intake;

    @ConfigProperty(name = "quarkus.flyway.jdbc-url")
    String address;

    @ConfigProperty(name = "quarkus.flyway.username")
    String owner;

    @ConfigProperty(name = "quarkus.flyway.password")
    String password;

    private PlayedSeason.Played played;
    private String cut;
    private String name;
    private UUID lastFinding;

    @BeforeEach
    void play() {
        played = plays.play();
        name = "Outlives " + UUID.randomUUID();
        cut = UUID.randomUUID().toString();
        lastFinding = null;
        put("epidemiologist", "/data-cuts/" + cut, "{\"season\":\"T2025\",\"name\":\"" + name + "\"}", 201);
    }

    @Test
    void noByteOfAnAnswerMovesWhateverIsWrittenAndWhateverBecomesOfTheTables() throws Exception {
        List<String> first = answers();
        String live = counts("");
        String onCut = counts("&cut=" + cut);
        whileOthersWork(() -> assertEquals(first, answers()));
        assertNotEquals(live, counts(""), "the live report has moved meanwhile");
        assertEquals(onCut, counts("&cut=" + cut + "&confidence=0.9"), "a question never asked finds the old counts");
        migrate();
        try {
            assertEquals(first, answers());
            assertEquals(onCut, counts("&cut=" + cut + "&confidence=0.8"));
            assertEquals(List.of(), moved(), "computed again from what the cut holds");
        } finally {
            takeBack();
        }
    }

    /** Every kind of answer, JSON and CSV, and the lines of the cut themselves. */
    private List<String> answers() {
        String units = "season=T2025&unit=" + played.north() + "," + played.south() + "&cut=" + cut;
        List<String> addresses = List.of(
                "prevalence?" + units,
                "prevalence.csv?" + units,
                "prevalence?by=managementUnit,sex&interval=CLOPPER_PEARSON&" + units,
                "prevalence?disease=COUNT_2&" + units,
                "prevalence.csv?by=mortalitySource&mortalitySource=HUNTER_HARVEST,VEHICLE&" + units,
                "comparisons?" + units,
                "comparisons.csv?" + units,
                "chance-of-detection?" + units,
                "chance-of-detection.csv?" + units,
                "pictures/weeks.csv?" + units,
                "pictures/turnaround.csv?" + units,
                "pictures/seasons.csv?" + units,
                "pictures/map.svg?" + units,
                "line-list?limit=1000&" + units,
                "line-list.csv?" + units);
        return addresses.stream()
                .map(path -> as("epidemiologist")
                        .get("/api/v1/" + path)
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .toList();
    }

    private String counts(String more) {
        JsonPath report = as("epidemiologist")
                .get("/api/v1/prevalence?season=T2025&unit=" + played.north() + "," + played.south() + more)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        return report.getList("cells.counted") + " " + report.getList("cells.detected") + " "
                + report.getList("takenToCounted.animals");
    }

    /** Checks at least so many times, and until so many writes went on beside it, however slow the machine is. */
    private void whileOthersWork(Runnable check) throws Exception {
        AtomicBoolean stop = new AtomicBoolean();
        AtomicInteger written = new AtomicInteger();
        ExecutorService people = Executors.newFixedThreadPool(4);
        List<Future<?>> work = new ArrayList<>();
        for (Runnable one :
                List.<Runnable>of(this::takeIn, this::correctFinding, this::swapAndReprint, this::changeSex)) {
            work.add(people.submit(() -> {
                do {
                    one.run();
                    written.incrementAndGet();
                } while (!stop.get());
            }));
        }
        try {
            for (int round = 0;
                    round < ROUNDS || written.get() < WRITES && work.stream().noneMatch(Future::isDone);
                    round++) {
                check.run();
            }
        } finally {
            stop.set(true);
            people.shutdown();
        }
        for (Future<?> one : work) {
            one.get();
        }
    }

    private void takeIn() {
        Deer deer = intake.aDeer();
        ObjectNode body = intake.yearlingWithLeftNode(deer).put("managementUnit", played.north());
        intake.take(deer, body);
    }

    private void correctFinding() {
        UUID id = UUID.randomUUID();
        boolean again = lastFinding != null;
        put(
                "liaison",
                "/findings/" + id,
                "{\"specimens\":[\""
                        + played.deer().get("late, with its result").label(Part.NODE_LEFT)
                        + "\"],\"method\":\"T_SCREEN\",\"stage\":\"SCREENING\",\"finding\":\"INCONCLUSIVE\",\"status\":\""
                        + (again ? "CORRECTED\",\"corrects\":\"" + lastFinding : "FINAL") + "\",\"accession\":\"L-"
                        + id.toString().substring(0, 8)
                        + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-22\",\"reportedOn\":\"2025-11-23\"}",
                201);
        lastFinding = id;
    }

    /** The tube goes to the other of two animals, and its label is printed again. */
    private void swapAndReprint() {
        Deer from = played.deer().get("plain male 3");
        Deer other = played.deer().get("plain male 4");
        String code = from.label(Part.NODE_LEFT);
        String bound = as("auditor").get("/api/v1/codes/" + code).jsonPath().getString("boundTo");
        String to = from.kit().equals(bound) ? other.kit() : from.kit();
        String path = "/specimens/" + code + "/re-attribution/" + UUID.randomUUID();
        put(
                "coordinator",
                path,
                "{\"kit\":\"" + to + "\",\"reason\":\"jars exchanged\",\"evidence\":\"photo of the tray\"}",
                201);
        as("epidemiologist").post("/api/v1" + path + "/confirmation").then().statusCode(200);
        put(
                "sampler",
                "/labels/" + code + "/reprints/" + UUID.randomUUID(),
                "{\"stock\":\"LETTER_30\",\"reason\":\"smeared in the rain\"}",
                201);
    }

    private void changeSex() {
        String kit = played.deer().get("plain male 1").kit();
        var story = as("sampler")
                .get("/api/v1/animals/" + kit)
                .then()
                .statusCode(200)
                .extract();
        String other = story.jsonPath().getString("sex").equals("MALE") ? "FEMALE" : "MALE";
        as("sampler")
                .header("If-Match", story.header("ETag"))
                .contentType(JSON)
                .body(intake.facts()
                        .put("sex", other)
                        .put("managementUnit", played.south())
                        .put("jawStatus", "READ")
                        .put("reason", "form read again")
                        .toString())
                .put("/api/v1/animals/" + kit)
                .then()
                .statusCode(200);
    }

    private static void put(String account, String path, String body, int status) {
        as(account)
                .contentType(JSON)
                .body(body)
                .put("/api/v1" + path)
                .then()
                .log()
                .ifValidationFails()
                .statusCode(status);
    }

    private void migrate() {
        Flyway.configure()
                .dataSource(address, owner, password)
                .locations("classpath:prevalence/later")
                .table("later_history")
                .baselineOnMigrate(true)
                .baselineVersion("1")
                .load()
                .migrate();
    }

    /** Other tests of the same database find it as they know it. */
    private void takeBack() throws SQLException {
        try (Connection connection = DriverManager.getConnection(address, owner, password);
                Statement statement = connection.createStatement()) {
            statement.execute("alter table line drop column later_note; alter table animal drop column later_note;"
                    + " alter table data_cut_line drop column later_position; drop table later_history");
        }
    }

    /** What a check finds moved in this cut's reports; turnaround follows the tube, which was put right meanwhile. */
    private List<Map<String, String>> moved() {
        String check = UUID.randomUUID().toString();
        put("epidemiologist", "/data-cuts/rechecks/" + check, "", 201);
        return as("epidemiologist")
                .get("/api/v1/data-cuts/rechecks/" + check)
                .jsonPath()
                .getList("figures.findAll { it.cut == '" + name + "' && !it.question.contains('\"picture\"') }");
    }
}
