package org.dentary.prevalence;

import static org.dentary.intake.IntakeFixture.as;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;

/**
 * A season of thirty-odd animals and two diseases, played through the service as people would: readers who differ, swapped
 * labels, two kits of one animal, entries in error, corrections of animals and of findings, held suspects, tissue that is
 * unsuitable, untested or still on its way, and animals that come in late.
 */
@ApplicationScoped
public class PlayedSeason {
    public static final String SECOND_DISEASE = "COUNT_2";
    private static final String JSON = "application/json";

    private final SeasonFixture season;
    private final IntakeFixture intake;
    private final EntityManager entities;

    PlayedSeason(SeasonFixture season, IntakeFixture intake, EntityManager entities) {
        this.season = season;
        this.intake = intake;
        this.entities = entities;
    }

    /** Two units that no other test uses, and every animal by the name of what happens to it. */
    public record Played(String north, String south, Map<String, Deer> deer) {}

    /** Plays it once more, with fresh units and animals. */
    public Played play() {
        season.ensure();
        Played played = new Played(unit("T_NORTH"), unit("T_SOUTH"), new LinkedHashMap<>());
        takeIn(played);
        send(played);
        results(played);
        release(played, "detected", SeasonFixture.DISEASE);
        release(played, "detected in two nodes", SeasonFixture.DISEASE);
        release(played, "swapped to", SeasonFixture.DISEASE);
        release(played, "second disease", SECOND_DISEASE);
        putRight(played);
        late(played);
        return played;
    }

    private String unit(String region) {
        String code = "CNT_" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(Locale.ROOT);
        QuarkusTransaction.requiringNew().run(() -> {
            sql(
                    "insert into disease (code, name, position) values ('COUNT_2', 'Second disease', 903) on conflict do nothing");
            sql("insert into test_method (code, name, position, disease, accepted_tissues) values"
                    + " ('COUNT_2_SCREEN', 'Second screening', 903, 'COUNT_2', array['MEDIAL_RETROPHARYNGEAL_NODE']),"
                    + " ('COUNT_2_CONFIRM', 'Second confirmation', 904, 'COUNT_2', array['MEDIAL_RETROPHARYNGEAL_NODE'])"
                    + " on conflict do nothing");
            sql("insert into management_unit (code, name, position, region) values ('" + code + "', 'Count " + code
                    + "', 95, '" + region + "')");
            sql("insert into plan_setting (name, value, unit) values ('DISEASES_ESTABLISHED', 'CWD COUNT_2', '" + code
                    + "')");
        });
        return code;
    }

    private void sql(String statement) {
        entities.createNativeQuery(statement).executeUpdate();
    }

    private void takeIn(Played played) {
        for (int i = 1; i <= 4; i++) {
            adult(played, "plain male " + i, "MALE", i % 2 == 0 ? played.north() : played.south());
        }
        adult(played, "plain female", "FEMALE", played.north());
        adult(played, "both nodes", "MALE", played.north(), Part.NODE_LEFT, Part.NODE_RIGHT);
        adult(played, "one node unreported", "MALE", played.south(), Part.NODE_LEFT, Part.NODE_RIGHT);
        yearling(played, "detected", "MALE", played.south());
        adult(played, "detected in two nodes", "FEMALE", played.south(), Part.NODE_LEFT, Part.NODE_RIGHT);
        adult(played, "detected and held", "FEMALE", played.north());
        adult(played, "suspect", "MALE", played.north());
        adult(played, "unsuitable", "FEMALE", played.south());
        adult(played, "inconclusive", "MALE", played.south());
        adult(played, "not tested", "MALE", played.north());
        adult(played, "never sent", "MALE", played.north());
        adult(played, "without tissue", "FEMALE", played.north(), new Part[0]);
        adult(played, "entered in error", "MALE", played.north());
        adult(played, "duplicate", "MALE", played.south());
        adult(played, "linked and unlinked", "FEMALE", played.south());
        adult(played, "swapped from", "MALE", played.north());
        adult(played, "swapped to", "FEMALE", played.south(), new Part[0]);
        adult(played, "swap open, from", "MALE", played.south());
        adult(played, "swap open, to", "MALE", played.south());
        yearling(played, "readers differ, settled", "FEMALE", played.north());
        yearling(played, "readers differ, open", "FEMALE", played.south());
        adult(played, "sex corrected", "MALE", played.north());
        adult(played, "finding corrected", "MALE", played.north());
        adult(played, "second disease", "MALE", played.north());
        take(played, "vehicle", facts("MALE", played.north()).put("mortalitySource", "VEHICLE"), Part.NODE_LEFT);
        take(played, "captive", facts("FEMALE", played.south()).put("origin", "CAPTIVE"), Part.NODE_LEFT);
        take(played, "signs seen", facts("FEMALE", played.south()).put("clinicalSigns", "SEEN"), Part.NODE_LEFT);
        take(played, "jaw not read", facts("FEMALE", played.north()), Part.NODE_LEFT);
        ObjectNode odd = facts("MALE", played.south()).put("jawStatus", "READ");
        odd.set("jawReading", intake.contradicting(UUID.randomUUID()));
        take(played, "contradicting jaw", odd, Part.NODE_LEFT);
        ObjectNode known = facts("MALE", played.north()).put("jawStatus", "READ");
        known.set("jawReading", intake.knownAge(UUID.randomUUID(), "FAWN"));
        take(played, "fawn by its mark", known, Part.NODE_LEFT);
    }

    private ObjectNode facts(String sex, String unit) {
        return intake.facts().put("sex", sex).put("managementUnit", unit);
    }

    private void adult(Played played, String name, String sex, String unit) {
        adult(played, name, sex, unit, Part.NODE_LEFT);
    }

    private void adult(Played played, String name, String sex, String unit, Part... nodes) {
        ObjectNode body = facts(sex, unit).put("jawStatus", "READ");
        body.set("jawReading", intake.adult(UUID.randomUUID()));
        take(played, name, body, nodes);
    }

    private void yearling(Played played, String name, String sex, String unit) {
        ObjectNode body = facts(sex, unit).put("jawStatus", "READ");
        body.set("jawReading", intake.yearling(UUID.randomUUID()));
        take(played, name, body, Part.NODE_LEFT);
    }

    private void take(Played played, String name, ObjectNode body, Part... nodes) {
        Deer deer = intake.aDeer();
        for (Part node : nodes) {
            IntakeFixture.with(
                    body,
                    intake.specimen(
                            deer.label(node),
                            "MEDIAL_RETROPHARYNGEAL_NODE",
                            node == Part.NODE_LEFT ? "LEFT" : "RIGHT"));
        }
        intake.take(deer, body);
        played.deer().put(name, deer);
    }

    /** Everything but one node goes to the laboratory. */
    private void send(Played played) {
        List<String> codes = new ArrayList<>();
        played.deer().forEach((name, deer) -> {
            if (!List.of("without tissue", "swapped to", "never sent").contains(name)) {
                codes.add(deer.label(Part.NODE_LEFT));
            }
        });
        for (String two : List.of("both nodes", "one node unreported", "detected in two nodes")) {
            codes.add(played.deer().get(two).label(Part.NODE_RIGHT));
        }
        send(codes);
    }

    private void send(List<String> codes) {
        String list = "[\"" + String.join("\",\"", codes) + "\"]";
        String handOver = UUID.randomUUID().toString();
        put(
                        "sampler",
                        "/hand-overs/" + handOver,
                        "{\"codes\":" + list + ",\"to\":\"liaison\",\"place\":\"T_STATION_1\","
                                + "\"occurredAt\":\"2025-11-14T17:00:00-06:00\",\"reason\":\"entered from paper\"}")
                .statusCode(201);
        post(
                "liaison",
                "/hand-overs/" + handOver + "/acceptance",
                "{\"codes\":" + list
                        + ",\"occurredAt\":\"2025-11-14T17:05:00-06:00\",\"reason\":\"entered from paper\"}");
        String submission = UUID.randomUUID().toString();
        put("liaison", "/submissions/" + submission, "{\"laboratory\":\"T_LAB\"}")
                .statusCode(201);
        codes.forEach(code -> put(
                        "liaison",
                        "/submissions/" + submission + "/specimens/" + code,
                        "{\"packedAt\":\"2025-11-15T09:00:00-06:00\"}")
                .statusCode(201));
        post(
                "liaison",
                "/submissions/" + submission + "/dispatch",
                "{\"occurredAt\":\"2025-11-15T12:00:00-06:00\",\"carrier\":\"T_COURIER\",\"waybill\":\"W-1\","
                        + "\"reason\":\"entered next week\"}");
    }

    private void results(Played played) {
        for (String name : List.of(
                "plain male 1",
                "plain male 2",
                "plain male 3",
                "plain male 4",
                "plain female",
                "one node unreported",
                "duplicate",
                "linked and unlinked",
                "entered in error",
                "swap open, from",
                "swap open, to",
                "readers differ, settled",
                "readers differ, open",
                "sex corrected",
                "second disease",
                "vehicle",
                "captive",
                "signs seen",
                "jaw not read",
                "contradicting jaw",
                "fawn by its mark")) {
            find(played, name, "T_SCREEN", "SCREENING", "NOT_DETECTED", null);
        }
        both(played, "both nodes", "T_SCREEN", "SCREENING", "NOT_DETECTED");
        both(played, "detected in two nodes", "T_SCREEN", "SCREENING", "DETECTED");
        both(played, "detected in two nodes", "T_CONFIRM", "CONFIRMATORY", "DETECTED");
        for (String name : List.of("detected", "detected and held", "swapped from")) {
            find(played, name, "T_SCREEN", "SCREENING", "SUSPECT", null);
            find(played, name, "T_CONFIRM", "CONFIRMATORY", "DETECTED", null);
        }
        find(played, "suspect", "T_SCREEN", "SCREENING", "SUSPECT", null);
        find(played, "unsuitable", "T_SCREEN", "SCREENING", "UNSUITABLE", "AUTOLYSED");
        find(played, "inconclusive", "T_SCREEN", "SCREENING", "INCONCLUSIVE", null);
        find(played, "not tested", "T_SCREEN", "SCREENING", "NOT_TESTED", "NOT_RECEIVED");
        find(played, "plain male 1", "COUNT_2_SCREEN", "SCREENING", "NOT_DETECTED", null);
        find(played, "plain male 2", "COUNT_2_SCREEN", "SCREENING", "INCONCLUSIVE", null);
        find(played, "plain female", "COUNT_2_SCREEN", "SCREENING", "NOT_DETECTED", null);
        find(played, "second disease", "COUNT_2_SCREEN", "SCREENING", "DETECTED", null);
        find(played, "second disease", "COUNT_2_CONFIRM", "CONFIRMATORY", "DETECTED", null);
        UUID first = find(played, "finding corrected", "T_SCREEN", "SCREENING", "INCONCLUSIVE", null);
        finding(
                played.deer().get("finding corrected"),
                List.of(Part.NODE_LEFT),
                "T_SCREEN",
                "SCREENING",
                "NOT_DETECTED",
                "\"status\":\"CORRECTED\",\"corrects\":\"" + first + "\"",
                null);
        swap(played);
    }

    /** The tube of one animal turns out to be another's; a second such question stays open. */
    private void swap(Played played) {
        String done = ask(played, "swapped from", "swapped to");
        as("epidemiologist").post("/api/v1" + done + "/confirmation").then().statusCode(200);
        ask(played, "swap open, from", "swap open, to");
    }

    private String ask(Played played, String from, String to) {
        String path =
                "/specimens/" + played.deer().get(from).label(Part.NODE_LEFT) + "/re-attribution/" + UUID.randomUUID();
        put(
                        "coordinator",
                        path,
                        "{\"kit\":\"" + played.deer().get(to).kit()
                                + "\",\"reason\":\"jars exchanged on the bench\",\"evidence\":\"photo of the tray\"}")
                .statusCode(201);
        return path;
    }

    private void putRight(Played played) {
        Map<String, Deer> deer = played.deer();
        change(
                deer.get("entered in error"),
                body(played, "MALE", played.north()).put("enteredInError", true).put("reason", "practice deer"));
        change(deer.get("sex corrected"), body(played, "FEMALE", played.north()).put("reason", "form read again"));
        String link = "{\"reason\":\"head and nodes came on two days\",\"evidence\":\"same tag\"}";
        for (String[] pair : new String[][] {{"duplicate", "plain male 1"}, {"linked and unlinked", "plain female"}}) {
            put(
                            "epidemiologist",
                            "/animals/" + deer.get(pair[0]).kit() + "/same-as/"
                                    + deer.get(pair[1]).kit(),
                            link)
                    .statusCode(201);
        }
        post(
                "coordinator",
                "/animals/" + deer.get("linked and unlinked").kit() + "/same-as/undoing",
                "{\"reason\":\"tags differ after all\"}");
        for (String name : List.of("readers differ, settled", "readers differ, open")) {
            UUID second = UUID.randomUUID();
            put(
                            "coordinator",
                            "/animals/" + deer.get(name).kit() + "/jaw-readings/" + second,
                            intake.adult(second).toString())
                    .statusCode(201);
            if (name.endsWith("settled")) {
                designate(deer.get(name), "\"reading\":\"" + second + "\"");
            }
        }
        designate(deer.get("fawn by its mark"), "\"ageClass\":\"FAWN\"");
    }

    private ObjectNode body(Played played, String sex, String unit) {
        return facts(sex, unit).put("jawStatus", "READ");
    }

    private void change(Deer deer, ObjectNode body) {
        as("sampler")
                .header("If-Match", "\"0\"")
                .contentType(JSON)
                .body(body.toString())
                .put("/api/v1/animals/" + deer.kit())
                .then()
                .statusCode(200);
    }

    private void designate(Deer deer, String what) {
        put(
                        "epidemiologist",
                        "/animals/" + deer.kit() + "/designated-age",
                        "{" + what + ",\"reason\":\"seen by a third reader\"}")
                .statusCode(201);
    }

    /** Animals of weeks ago whose forms come in when the results of the others are known. */
    private void late(Played played) {
        adult(played, "late, still to send", "MALE", played.south());
        adult(played, "late, with its result", "FEMALE", played.south());
        send(List.of(played.deer().get("late, with its result").label(Part.NODE_LEFT)));
        find(played, "late, with its result", "T_SCREEN", "SCREENING", "NOT_DETECTED", null);
    }

    private UUID find(Played played, String name, String method, String stage, String word, String reason) {
        return finding(
                played.deer().get(name), List.of(Part.NODE_LEFT), method, stage, word, "\"status\":\"FINAL\"", reason);
    }

    private void both(Played played, String name, String method, String stage, String word) {
        finding(
                played.deer().get(name),
                List.of(Part.NODE_LEFT, Part.NODE_RIGHT),
                method,
                stage,
                word,
                "\"status\":\"FINAL\"",
                null);
    }

    private UUID finding(
            Deer deer, List<Part> nodes, String method, String stage, String word, String status, String reason) {
        UUID id = UUID.randomUUID();
        put(
                        "liaison",
                        "/findings/" + id,
                        "{\"specimens\":[\""
                                + String.join(
                                        "\",\"", nodes.stream().map(deer::label).toList())
                                + "\"],\"method\":\"" + method + "\",\"stage\":\"" + stage + "\",\"finding\":\"" + word
                                + "\"," + status + ",\"accession\":\"A-"
                                + id.toString().substring(0, 8)
                                + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\",\"reportedOn\":\"2025-11-21\""
                                + (reason == null ? "" : ",\"reason\":\"" + reason + "\"") + "}")
                .statusCode(201);
        return id;
    }

    private void release(Played played, String name, String disease) {
        put(
                        "coordinator",
                        "/animals/" + played.deer().get(name).kit() + "/release",
                        "{\"disease\":\"" + disease + "\"}")
                .statusCode(201);
    }

    private static ValidatableResponse put(String account, String path, String body) {
        return as(account)
                .contentType(JSON)
                .body(body)
                .put("/api/v1" + path)
                .then()
                .log()
                .ifValidationFails();
    }

    private static void post(String account, String path, String body) {
        as(account)
                .contentType(JSON)
                .body(body)
                .post("/api/v1" + path)
                .then()
                .statusCode(org.hamcrest.Matchers.oneOf(200, 201));
    }
}
