package org.dentary.intake.mixup;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.WholeLists;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** Suspected mix-ups: found from what is recorded, opened side by side, put right or set aside. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class MixUpTest {
    @Inject
    IntakeFixture deer;

    @Inject
    ObjectMapper json;

    @Test
    void theSameTagOnTwoKitsIsShownUntilTheyCountOnce() {
        String tag = "T" + UUID.randomUUID().toString().substring(0, 8);
        Deer one = tagged(tag);
        Deer two = tagged(tag.toLowerCase());
        assertEquals(1, count(one, two, Sign.SAME_IDENTIFIER));
        String detail = find(one, two, Sign.SAME_IDENTIFIER).get("detail").toString();
        assertTrue(detail.equalsIgnoreCase("EAR_TAG " + tag), detail);
        as("epidemiologist")
                .contentType("application/json")
                .body(json.createObjectNode()
                        .put("reason", "one deer")
                        .put("evidence", "the tag")
                        .toString())
                .put("/api/v1/animals/" + one.kit() + "/same-as/" + two.kit())
                .then()
                .statusCode(201);
        assertEquals(0, count(one, two, Sign.SAME_IDENTIFIER));
    }

    @Test
    void aJawWithoutTissueIsHeldAgainstTissueWithoutAJawOfThatDay() {
        Deer jaw = deer.aDeer();
        Deer tissue = deer.aDeer();
        Deer otherSex = deer.aDeer();
        deer.take(tissue, IntakeFixture.with(onADayOfItsOwn(), deer.node(tissue)));
        // The nearest in time, but another sex.
        deer.take(otherSex, IntakeFixture.with(onADayOfItsOwn().put("sex", "FEMALE"), deer.node(otherSex)));
        ObjectNode read = onADayOfItsOwn().put("jawStatus", "READ");
        read.set("jawReading", deer.yearling(UUID.randomUUID()).put("readAt", "2025-10-03T09:00:00-05:00"));
        deer.take(jaw, read);
        assertEquals(1, count(jaw, tissue, Sign.TWO_HALVES));
        assertEquals(0, count(jaw, otherSex, Sign.TWO_HALVES));
        deer.put("sampler", "/animals/" + jaw.kit() + "/specimens/" + jaw.label(Part.NODE_LEFT), deer.node(jaw))
                .statusCode(201);
        assertEquals(0, count(jaw, tissue, Sign.TWO_HALVES));
    }

    @Test
    void labelsScannedTogetherThatAreNotOneKitAreKeptOnce() {
        Deer one = taken();
        Deer two = taken();
        for (int i = 0; i < 2; i++) {
            as("sampler")
                    .get("/kits/scan-back?code=" + one.label(Part.JAW) + "&code=" + one.label(Part.NODE_LEFT) + "&next="
                            + two.label(Part.STUB))
                    .then()
                    .statusCode(409)
                    .body(containsString("/animals/mix-ups"));
        }
        assertEquals(1, count(one, two, Sign.SCANNED_TOGETHER));
        assertEquals(
                one.label(Part.JAW) + " " + one.label(Part.NODE_LEFT) + " " + two.label(Part.STUB),
                find(one, two, Sign.SCANNED_TOGETHER).get("detail"));
    }

    @Test
    void aJarUnderAnotherCodeOpensWithAFieldForTheSecondKit() {
        Deer one = deer.aDeer();
        Deer two = taken();
        deer.take(one, deer.yearlingWithLeftNode(one));
        as("liaison")
                .contentType("application/json")
                .body(json.createObjectNode()
                        .put("code", one.label(Part.NODE_LEFT))
                        .put("kind", "WRONG_ID")
                        .put("owner", "T_LIAISON")
                        .put("dueOn", "2027-01-01")
                        .put("evidence", "the lid says otherwise")
                        .toString())
                .put("/api/v1/discrepancies/" + UUID.randomUUID())
                .then()
                .statusCode(201);
        Map<String, Object> found = find(one, null, Sign.WRONG_ID);
        assertTrue(found.get("detail").toString().contains("the lid says otherwise"));
        String page = (String) found.get("href");
        as("liaison").get(page).then().statusCode(200).body(containsString("Scan any label of the other animal"));
        as("liaison")
                .get(page + "?with=" + two.label(Part.STUB))
                .then()
                .statusCode(200)
                .body(allOf(
                        containsString("The other animal"),
                        containsString("/animals/" + two.kit() + "\""),
                        containsString("value=\"" + two.kit() + "\""),
                        not(containsString("Scan any label of the other animal"))));
        as("liaison")
                .get(page + "?with=QQQQ")
                .then()
                .statusCode(200)
                .body(allOf(containsString("aria-invalid"), containsString("This animal")));
    }

    @Test
    void aJawThatDoesNotFitIsShown() {
        Deer one = deer.aDeer();
        ObjectNode body = deer.facts().put("jawStatus", "READ");
        ObjectNode reading = deer.yearling(UUID.randomUUID());
        // J11: a milk third tooth beside a first molar worn wider than its enamel.
        reading.putArray("teeth").addObject().put("position", 4).put("dentineVsEnamel", "WIDER");
        body.set("jawReading", reading);
        deer.take(one, body);
        assertEquals("J11", find(one, null, Sign.JAW_OF_ANOTHER).get("detail"));
    }

    @Test
    void whatWasLookedIntoAndWasNoneIsSetAsideWithItsReason() {
        Deer one = taken();
        Deer two = taken();
        scan(one, two);
        Map<String, String> form = Map.of(
                "kit",
                one.label(Part.JAW),
                "other",
                two.kit(),
                "sign",
                "SCANNED_TOGETHER",
                "reason",
                "held by mistake");
        post("sampler", form, 403);
        post("epidemiologist", Map.of("kit", one.kit(), "other", two.kit(), "sign", "SCANNED_TOGETHER"), 422);
        post("epidemiologist", Map.of("kit", one.kit(), "other", "", "sign", "SCANNED_TOGETHER", "reason", "x"), 422);
        assertEquals(1, count(one, two, Sign.SCANNED_TOGETHER));
        post("epidemiologist", form, 303);
        post("epidemiologist", form, 303);
        assertEquals(0, count(one, two, Sign.SCANNED_TOGETHER));
        List<Map<String, Object>> all =
                WholeLists.items("coordinator", "/api/v1/suspected-mix-ups?all=true&limit=1000");
        Map<String, Object> aside = all.stream()
                .filter(each -> is(each, one, two, Sign.SCANNED_TOGETHER))
                .findFirst()
                .orElseThrow();
        assertTrue(aside.get("setAside").toString().endsWith("held by mistake"), aside.toString());
        as("coordinator")
                .get("/api/v1/suspected-mix-ups/table.csv?all=true")
                .then()
                .body(containsString("held by mistake"));
    }

    @Test
    void anyTwoAreComparedFromTheirLabelsAndASamplerSeesTheirStationsAlone() {
        Deer one = taken();
        Deer two = taken();
        as("sampler")
                .redirects()
                .follow(false)
                .get("/animals/mix-ups/compare?kit=" + one.label(Part.STUB) + "&with=" + two.label(Part.JAW))
                .then()
                .statusCode(303)
                .header("Location", containsString("/animals/" + one.kit() + "/put-right?with=" + two.kit()));
        as("sampler")
                .get("/animals/mix-ups/compare?kit=nonsense&with=" + two.kit())
                .then()
                .statusCode(422);
        scan(one, two);
        assertTrue(items("sampler").stream().anyMatch(each -> is(each, one, two, Sign.SCANNED_TOGETHER)));
        assertFalse(items("sampler-two").stream().anyMatch(each -> is(each, one, two, Sign.SCANNED_TOGETHER)));
        as("sampler").get("/animals/mix-ups").then().statusCode(200).body(containsString("Suspected mix-ups"));
        for (String other : List.of("notifier", "auditor")) {
            as(other).get("/animals/mix-ups").then().statusCode(403);
            as(other).get("/api/v1/suspected-mix-ups").then().statusCode(403);
        }
    }

    @Test
    void ofManyTheNewestAreShownAndOlderOnesOnRequest() {
        // Eleven kits under one tag are 55 pairs.
        String tag = "M" + UUID.randomUUID().toString().substring(0, 8);
        for (int i = 0; i < 11; i++) {
            tagged(tag);
        }
        String page = as("coordinator")
                .get("/animals/mix-ups")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertEquals(50, shown(page));
        var matcher = java.util.regex.Pattern.compile("href=\"(/animals/mix-ups\\?after=[^\"]+)\"")
                .matcher(page);
        assertTrue(matcher.find(), page);
        as("coordinator")
                .urlEncodingEnabled(false)
                .get(matcher.group(1))
                .then()
                .statusCode(200)
                .body(containsString("The newest again"));
    }

    @Test
    void everyPageOfTheListTogetherIsTheFile() {
        String tag = "P" + UUID.randomUUID().toString().substring(0, 8);
        Deer[] three = {tagged(tag), tagged(tag), tagged(tag)};
        List<Map<String, Object>> all = WholeLists.items("coordinator", "/api/v1/suspected-mix-ups?all=true&limit=100");
        assertEquals(
                3,
                all.stream()
                        .filter(one -> ("EAR_TAG " + tag).equals(one.get("detail")))
                        .count());
        assertEquals(
                all.size(),
                all.stream()
                        .map(one -> one.get("kit") + " " + one.get("other") + " " + one.get("sign"))
                        .distinct()
                        .count(),
                "each once");
        String file = as("coordinator")
                .get("/api/v1/suspected-mix-ups/table.csv?all=true")
                .asString();
        for (int i = 0; i < 3; i++) {
            String kit = three[i].kit();
            assertEquals(
                    2,
                    file.lines()
                            .filter(line -> line.contains(tag) && line.contains(kit))
                            .count());
        }
        as("coordinator")
                .get("/api/v1/suspected-mix-ups?after=yesterday")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("after"));
        as("coordinator")
                .get("/api/v1/suspected-mix-ups?limit=0")
                .then()
                .statusCode(422)
                .body("errors[0].field", equalTo("limit"));
    }

    /** A number like "none" on many: each is held against ten of them, not against all. */
    @Test
    void aNumberThatManyCarryDoesNotMakeTheirProduct() {
        String tag = "N" + UUID.randomUUID().toString().substring(0, 8);
        for (int i = 0; i < 13; i++) {
            tagged(tag);
        }
        assertEquals(
                10 * 11 / 2 + 2 * 10,
                items("coordinator").stream()
                        .filter(one -> ("EAR_TAG " + tag).equals(one.get("detail")))
                        .count());
    }

    private static int shown(String page) {
        return page.split("<li class=\"suspect\">", -1).length - 1;
    }

    private Deer taken() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        return one;
    }

    private Deer tagged(String tag) {
        Deer one = deer.aDeer();
        ObjectNode body = deer.facts();
        body.putArray("identifiers").addObject().put("type", "EAR_TAG").put("value", tag);
        deer.take(one, body);
        return one;
    }

    /** A day on which no other test takes in a deer. */
    private ObjectNode onADayOfItsOwn() {
        return deer.facts().put("diedOn", "2025-10-03");
    }

    private static void scan(Deer one, Deer two) {
        as("coordinator")
                .contentType("application/json")
                .body("{\"codes\": [\"" + one.label(Part.JAW) + "\", \"" + two.label(Part.JAW) + "\"]}")
                .post("/api/v1/codes/scan-back")
                .then()
                .statusCode(409)
                .body("code", equalTo("NOT_ONE_KIT"));
    }

    private static void post(String account, Map<String, String> form, int status) {
        as(account)
                .redirects()
                .follow(false)
                .contentType("application/x-www-form-urlencoded")
                .formParams(form)
                .post("/animals/mix-ups/set-aside")
                .then()
                .statusCode(status);
    }

    private static List<Map<String, Object>> items(String account) {
        return WholeLists.items(account, "/api/v1/suspected-mix-ups?limit=1000");
    }

    private static long count(Deer one, Deer two, Sign sign) {
        return items("coordinator").stream()
                .filter(each -> is(each, one, two, sign))
                .count();
    }

    private static Map<String, Object> find(Deer one, Deer two, Sign sign) {
        return items("coordinator").stream()
                .filter(each -> is(each, one, two, sign))
                .findFirst()
                .orElseThrow();
    }

    private static boolean is(Map<String, Object> item, Deer one, Deer two, Sign sign) {
        List<String> kits = two == null
                ? List.of(one.kit())
                : List.of(one.kit(), two.kit()).stream().sorted().toList();
        return sign.name().equals(item.get("sign"))
                && kits.get(0).equals(item.get("kit"))
                && (two == null || kits.get(1).equals(item.get("other")));
    }
}
