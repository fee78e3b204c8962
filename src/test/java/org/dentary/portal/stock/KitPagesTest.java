package org.dentary.portal.stock;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.SeasonFixture;
import org.dentary.codes.KitStem;
import org.dentary.codes.Minting;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.kit.IssuedBlock;
import org.dentary.kit.KitFixture;
import org.dentary.kit.LabelOfKit;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class KitPagesTest {
    @Inject
    SeasonFixture season;

    @Inject
    KitFixture kits;

    @Inject
    IntakeFixture intake;

    @BeforeEach
    void season() {
        season.ensure();
    }

    @Test
    void aBlockIsIssuedOnceHoweverOftenTheFormIsSent() {
        String id = UUID.randomUUID().toString();
        for (int time = 0; time < 2; time++) {
            issue(id, "4").then().statusCode(303).header("Location", endsWith("/kits/" + id));
        }
        form("sampler").get("/kits/" + id).then().statusCode(200).body(containsString("4 kits for Station 1"));
        issue(id, "5").then().statusCode(422).body(containsString("already recorded with other content"));
        form("sampler").get("/kits/issue").then().statusCode(403);
        form("sampler").get("/kits/" + id).then().body(not(containsString("came back or were lost")));
        form("sampler-two").get("/kits/" + id).then().statusCode(403);
        as("sampler")
                .get("/api/v1/kit-blocks/" + id + "/labels.csv")
                .then()
                .statusCode(200)
                .body(containsString("kit,part,code\r\n"))
                .body(containsString(",STUB,"));
    }

    @Test
    void theNewestBlocksAreShownAndTheOlderOnesOnRequest() {
        String oldest = "/kits/" + kits.aBlock(1, Part.JAW).id() + "\"";
        for (int i = 0; i < 50; i++) {
            kits.aBlock(1, Part.JAW);
        }
        String page = form("coordinator")
                .get("/kits")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertEquals(50, blocks(page));
        assertFalse(page.contains(oldest));
        Matcher next = Pattern.compile("href=\"(/kits\\?before=[0-9a-f-]{36})#blocks\"")
                .matcher(page);
        assertTrue(next.find(), page);
        String further = form("coordinator")
                .get(next.group(1))
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertTrue(blocks(further) > 0);
        assertTrue(further.contains(oldest));
        form("coordinator")
                .get("/kits?season=T2025")
                .then()
                .statusCode(200)
                .body(containsString("No kits were issued for this season"))
                .body(containsString("No block has been issued for this season"));
        form("coordinator").get("/kits?season=NONE").then().statusCode(404);
        assertTrue(as("coordinator")
                .get("/api/v1/kit-stock/blocks.csv")
                .asString()
                .contains(oldest.substring("/kits/".length(), oldest.length() - 1)));
    }

    private static int blocks(String page) {
        return page.split("<th scope=\"row\"><a href=\"/kits/", -1).length - 1;
    }

    @Test
    void whatWasTypedIsShownAgainWithEveryFault() {
        form("coordinator")
                .formParam("id", UUID.randomUUID().toString())
                .formParam("season", "T2026")
                .formParam("station", "NONE")
                .formParam("kits", "6 hundred")
                .formParam("copies", "1")
                .post("/kits/issue")
                .then()
                .statusCode(422)
                .body(containsString("value=\"6 hundred\""))
                .body(containsString("must be 1 to 5000"))
                .body(containsString("name at least one part"));
    }

    @Test
    void kitsThatCameBackAreScannedAndAStrangerIsNamed() {
        IssuedBlock block = kits.aBlock(2, Part.JAW, Part.STUB);
        LabelOfKit stranger = kits.aKit(Part.JAW).get(0);
        String path = "/kits/" + block.id() + "/unused";
        unused(path, block.labels().get(0).code() + "\r\n" + stranger.code(), "LOST", "end of season")
                .then()
                .statusCode(422)
                .body(containsString(new KitStem(stranger.kit()).grouped() + " is not of this block"))
                .body(containsString("value=\"LOST\" checked"))
                .body(containsString("end of season"));
        unused(path, block.labels().get(0).code() + "\r\n\r\n", "RETURNED", "")
                .then()
                .statusCode(422);
        unused(path, block.labels().get(0).code() + "\r\n\r\n", "RETURNED", "end of season")
                .then()
                .statusCode(303);
        as("coordinator")
                .get("/api/v1/kit-stock/" + block.id())
                .then()
                .body("returned", org.hamcrest.Matchers.equalTo(1));
    }

    @Test
    void aLabelIsPrintedAgainAndVoidedOnItsPage() {
        IntakeFixture.Deer deer = intake.aDeer();
        String spare = deer.label(Part.SPARE_1);
        form("sampler")
                .formParam("id", UUID.randomUUID().toString())
                .formParam("stock", "LETTER_30")
                .formParam("reprintReason", "chewed by the dog")
                .post("/kits/labels/" + spare + "/reprints")
                .then()
                .statusCode(303);
        form("sampler")
                .get("/kits/labels/" + spare)
                .then()
                .body(containsString("Print 2 on LETTER_30"))
                .body(containsString("chewed by the dog"))
                .body(containsString("Destroy the old one"))
                .body(containsString("Station 1, Test season 2026"));
        form("coordinator")
                .formParam("reason", "")
                .post("/kits/labels/" + spare + "/voiding")
                .then()
                .statusCode(422)
                .body(containsString("The reason is missing"));
        form("coordinator")
                .formParam("reason", "torn")
                .post("/kits/labels/" + spare + "/voiding")
                .then()
                .statusCode(303);
        form("sampler").get("/kits/labels/" + spare).then().body(containsString("must not be used"));
        intake.take(deer, intake.facts());
        form("coordinator")
                .formParam("reason", "torn")
                .post("/kits/labels/" + deer.label(Part.JAW) + "/voiding")
                .then()
                .statusCode(409)
                .body(containsString("is bound to"));
    }

    @Test
    void whatWasTypedToPrintOrVoidALabelIsKeptWhenItIsRefused() {
        String jaw = kits.aKit(Part.NODE_LEFT).get(0).code();
        String path = "/kits/labels/" + jaw;
        reprint(path, "no id", "NONE", "chewed by the dog")
                .then()
                .statusCode(422)
                .body(containsString("is no label stock"))
                .body(containsString("value=\"chewed by the dog\""));
        reprint(path, UUID.randomUUID().toString(), "A4_21", " ")
                .then()
                .statusCode(422)
                .body(containsString("value=\"A4_21\" selected"))
                .body(containsString("The reason is missing"));
        reprint(path, UUID.randomUUID().toString(), "A4_21", "x".repeat(2001))
                .then()
                .statusCode(422)
                .body(containsString("The reason has 2001 characters"));
        reprint(path, UUID.randomUUID().toString(), "A4_21", "smeared").then().statusCode(303);
        form("sampler").get(path).then().body(containsString("is not made for freezer or formalin"));
        form("coordinator")
                .formParam("reason", "y".repeat(2001))
                .post(path + "/voiding")
                .then()
                .statusCode(422)
                .body(containsString("yyyyyyy\""));
    }

    private static io.restassured.response.Response reprint(String path, String id, String stock, String reason) {
        return form("sampler")
                .formParam("id", id)
                .formParam("stock", stock)
                .formParam("reprintReason", reason)
                .post(path + "/reprints");
    }

    @Test
    void aPrintingIsCountedBeforeItsSheetsAreOpened() {
        IssuedBlock block = kits.aBlock(20, Part.NODE_LEFT, Part.FORM);
        String path = "/kits/" + block.id() + "/printing";
        form("sampler")
                .get(path)
                .then()
                .statusCode(200)
                .body(containsString("<strong>2</strong> sheets"))
                .body(containsString("can go in again from label 11"))
                .body(containsString("is not made for freezer or formalin"));
        String choice = "?stock=JAR_50X25&start=1&copies=NODE_LEFT:3&copies=FORM:1";
        String page = form("sampler")
                .get(path + choice)
                .then()
                .statusCode(200)
                .body(containsString("<strong>80</strong> labels of the roll"))
                .body(not(containsString("Not made for this")))
                .extract()
                .asString();
        form("sampler")
                .get(path + choice + "&open=true&counted=other")
                .then()
                .statusCode(200)
                .body(containsString("Not the choice that was counted"));
        Matcher counted = Pattern.compile("name=\"counted\" value=\"([^\"]*)\"").matcher(page);
        assertTrue(counted.find());
        String sheets = form("sampler")
                .queryParam("counted", counted.group(1))
                .get(path + choice + "&open=true")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        as("sampler")
                .urlEncodingEnabled(false)
                .get(sheets.substring(sheets.indexOf("/api")))
                .then()
                .statusCode(200)
                .contentType("application/pdf");
        form("sampler")
                .get("/kits/" + block.id())
                .then()
                .body(containsString("Left node 3, Form 1"))
                .body(containsString("JAR_50X25"));
        // What was printed last is proposed again, and a second printing says why.
        form("sampler")
                .get(path)
                .then()
                .body(containsString("value=\"NODE_LEFT:3\" selected"))
                .body(containsString("value=\"JAR_50X25\" selected"));
        form("sampler")
                .queryParam("counted", counted.group(1))
                .get(path + choice + "&open=true")
                .then()
                .statusCode(422)
                .body(containsString("say why it is printed again"));
        form("sampler")
                .get(path + "?stock=LETTER_30&start=31&offsetX=north&copies=NODE_LEFT:2")
                .then()
                .statusCode(422)
                .body(containsString("value=\"31\""))
                .body(containsString("value=\"north\""))
                .body(containsString("value=\"NODE_LEFT:2\" selected"));
        form("sampler-two").get(path).then().statusCode(403);
        form("liaison").get(path).then().statusCode(403);
    }

    @Test
    void labelsHeldTogetherAreOneKitOrTheyAreNot() {
        List<LabelOfKit> kit = kits.aKit(Part.JAW, Part.FORM);
        String stranger = kits.aKit(Part.JAW).get(0).code();
        form("sampler")
                .get("/kits/scan-back?code=" + kit.get(0).code() + "&next="
                        + kit.get(1).code())
                .then()
                .statusCode(200)
                .body(containsString("2 scans, one kit"));
        form("sampler")
                .get("/kits/scan-back?code=" + kit.get(0).code() + "&next=" + stranger)
                .then()
                .statusCode(409)
                .body(containsString("Stop"));
        form("sampler")
                .get("/kits/scan-back?code=" + kit.get(0).code() + "&next=smudge")
                .then()
                .statusCode(422)
                .body(containsString("name=\"code\" value=\"" + kit.get(0).code()))
                .body(not(containsString("name=\"code\" value=\"smudge")));
        form("sampler")
                .get("/kits/scan-back?code=rubbish&code=" + kit.get(0).code() + "&next="
                        + kit.get(0).code())
                .then()
                .statusCode(200)
                .body(containsString("2 scans, one kit"))
                .body(containsString("All of one label, jaw"));
        String torn = kits.aKit(Part.JAW).get(0).code();
        as("coordinator")
                .contentType("application/json")
                .body("{\"reason\": \"torn\"}")
                .put("/api/v1/labels/" + torn + "/voiding")
                .then()
                .statusCode(201);
        form("sampler")
                .get("/kits/scan-back?next=" + torn)
                .then()
                .statusCode(409)
                .body(containsString("was voided. Stop"));
        form("sampler")
                .get("/kits/scan-back?next=" + new Minting().mint().label(Part.JAW))
                .then()
                .statusCode(422)
                .body(containsString("no such label was issued here"));
    }

    private static io.restassured.response.Response issue(String id, String kits) {
        return form("coordinator")
                .formParam("id", id)
                .formParam("season", "T2026")
                .formParam("station", "T_STATION_1")
                .formParam("person", "")
                .formParam("kits", kits)
                .formParam("copies", "2")
                .formParam("parts", "JAW", "STUB")
                .post("/kits/issue");
    }

    private static io.restassured.response.Response unused(String path, String kits, String fate, String reason) {
        return form("coordinator")
                .formParam("kits", kits)
                .formParam("fate", fate)
                .formParam("reason", reason)
                .post(path);
    }

    private static RequestSpecification form(String account) {
        return as(account).accept("text/html").redirects().follow(false);
    }
}
