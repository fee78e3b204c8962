package org.dentary.submission;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.WholeLists;
import org.dentary.codes.LabelCode;
import org.dentary.codes.Part;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.story.Words;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The pages of submissions as a browser without script uses them. What is done on a page is done now. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SubmissionPagesTest {
    private static final String AGREED = "agreed with the laboratory";

    @Inject
    SeasonFixture season;

    @Inject
    SubmissionFixture bench;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void aParcelIsBegunPackedSentAndCountedIn() {
        String here = bench.aNode();
        String lost = bench.aNode();
        bench.aNode();
        String page = post("/submissions", Map.of("laboratory", "T_LAB"))
                .statusCode(303)
                .extract()
                .header("Location");
        page = page.substring(page.indexOf("/submissions/"));
        for (String code : List.of(here, lost)) {
            post(page + "/pack", Map.of("code", code, "overrideReason", AGREED))
                    .statusCode(303)
                    .header("Location", endsWith("?packed=" + code));
        }
        get("liaison", page + "?packed=" + here)
                .statusCode(200)
                .body(
                        containsString("Packed: <span class=\"code\">" + Words.asLabel(here)),
                        containsString("Override: " + AGREED),
                        containsString("manifest.pdf"),
                        containsString("It has left now"),
                        containsString("Waiting to be sent"),
                        containsString("/api/v1/submissions/waiting.csv"),
                        not(containsString("Count in</button>")));
        String longest = as("liaison")
                .get("/api/v1/submissions/waiting.csv")
                .asString()
                .lines()
                .skip(1)
                .findFirst()
                .orElseThrow()
                .split(",")[0];
        get("liaison", page).body(containsString("/specimens/" + longest + "/custody"));
        post(page + "/dispatch", Map.of("carrier", "T_COURIER", "waybill", "W-9", "shipper", "a trained shipper"))
                .statusCode(303);
        get("liaison", page)
                .body(
                        containsString("T_COURIER W-9"),
                        containsString("Count in</button>"),
                        not(containsString("It has left now")),
                        not(containsString("Waiting to be sent")),
                        not(containsString("Take out")));
        post(page + "/receipt", Map.of("codes", here + "\r\nillegible")).statusCode(303);
        get("liaison", page)
                .body(
                        containsString("1 received, 1 missing"),
                        containsString("1 missing: each is a discrepancy"),
                        containsString("Arrived and on no list: illegible"),
                        containsString(">Short<"));
        String id = page.substring("/submissions/".length());
        assertEquals(List.of("SHORT " + lost), bench.discrepancies(id));
        post(page + "/receipt", Map.of("codes", lost)).statusCode(303);
        get("liaison", page)
                .body(containsString("2 received, 0 missing"))
                .body(not(containsString("missing: each is a discrepancy")));
    }

    @Test
    void eachScanIsAnsweredAtOnceAndKeepsWhatWasTyped() {
        String id = bench.begun("T_LAB");
        String page = "/submissions/" + id;
        String box = bench.aBox();
        String old = bench.aNode();
        post(page + "/pack", Map.of("code", old, "box", box))
                .statusCode(422)
                .body(
                        containsString("role=\"alert\""),
                        containsString("days from collection"),
                        containsString("value=\"" + old + "\""),
                        containsString("value=\"" + box + "\""));
        post(page + "/pack", Map.of("code", "")).statusCode(422).body(containsString("Scan the code on the tube"));
        post(page + "/pack", Map.of("code", "NOTACODE", "overrideReason", AGREED))
                .statusCode(422)
                .body(containsString("value=\"" + AGREED + "\""));
        post(page + "/pack", Map.of("code", old, "box", box, "overrideReason", AGREED))
                .statusCode(303)
                .header("Location", endsWith("?packed=" + old + "&box=" + box));
        get("liaison", page + "?packed=" + old + "&box=" + box)
                .body(
                        containsString("value=\"" + box + "\""),
                        containsString("Packed: <span class=\"code\">" + Words.asLabel(old)));
        post(page + "/pack", Map.of("code", old, "box", box, "overrideReason", AGREED))
                .statusCode(409)
                .body(containsString("is in this submission already"));
        post(page + "/take-out", Map.of("code", old)).statusCode(303);
        get("liaison", page).body(containsString("Nothing is packed yet"));
    }

    @Test
    void refusalsAreShownOnTheBench() {
        post("/submissions", Map.of()).statusCode(422).body(containsString("Choose the laboratory"));
        post("/submissions", Map.of("laboratory", "NOWHERE")).statusCode(422).body(containsString("NOWHERE"));
        String empty = "/submissions/" + bench.begun("T_LAB");
        post(empty + "/dispatch", Map.of("carrier", "T_COURIER"))
                .statusCode(409)
                .body(containsString("is empty"));
        post(empty + "/receipt", Map.of("codes", "")).statusCode(409).body(containsString("is PACKING"));
        String page = "/submissions/" + bench.packed(bench.aNode());
        post(page + "/dispatch", Map.of("carrier", " ", "waybill", "W-10"))
                .statusCode(422)
                .body(allOf(containsString("Say who carries it"), containsString("value=\"W-10\"")));
        get("liaison", "/submissions/" + UUID.randomUUID()).statusCode(404);
        get("liaison", "/submissions/seven").statusCode(404);
    }

    @Test
    void ofALongWaitThePageShowsTheOldestAndOffersTheRest() {
        for (int i = 0; i <= 50; i++) {
            bench.aNode();
        }
        String next = "/submissions";
        List<String> leafed = new java.util.ArrayList<>();
        while (next != null) {
            String page = get("liaison", next).statusCode(200).extract().asString();
            assertTrue(waitingRows(page) <= 50 && waitingRows(page) > 0, "no page is empty");
            java.util.regex.Pattern.compile("class=\"code\" href=\"/specimens/([^/]+)/")
                    .matcher(waiting(page))
                    .results()
                    .forEach(row -> leafed.add(row.group(1)));
            java.util.regex.Matcher link = java.util.regex.Pattern.compile("/submissions\\?waiting=[\\w-]+")
                    .matcher(page);
            next = link.find() ? link.group() : null;
        }
        assertEquals(WholeLists.inTheFile("liaison", "/api/v1/submissions/waiting.csv"), leafed);
    }

    private static String waiting(String page) {
        return page.substring(page.indexOf("id=\"waiting\""), page.indexOf("id=\"overdue\""));
    }

    private static int waitingRows(String page) {
        return waiting(page).split("class=\"code\" href=\"/specimens/", -1).length - 1;
    }

    @Test
    void theOverviewShowsWhatIsWhere() {
        String waiting = bench.aNode();
        String overdue = bench.aNode();
        String id = bench.sent(overdue);
        get("liaison", "/submissions")
                .statusCode(200)
                .body(
                        containsString("href=\"/submissions/" + id + "\""),
                        containsString("Sent and overdue"),
                        containsString("Days from dispatch to final report"));
        for (String table : List.of("list", "waiting", "overdue", "turnaround")) {
            String path = "/api/v1/submissions/" + table + ".csv";
            get("liaison", "/submissions").body(containsString("href=\"" + path + "\""));
            as("liaison")
                    .get(path)
                    .then()
                    .statusCode(200)
                    .contentType("text/csv")
                    .header("Cache-Control", "private, no-store");
            as("notifier").get(path).then().statusCode(403);
        }
        String left = as("liaison").get("/api/v1/submissions/overdue.csv").asString();
        assertTrue(left.startsWith("submission,id,laboratory,code,dispatchedAt,days,promisedDays\r\n"), left);
        assertTrue(left.matches("(?s).*," + id + ",T_LAB," + overdue + ",2025-11-15T15:00:00Z,\\d+,10\r\n.*"), left);
        String listed = as("liaison").get("/api/v1/submissions/waiting.csv").asString();
        assertTrue(listed.contains(waiting + ","), listed);
        assertTrue(as("liaison")
                .get("/api/v1/submissions/turnaround.csv")
                .asString()
                .startsWith("laboratory,findings,median,ninetieth,promisedDays\r\n"));
    }

    @Test
    void whoOnlyReadsIsOfferedNothingToDo() {
        String id = bench.packed(bench.aNode());
        get("auditor", "/submissions").statusCode(200).body(not(containsString("Begin packing")));
        get("auditor", "/submissions/" + id)
                .statusCode(200)
                .body(not(containsString("<button class=\"main\">")), not(containsString("Take out")));
        form("auditor").post("/submissions/" + id + "/pack").then().statusCode(403);
        get("notifier", "/submissions").statusCode(403);
    }

    @Test
    void tissueThatIsKeptDifferentlyNowIsSaidAtTheBench() {
        String code = bench.aNode();
        String path = "/submissions/" + bench.begun("T_LAB");
        post(path + "/keeping", Map.of("keptCode", code, "preservation", "FRESH_CHILLED", "keptReason", "none"))
                .statusCode(422)
                .body(containsString("already; was another tube meant"));
        post(path + "/keeping", Map.of("keptCode", code, "preservation", "FROZEN", "keptReason", " "))
                .statusCode(422)
                .body(containsString("Say why it is kept differently"), containsString(code));
        post(path + "/keeping", Map.of("keptCode", code, "preservation", "ICE", "keptReason", "no courier"))
                .statusCode(422)
                .body(containsString("is none of"));
        post(path + "/keeping", Map.of("keptCode", code, "preservation", "FROZEN", "keptReason", "no courier"))
                .statusCode(303);
        String story = as("liaison")
                .get("/api/v1/animals/" + code.substring(0, 8))
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(story.contains("FROZEN"), story);
        bench.pack(path.substring(13), code, "{\"packedAt\":\"2025-11-15T08:00:00-06:00\"}")
                .statusCode(201)
                .body("specimens[0].preservation", org.hamcrest.Matchers.equalTo("FROZEN"));
    }

    @Test
    void halfOfANodeInFormalinIsAPieceOfItsOwnFromTheBenchOn() {
        String code = bench.aNode();
        String spare = LabelCode.parse(code).kit().label(Part.SPARE_1).value();
        String path = "/submissions/" + bench.begun("T_LAB");
        get("liaison", path).body(containsString("Label on the piece"), containsString("formalin"));
        post(path + "/pieces", Map.of("pieceOf", code, "pieceCode", code, "pieceKept", "FORMALIN"))
                .statusCode(409)
                .body(containsString("A specimen is no piece of itself"), containsString(code));
        post(path + "/pieces", Map.of("pieceOf", code, "pieceCode", " ", "pieceKept", "FORMALIN"))
                .statusCode(422)
                .body(containsString("Scan a spare label of the same kit"));
        String goesTo = post(path + "/pieces", Map.of("pieceOf", code, "pieceCode", spare, "pieceKept", "FORMALIN"))
                .statusCode(303)
                .extract()
                .header("Location");
        get("liaison", goesTo.substring(goesTo.indexOf("/submissions")))
                .body(containsString("Piece recorded"), containsString("/specimens/" + spare + "/custody"));
        get("liaison", path + "?cut=" + code).body(not(containsString("Piece recorded")));
        String piece = "specimens.find { it.code == '" + spare + "' }.";
        as("liaison")
                .get("/api/v1/animals/" + code.substring(0, 8))
                .then()
                .body(piece + "parent", equalTo(code))
                .body(piece + "preservation", equalTo("FORMALIN"))
                .body(piece + "custodian", equalTo("T_LIAISON"));
    }

    private static ValidatableResponse get(String account, String path) {
        return as(account).accept("text/html").get(path).then();
    }

    private static RequestSpecification form(String account) {
        return as(account)
                .redirects()
                .follow(false)
                .accept("text/html, */*;q=0.5")
                .contentType("application/x-www-form-urlencoded; charset=UTF-8");
    }

    private static ValidatableResponse post(String path, Map<String, String> form) {
        return form("liaison").formParams(form).post(path).then();
    }
}
