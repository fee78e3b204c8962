package org.dentary.setup.season;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.intake.IntakeFixture;
import org.dentary.plan.PlanService;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.setup.SetUpImportService;
import org.dentary.setup.SetUpImportView;
import org.dentary.setup.list.SetUpList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class SeasonPagesTest {
    @Inject
    SeasonFixture season;

    @Inject
    AccountService accounts;

    @Inject
    PlanService plan;

    @Inject
    CautionService cautions;

    @Inject
    SetUpImportService imports;

    @Inject
    IntakeFixture intake;

    @Inject
    EntityManager entities;

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void theSeasonPageShowsWhatIsSetUp() {
        page("coordinator")
                .get("/season")
                .then()
                .statusCode(200)
                .body(containsString("Test season 2026"))
                .body(containsString("Laboratory acceptance"))
                .body(containsString("href=\"/season/settings\""));
        page("coordinator")
                .get("/season/settings")
                .then()
                .statusCode(200)
                .body(containsString("Clock skew minutes"))
                .body(containsString("<h2 id=\"custody\">Custody</h2>"));
        page("coordinator")
                .get("/season/settings?setting=PENDING_SHARE_INCOMPLETE")
                .then()
                .statusCode(200)
                .body(containsString("a share from 0 to 1"))
                .body(containsString(">0.10</textarea>"));
        page("auditor").get("/season/settings").then().statusCode(403);
        page("auditor").get("/season").then().statusCode(403);
        given().redirects()
                .follow(false)
                .accept("text/html")
                .get("/season")
                .then()
                .statusCode(303);
    }

    @Test
    void aSettingIsChangedOrTheFormComesBackAsTyped() {
        page("coordinator")
                .formParam("setting", "CUSTODY_GAP_HOURS")
                .formParam("value", "a day")
                .formParam("unit", SeasonFixture.OTHER_UNIT)
                .post("/season/settings")
                .then()
                .statusCode(422)
                .body(containsString("a whole number from 1 to 720"))
                .body(containsString(">a day</textarea>"))
                .body(containsString("value=\"T_UNIT_2\" selected"));
        page("coordinator")
                .formParam("setting", "CUSTODY_GAP_HOURS")
                .formParam("value", "48")
                .formParam("unit", SeasonFixture.OTHER_UNIT)
                .post("/season/settings")
                .then()
                .statusCode(303)
                .header("Location", endsWith("/season/settings?changed=CUSTODY_GAP_HOURS"));
        page("coordinator")
                .get("/season/settings?changed=CUSTODY_GAP_HOURS")
                .then()
                .body(containsString("Custody gap hours is set."));
        assertEquals("48", plan.setting(PlanSetting.CUSTODY_GAP_HOURS, null, null, SeasonFixture.OTHER_UNIT));
        assertEquals("72", plan.setting(PlanSetting.CUSTODY_GAP_HOURS, null, null, SeasonFixture.UNIT));
        page("coordinator").post("/season/settings").then().statusCode(422).body(containsString("Choose the setting"));
    }

    @Test
    void aFileIsSentLookedThroughAndPosted() {
        String code = "PAGE_" + UUID.randomUUID().toString().substring(0, 6).toUpperCase(java.util.Locale.ROOT);
        page("coordinator")
                .get("/season/lists/regions")
                .then()
                .statusCode(200)
                .body(containsString("a code of 1 to 40"));
        String faulty = send("regions", "code,name\n" + code + ",\n");
        page("coordinator")
                .get(faulty)
                .then()
                .statusCode(200)
                .body(containsString("&#39;name&#39; is empty"))
                .body(not(containsString("Post 1")));
        page("coordinator")
                .get(faulty + "/problems.csv")
                .then()
                .statusCode(200)
                .contentType(startsWith("text/csv"))
                .body(startsWith("line,field,rule,message\r\n2,name,REQUIRED,"));
        page("coordinator")
                .post(faulty + "/posting")
                .then()
                .statusCode(409)
                .body(containsString("Nothing was written"));
        String right = send("regions", "code,name\n" + code + ",Region\n");
        page("coordinator")
                .get(right)
                .then()
                .statusCode(200)
                .body(containsString("Post 1 line<"))
                .body(not(containsString("Next: Seasons")));
        page("coordinator").post(right + "/posting").then().statusCode(303);
        page("coordinator")
                .get(right)
                .then()
                .body(containsString("1 added, 0 changed"))
                .body(containsString("href=\"/season/lists/seasons\">Next: Seasons"));
        page("coordinator")
                .get("/season/lists/regions/rows.csv")
                .then()
                .statusCode(200)
                .body(startsWith("code,name\r\n"))
                .body(containsString(code + ",Region\r\n"));
    }

    @Test
    void aFileThatCannotBeReadComesBackWithTheReason() {
        page("coordinator")
                .multiPart("file", "regions.csv", "code;name\nA;a\n".getBytes(StandardCharsets.UTF_8), "text/csv")
                .post("/season/lists/regions/files")
                .then()
                .statusCode(422)
                .body(containsString("not separated by commas"));
        page("coordinator")
                .multiPart("file", "regions.csv", new byte[0], "text/csv")
                .post("/season/lists/regions/files")
                .then()
                .statusCode(422)
                .body(containsString("The file is empty"));
    }

    @Test
    void whatIsDownloadedCanBeSentBackUnchanged() {
        for (SetUpList list : SetUpList.values()) {
            byte[] rows = page("coordinator")
                    .get("/season/lists/" + list.path() + "/rows.csv")
                    .then()
                    .statusCode(200)
                    .extract()
                    .asByteArray();
            SetUpImportView view =
                    imports.preview(UUID.randomUUID(), list.path(), rows, null).view();
            assertEquals(List.of(), view.problems(), list.path());
            assertEquals(0, view.adds(), list.path());
            assertEquals(0, view.changes(), list.path());
            page("coordinator")
                    .get("/season/lists/" + list.path() + "/empty.csv")
                    .then()
                    .body(equalTo(String.join(",", list.header()) + "\r\n"));
            page("coordinator").get("/season/lists/" + list.path()).then().statusCode(200);
        }
    }

    @Test
    void aSeasonOpensOnlyWhenCautionsAndProtocolAreReviewed() {
        String caution =
                "OPENING_" + UUID.randomUUID().toString().substring(0, 6).toUpperCase(java.util.Locale.ROOT);
        post("cautions", "code,version,hazard,text,authority\n" + caution + ",1,PACKING,Mind the step.,Someone\n");
        post("seasons", "code,name,starts_on,ends_on\nT1960,Long ago,1960-06-01,1961-05-31\n");
        coordinator()
                .post("/api/v1/seasons/T1960/opening")
                .then()
                .statusCode(409)
                .body("errors.rule", org.hamcrest.Matchers.hasItem("CAUTIONS_NOT_REVIEWED"))
                .body(
                        "detail",
                        matchesPattern("(?s).*(One caution in force was|cautions in force were) not reviewed.*"));
        page("coordinator")
                .post("/season/seasons/T1960/opening")
                .then()
                .statusCode(409)
                .body(containsString("cannot open for intake"));

        page("coordinator").get("/season/review").then().statusCode(200).body(containsString("Mind the step."));
        page("coordinator")
                .formParam("reviewBy", "soon")
                .post("/season/review/cautions/" + caution + "/1")
                .then()
                .statusCode(422)
                .body(containsString("is no date"));
        List<CautionView> waiting = cautions.inForce().stream()
                .filter(one -> !one.reviewed() || one.overdue())
                .toList();
        for (int i = 0; i < waiting.size(); i++) {
            page("coordinator")
                    .formParam("reviewBy", "2999-01-01")
                    .post("/season/review/cautions/" + waiting.get(i).code() + "/"
                            + waiting.get(i).version())
                    .then()
                    .statusCode(303)
                    .header(
                            "Location",
                            endsWith("/season/review"
                                    + (i + 1 < waiting.size()
                                            ? "#" + waiting.get(i + 1).code()
                                            : "")));
        }
        page("coordinator")
                .formParam("setting", "PROTOCOL_TEXT")
                .formParam("value", "Read this.")
                .post("/season/settings")
                .then()
                .statusCode(303);
        coordinator()
                .post("/api/v1/seasons/T1960/opening")
                .then()
                .statusCode(409)
                .body("errors.rule", equalTo(List.of("PROTOCOL_NOT_REVIEWED")));
        page("coordinator")
                .formParam("version", "no such edition")
                .post("/season/review/protocol")
                .then()
                .statusCode(409);
        page("coordinator")
                .formParam("version", "1")
                .post("/season/review/protocol")
                .then()
                .statusCode(303);
        coordinator()
                .post("/api/v1/seasons/T1960/opening")
                .then()
                .statusCode(200)
                .body("state", equalTo("OPEN"));
        assertEquals(
                "T_COORDINATOR",
                entities.createNativeQuery("select reviewed_by from caution where code = :code")
                        .setParameter("code", caution)
                        .getSingleResult());
        page("coordinator")
                .get("/season?changed=T1960")
                .then()
                .body(containsString("Long ago is open for intake."))
                .body(containsString("href=\"/kits/issue\""));
        page("coordinator")
                .post("/season/seasons/T1960/closing")
                .then()
                .statusCode(303)
                .header("Location", endsWith("/season?changed=T1960"));
        assertEquals("CLOSED", plan.season("T1960").state());
        given().auth()
                .preemptive()
                .basic("sampler", SeasonFixture.PASSWORD)
                .post("/api/v1/seasons/T1960/opening")
                .then()
                .statusCode(403);
        post("seasons", "code,name,starts_on,ends_on\nT1940,Longer ago,1940-06-01,1941-05-31\n");
        coordinator()
                .post("/api/v1/seasons/T1940/closing")
                .then()
                .statusCode(409)
                .body("code", equalTo("SEASON_DRAFT"));
    }

    @Test
    void aSeasonInDraftTakesNothingIn() {
        post("seasons", "code,name,starts_on,ends_on\nT1970,A draft,1970-06-01,1971-05-31\n");
        IntakeFixture.Deer deer = intake.aDeer();
        intake.put("sampler", "/animals/" + deer.kit(), intake.facts().put("diedOn", "1970-11-14"))
                .statusCode(409)
                .body("code", equalTo("SEASON_NOT_OPEN"));
    }

    private void post(String list, String file) {
        UUID id = UUID.randomUUID();
        imports.preview(id, list, file.getBytes(StandardCharsets.UTF_8), null);
        imports.post(id);
    }

    private String send(String list, String file) {
        String location = page("coordinator")
                .multiPart("file", list + ".csv", file.getBytes(StandardCharsets.UTF_8), "text/csv")
                .post("/season/lists/" + list + "/files")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        return location.substring(location.indexOf("/season"));
    }

    private RequestSpecification coordinator() {
        return given().auth().preemptive().basic("coordinator", SeasonFixture.PASSWORD);
    }

    private RequestSpecification page(String who) {
        return given().redirects()
                .follow(false)
                .accept("text/html,*/*")
                .cookie(
                        "dentary-session",
                        accounts.signIn(who, SeasonFixture.PASSWORD).orElseThrow());
    }
}
