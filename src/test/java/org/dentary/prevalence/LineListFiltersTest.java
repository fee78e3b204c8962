package org.dentary.prevalence;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
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
}
