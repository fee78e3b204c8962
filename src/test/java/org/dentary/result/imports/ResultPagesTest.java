package org.dentary.result.imports;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The pages of results as a browser without script uses them, and what they keep from whom. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ResultPagesTest {
    private static final String HEADER =
            "specimen_code,accession_number,test_method,stage,finding,tested_on,reported_on\r\n";

    @Inject
    IntakeFixture deer;

    @Inject
    SeasonFixture season;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void aFileIsLookedThroughAndPostedWithItsFaultyLineLeftOut() {
        Deer one = sent("T_LAB");
        String code = one.label(Part.NODE_LEFT);
        String page = upload(
                        HEADER + code + ",A-" + one.kit() + ",T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19\r\n"
                                + "1E5,A-1,T_SCREEN,SCREENING,NOT_DETECTED,2025-11-18,2025-11-19\r\n")
                .statusCode(303)
                .header("Location", containsString("/results/imports/"))
                .extract()
                .header("Location");
        page("liaison")
                .get(page)
                .then()
                .statusCode(200)
                .header("Cache-Control", "private, no-store")
                .body(
                        containsString("1 problem."),
                        containsString("name=\"leaveOut\" value=\"3\""),
                        containsString("Leave out every line with a problem (1)"),
                        containsString("href=\"/column-maps\""),
                        containsString("<li>specimen_code: "),
                        containsString(code));
        page("liaison").get(page + "/problems.csv").then().statusCode(200).body(containsString("SPREADSHEET_NUMBER"));
        post("liaison", page + "/posting", Map.of()).statusCode(409).body(containsString("nothing was posted"));
        post("liaison", page + "/posting", Map.of("leaveOut", "x")).statusCode(422);
        post("liaison", page + "/posting", Map.of("leaveOutFaulty", "yes")).statusCode(303);
        page("liaison")
                .get(page)
                .then()
                .body(
                        containsString("href=\"" + page.substring(page.indexOf("/results")) + "/problems.csv\""),
                        containsString("Posted: 1"),
                        containsString("<a class=\"button\" href=\"/submissions\">What is still out</a>"),
                        containsString("left out"),
                        not(containsString("Post the findings")));
        as("liaison").get("/api/v1/animals/" + one.kit()).then().body("outcome", equalTo("NOT_DETECTED"));
        page("liaison").get("/results").then().statusCode(200).body(containsString("answers.csv"));
        page("auditor")
                .get("/results")
                .then()
                .statusCode(200)
                .body(containsString("answers.csv"), not(containsString("Look it through</button>")));
    }

    /** Of long lists the first fifty are shown, with the way to all of them; their files have all. */
    @Test
    void longListsBeginWithFiftyAndLeadToTheRest() {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("""
                        insert into result_import (id, laboratory, format, digest, file_name, state, rows, postable,
                               uploaded_by, uploaded_at)
                        select gen_random_uuid(), 'T_LAB', 'CSV', 'x', 'long ago ' || n, 'PREVIEWED', 0, 0, 'T_LIAISON',
                               timestamptz '2001-01-01 00:00:00Z' + n * interval '1 minute'
                          from generate_series(1, 51) n
                        """).executeUpdate());
        page("liaison")
                .get("/results")
                .then()
                .statusCode(200)
                .body(containsString("/results?all=true#imports"))
                .body(not(containsString("long ago 1<")));
        page("liaison")
                .get("/results?all=true")
                .then()
                .statusCode(200)
                .body(containsString("long ago 1<"))
                .body(not(containsString("all=true#imports")));
        page("liaison").get("/results/imports.csv").then().body(containsString("long ago 1,"));
    }

    @Test
    void aFileThatCannotBeReadIsRefusedOnTheFormWithTheLaboratoryKept() {
        upload("a,b\r\n1,2\r\n")
                .statusCode(422)
                .body(containsString("role=\"alert\""), containsString("value=\"T_LAB\" selected"));
        upload("").statusCode(422).body(containsString("empty"));
    }

    @Test
    void aDetectionIsReleasedByASecondPersonOnly() {
        Deer one = sent("T_LAB", "T_LAB_CONFIRMING");
        post("coordinator", "/results/findings/new", finding(one, "SUSPECT", "SCREENING"))
                .statusCode(303)
                .header("Location", containsString("recorded="));
        page("liaison")
                .get("/results?all=true")
                .then()
                .body(
                        containsString("/animals/" + one.kit()),
                        containsString("<a href=\"/submissions\">Send for confirmation</a>"));
        page("coordinator")
                .get("/results/release/" + one.kit())
                .then()
                .statusCode(200)
                .body(containsString("A suspect is not released"), not(containsString("Release as detected")));
        post("coordinator", "/results/findings/new", finding(one, "DETECTED", "CONFIRMATORY"))
                .statusCode(303);
        String release = "/results/release/" + one.kit();
        page("coordinator").get(release).then().body(containsString("You recorded this detection"));
        post("coordinator", release, Map.of("disease", "CWD")).statusCode(403);
        post("liaison", release, Map.of("disease", "CWD")).statusCode(403);
        page("coordinator-two")
                .get(release)
                .then()
                .body(
                        containsString("Detected, not released"),
                        containsString("confirmatory T_CONFIRM"),
                        containsString("Release as detected"));
        as("epidemiologist").get("/api/v1/animals/" + one.kit()).then().body("outcome", equalTo("PENDING"));
        post("coordinator-two", release, Map.of("disease", "CWD", "reason", "report compared"))
                .statusCode(303);
        page("coordinator").get(release).then().body(containsString("Released as detected by Test coordinator-two"));
        as("epidemiologist").get("/api/v1/animals/" + one.kit()).then().body("outcome", equalTo("DETECTED"));
    }

    @Test
    void whoMadeTheTestIsKeptWithAFindingByHand() {
        Deer one = sent("T_LAB");
        String path = "/api/v1/findings/" + UUID.randomUUID();
        String body = "{\"specimens\":[\"" + one.label(Part.NODE_LEFT) + "\"],\"method\":\"T_SCREEN\","
                + "\"stage\":\"SCREENING\",\"finding\":\"NOT_DETECTED\",\"status\":\"FINAL\",\"accession\":\"P-"
                + one.kit()
                + "\",\"laboratory\":\"T_LAB\",\"performingLaboratory\":\"%s\",\"testedOn\":\"2025-11-18\","
                + "\"reportedOn\":\"2025-11-19\"}";
        json(path, body.formatted("NOBODY"))
                .statusCode(422)
                .body("errors[0].field", equalTo("performingLaboratory"))
                .body("errors[0].rule", equalTo("LABORATORY_UNKNOWN"));
        json(path, body.formatted("T_LAB_CONFIRMING"))
                .statusCode(201)
                .body("laboratory", equalTo("T_LAB"))
                .body("performingLaboratory", equalTo("T_LAB_CONFIRMING"));
        json(path, body.formatted("T_LAB_CONFIRMING")).statusCode(200);
        json(path, body.formatted("T_LAB")).statusCode(409);
        page("liaison")
                .get("/results/findings/new?corrects=" + path.substring("/api/v1/findings/".length()))
                .then()
                .statusCode(200)
                .body(containsString("<option value=\"T_LAB_CONFIRMING\" selected>"));
    }

    private static ValidatableResponse json(String path, String body) {
        return as("liaison")
                .contentType("application/json")
                .body(body)
                .put(path)
                .then();
    }

    @Test
    void whoMayNotKnowSeesNoneOfIt() {
        Deer one = sent("T_LAB", "T_LAB_CONFIRMING");
        post("liaison", "/results/findings/new", finding(one, "SUSPECT", "SCREENING"))
                .statusCode(303);
        for (String account : List.of("sampler", "epidemiologist")) {
            for (String path : List.of(
                    "/results",
                    "/results/open.csv",
                    "/reviews/waiting.csv",
                    "/reviews/looks.csv",
                    "/reviews",
                    "/api/v1/reviews",
                    "/results/release/" + one.kit())) {
                page(account).get(path).then().statusCode(403).body(not(containsString("SUSPECT")));
            }
        }
        page("notifier")
                .get("/results/release/" + one.kit())
                .then()
                .statusCode(200)
                .body(not(containsString("T_LIAISON")));
        page("auditor")
                .get("/results/open.csv")
                .then()
                .statusCode(200)
                .body(containsString(one.kit() + ",CWD,SUSPECT"));
        post("auditor", "/results/findings/new", finding(one, "DETECTED", "SCREENING"))
                .statusCode(403);
    }

    @Test
    void aFaultyFindingIsShownAgainWithEveryMessageAndWhatWasTyped() {
        Map<String, String> form = finding(sent("T_LAB"), "UNSUITABLE", "SCREENING");
        form.put("accession", "");
        form.put("reportedOn", "19/11/2025");
        post("liaison", "/results/findings/new", form)
                .statusCode(422)
                .body(allOf(containsString("is not a day"), containsString("value=\"19/11/2025\"")));
        form.put("reportedOn", "2025-11-19");
        post("liaison", "/results/findings/new", form)
                .statusCode(422)
                .body(containsString("the laboratory"), containsString("value=\"UNSUITABLE\" selected"));
        form.put("accession", "A-9");
        post("liaison", "/results/findings/new", form).statusCode(422).body(containsString("needs a reason"));
        form.put("reason", "AUTOLYSED");
        String recorded = post("liaison", "/results/findings/new", form)
                .statusCode(303)
                .extract()
                .header("Location");
        post("liaison", "/results/findings/new", form).statusCode(303).header("Location", equalTo(recorded));
        String id = form.get("id");
        page("liaison")
                .get("/results/findings/new?corrects=" + id)
                .then()
                .statusCode(200)
                .body(containsString("Correct a finding"), containsString("name=\"corrects\" value=\"" + id));
    }

    /** A deer whose left node was received by the first laboratory and is ordered at all of them. */
    private Deer sent(String... laboratories) {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        String code = one.label(Part.NODE_LEFT);
        deer.put("liaison", "/animals/" + one.kit() + "/specimens/" + code, deer.node(one))
                .statusCode(201);
        for (String laboratory : laboratories) {
            String submission = "/submissions/" + UUID.randomUUID();
            deer.put("liaison", submission, "{\"laboratory\":\"" + laboratory + "\"}")
                    .statusCode(201);
            deer.put(
                            "liaison",
                            submission + "/specimens/" + code,
                            "{\"packedAt\":\"2025-11-15T08:00:00-06:00\",\"overrideReason\":\"agreed with the laboratory\"}")
                    .statusCode(201);
            if (laboratory.equals("T_LAB_CONFIRMING")) {
                break;
            }
            as("liaison")
                    .contentType("application/json")
                    .body("{\"occurredAt\":\"2025-11-15T09:00:00-06:00\",\"carrier\":\"T_COURIER\",\"waybill\":\"W-1\","
                            + "\"reason\":\"written down on paper\"}")
                    .post("/api/v1" + submission + "/dispatch")
                    .then()
                    .statusCode(200);
            deer.put(
                            "liaison",
                            submission + "/receipt",
                            "{\"receivedAt\":\"2025-11-16T10:00:00-06:00\",\"codes\":[\"" + code
                                    + "\"],\"reason\":\"from the laboratory's list\"}")
                    .statusCode(201);
        }
        return one;
    }

    private static Map<String, String> finding(Deer one, String word, String stage) {
        boolean confirming = stage.equals("CONFIRMATORY");
        Map<String, String> form = new LinkedHashMap<>();
        form.put("id", UUID.randomUUID().toString());
        form.put("specimens", one.label(Part.NODE_LEFT));
        form.put("laboratory", confirming ? "T_LAB_CONFIRMING" : "T_LAB");
        form.put("method", confirming ? "T_CONFIRM" : "T_SCREEN");
        form.put("stage", stage);
        form.put("finding", word);
        form.put("status", "FINAL");
        form.put("accession", "A-" + one.kit());
        form.put("testedOn", "2025-11-18");
        form.put("reportedOn", "2025-11-19");
        return form;
    }

    private static ValidatableResponse upload(String csv) {
        return page("liaison")
                .redirects()
                .follow(false)
                .multiPart("laboratory", "T_LAB")
                .multiPart("file", "answers.csv", csv.getBytes(StandardCharsets.UTF_8), "text/csv")
                .post("/results/imports")
                .then();
    }

    private static RequestSpecification page(String account) {
        return as(account).accept("text/html, */*;q=0.5");
    }

    private static ValidatableResponse post(String account, String path, Map<String, String> form) {
        return page(account)
                .redirects()
                .follow(false)
                .contentType("application/x-www-form-urlencoded; charset=UTF-8")
                .formParams(form)
                .post(path)
                .then();
    }
}
