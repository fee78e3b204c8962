package org.dentary.prevalence.linelist;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.junit.jupiter.api.Test;

/** Every column of the line list filters, in the API and on the page. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class LineListFiltersTest {
    @Inject
    LineFixture lines;

    private static RequestSpecification as(String username) {
        return given().auth().preemptive().basic(username, SeasonFixture.PASSWORD);
    }

    @Test
    void everyColumnFiltersAndThePageOffersEach() {
        String season = lines.season();
        String kit = lines.add(season, 1, ALine.of("FAWN", "MALE", "DETECTED").from("VEHICLE"))
                .get(0);
        lines.footnote(
                lines.add(season, 1, ALine.of("ADULT", "FEMALE", "PENDING").in(SeasonFixture.SOUTHERN_UNIT)),
                "",
                true,
                "READ",
                "");
        String page = as("epidemiologist")
                .accept("text/html")
                .get("/line-list?season=" + season)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        List<String[]> narrowing = List.of(
                new String[] {"kit", kit},
                new String[] {"sex", "MALE"},
                new String[] {"sexEvidence", "GENITALIA_OR_UDDER"},
                new String[] {"ageClass", "FAWN"},
                new String[] {"ageDisputed", "false"},
                new String[] {"managementUnit", SeasonFixture.UNIT},
                new String[] {"region", "T_NORTH"},
                new String[] {"mortalitySource", "VEHICLE"},
                new String[] {"outcome", "DETECTED"});
        for (String[] filter : narrowing) {
            assertEquals(
                    List.of(kit),
                    as("epidemiologist")
                            .get("/api/v1/line-list?season=" + season + "&" + filter[0] + "=" + filter[1])
                            .jsonPath()
                            .getList("items.kit"),
                    filter[0]);
        }
        for (String column : LineColumn.fields()) {
            assertTrue(page.contains("name=\"" + column + "\""), column + " has no field on the page");
        }
        as("epidemiologist")
                .accept("text/html")
                .get("/line-list?season=" + season + "&mortalitySource=VEHICLE")
                .then()
                .body(containsString("<details class=\"more\" open>"))
                .body(containsString(kit));
    }

    @Test
    void aValueThatNoLineCanHaveIsRefusedWithThoseThatItCan() {
        lines.season();
        for (String wrong : List.of("outcome=SICK", "managementUnit=NOWHERE", "season=NEVER", "ageDisputed=maybe")) {
            as("liaison")
                    .get("/api/v1/line-list?" + wrong)
                    .then()
                    .statusCode(422)
                    .body("errors[0].field", equalTo(wrong.split("=")[0]))
                    .body("errors[0].message", containsString("allowed: "));
            as("liaison").get("/api/v1/line-list.csv?" + wrong).then().statusCode(422);
        }
    }

    @Test
    void aSpanOfDaysFiltersEveryFormAndTheReports() {
        String season = lines.season();
        int year = Integer.parseInt(season.substring(1));
        List<String> kits = lines.add(season, 4, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.died(kits.get(1), LocalDate.of(year, 11, 14));
        lines.died(kits.get(2), LocalDate.of(year, 11, 15));
        lines.died(kits.get(3), null);
        Map<String, List<String>> passing = Map.of(
                "diedOnFrom=" + year + "-11-14&diedOnTo=" + year + "-11-14",
                List.of(kits.get(1)),
                "diedOnFrom=" + year + "-11-14",
                List.of(kits.get(1), kits.get(2)),
                "diedOnTo=" + year + "-11-14",
                List.of(kits.get(0), kits.get(1)),
                "diedOn=UNKNOWN",
                List.of(kits.get(3)),
                "diedOn=" + year + "-11-15",
                List.of(kits.get(2)));
        passing.forEach((asked, wanted) -> {
            String address = "/api/v1/line-list?season=" + season + "&" + asked;
            assertEquals(wanted, as("epidemiologist").get(address).jsonPath().getList("items.kit"), asked);
            assertEquals(
                    wanted,
                    as("epidemiologist")
                            .accept("text/csv")
                            .get(address)
                            .asString()
                            .lines()
                            .skip(1)
                            .map(line -> line.split(",")[0])
                            .toList(),
                    asked);
            String page = as("epidemiologist")
                    .accept("text/html")
                    .get("/line-list?season=" + season + "&" + asked)
                    .asString();
            assertEquals(
                    wanted,
                    kits.stream()
                            .filter(kit -> page.contains("\"/animals/" + kit + "\""))
                            .toList(),
                    asked);
            assertTrue(page.contains("<details class=\"more\" open>"), asked);
        });
        String span = "season=" + season + "&diedOnFrom=" + year + "-11-01&diedOnTo=" + year + "-11-30";
        as("epidemiologist")
                .get("/api/v1/prevalence?" + span)
                .then()
                .statusCode(200)
                .body("total.counted", equalTo(2));
        as("epidemiologist")
                .accept("text/html")
                .get("/prevalence?" + span)
                .then()
                .statusCode(200)
                .body(containsString(
                        "Only animals with Died on or after: Nov 1, " + year + "; Died on or before: Nov 30, "))
                .body(containsString("name=\"diedOnTo\" type=\"date\" value=\"" + year + "-11-30\""))
                .body(containsString("prevalence.pdf?"));
        as("epidemiologist")
                .accept("text/html")
                .get("/prevalence?season=" + season)
                .then()
                .body(not(containsString("Only animals with")));
        as("epidemiologist")
                .accept("text/html")
                .get("/line-list?" + span)
                .then()
                .body(containsString("value=\"" + year + "-11-30\""));
    }

    @Test
    void whatIsNoColumnNoDayOrNoKitIsRefusedOnEveryForm() {
        lines.season();
        Map<String, String> wrong = Map.of(
                "shoeSize=43", "NOT_A_COLUMN",
                "diedOn=yesterday", "NOT_A_DAY",
                "diedOnFrom=2026-13-01", "NOT_A_DAY",
                "diedOnTo=2026-11-01,2026-11-02", "REPEATED",
                "diedOnFrom=2026-11-02&diedOnTo=2026-11-01", "IMPOSSIBLE_COMBINATION",
                "kit=E2", "NOT_A_KIT");
        wrong.forEach((asked, rule) -> {
            for (String form : List.of("line-list", "line-list.csv")) {
                as("liaison")
                        .get("/api/v1/" + form + "?" + asked)
                        .then()
                        .statusCode(422)
                        .contentType("application/problem+json")
                        .body("errors[0].field", equalTo(asked.split("=")[0]))
                        .body("errors[0].rule", equalTo(rule));
            }
            as("liaison")
                    .accept("text/html")
                    .get("/line-list?" + asked)
                    .then()
                    .statusCode(422)
                    .body(containsString("role=\"alert\""));
        });
    }

    @Test
    void aCutOfAnotherSeasonIsRefusedInsteadOfShownAsEmpty() {
        String season = lines.season();
        String other = lines.season();
        lines.add(other, 2, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        String cut = java.util.UUID.randomUUID().toString();
        as("epidemiologist")
                .contentType("application/json")
                .body(Map.of("season", other, "name", "Elsewhere"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(201)
                .body("lines", equalTo(2));
        for (String form : List.of("/api/v1/line-list", "/api/v1/line-list.csv", "/line-list")) {
            as("epidemiologist")
                    .get(form + "?season=" + season + "&cut=" + cut)
                    .then()
                    .statusCode(422)
                    .body(containsString("is of season " + other + ", not " + season));
            as("epidemiologist")
                    .get(form + "?season=" + season + "," + other + "&cut=" + cut)
                    .then()
                    .statusCode(200);
        }
    }
}
