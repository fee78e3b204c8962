package org.dentary.calculators;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.arc.All;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedHashMap;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CalculatorPagesTest {
    private static final String NAME = "calculator-pages-test";
    private static final String PASSWORD = "for the pages only";

    @Inject
    AccountService accounts;

    @Inject
    @All
    List<Calculator> calculators;

    @BeforeEach
    void account() {
        accounts.put(NAME, null, Role.NOTIFIER, List.of("*"), PASSWORD);
    }

    private static RequestSpecification anybody() {
        return given().urlEncodingEnabled(false)
                .auth()
                .preemptive()
                .basic(NAME, PASSWORD)
                .accept("text/html");
    }

    @Test
    void theRoofLeadsToEveryCalculator() {
        assertEquals(12, calculators.size());
        String roof =
                anybody().get("/calculators").then().statusCode(200).extract().asString();
        for (Calculator calculator : calculators) {
            assertTrue(
                    roof.contains("href=\"/calculators/" + calculator.entry().name() + "\""),
                    calculator.entry().name());
        }
    }

    @Test
    void everyCalculatorAnswersItsExampleInWordsDrawingAndTable() {
        for (Calculator calculator : calculators) {
            String path = "/calculators/" + calculator.entry().name();
            String query = "?" + calculator.entry().example();
            anybody()
                    .get(path)
                    .then()
                    .statusCode(200)
                    .body(containsString("<form"), not(containsString("id=\"answer\"")));
            anybody()
                    .get(path + query)
                    .then()
                    .statusCode(200)
                    .body(
                            containsString("id=\"answer\""),
                            containsString("What this rests on"),
                            containsString("Computed with Dentary: "),
                            not(containsString("NaN")));
            anybody()
                    .accept("*/*")
                    .get(path + ".svg" + query)
                    .then()
                    .statusCode(200)
                    .contentType(startsWith("image/svg+xml"))
                    .body(containsString("<title>"), not(containsString("NaN")));
            anybody()
                    .accept("*/*")
                    .get(path + ".svg" + query + "&narrow=true")
                    .then()
                    .statusCode(200)
                    .body(containsString("viewBox='0.0 0.0 400.0 "));
            anybody()
                    .accept("*/*")
                    .get(path + ".csv" + query)
                    .then()
                    .statusCode(200)
                    .contentType(startsWith("text/csv"))
                    .body(containsString("\r\n"));
        }
    }

    /** What is drawn is what is said: limits around their estimate, chances between 0 and 1, the sample needed where the curve reaches the level. */
    @Test
    void drawingsHoldTogether() {
        for (Calculator calculator : calculators) {
            String name = calculator.entry().name();
            Drawing drawing =
                    calculator.answer(asked(calculator.entry().example())).drawing();
            if (drawing instanceof Drawing.Intervals intervals) {
                assertFalse(intervals.intervals().isEmpty(), name);
                intervals.intervals().stream()
                        .filter(i -> i.lower() != null && i.upper() != null)
                        .forEach(i -> assertTrue(
                                i.lower() <= i.estimate() && i.estimate() <= i.upper() && i.lower() < i.upper(),
                                name + i));
            } else if (drawing instanceof Drawing.Curves curves) {
                curves.curves().forEach(curve -> assertTrue(curve.points().size() > 1, name + curve));
                curves.curves().stream()
                        .flatMap(curve -> curve.points().stream())
                        .forEach(point -> assertTrue(point.y() >= 0 && point.y() <= 1, name + point));
            }
        }
    }

    @Test
    void theCurveReachesTheLevelWhereTheSampleNeededIsMarked() {
        Calculator sampleSize = calculators.stream()
                .filter(calculator -> calculator.entry().name().equals("sample-size"))
                .findFirst()
                .orElseThrow();
        Drawing.Curves curves = (Drawing.Curves) sampleSize
                .answer(asked("population=60&infected=4&sensitivity=1&confidence=0.95"))
                .drawing();
        double needed = curves.marks().get(0).x();
        assertEquals(31, needed); // R 4.2.2: min(which(1 - dhyper(0, 4, 56, 1:60) >= .95))
        curves.curves()
                .get(0)
                .points()
                .forEach(point -> assertEquals(point.x() >= needed, point.y() >= 0.95, point.toString()));
    }

    private static Asked asked(String query) {
        MultivaluedHashMap<String, String> parameters = new MultivaluedHashMap<>();
        for (String pair : query.split("&")) {
            String[] parts = pair.split("=", 2);
            parameters.add(parts[0], URLDecoder.decode(parts[1], StandardCharsets.UTF_8));
        }
        return new Asked(parameters);
    }

    @Test
    void whatWasTypedStandsInTheFormAgain() {
        anybody()
                .get("/calculators/proportion?detected=6&tested=148&interval=BLAKER&confidence=0.9")
                .then()
                .statusCode(200)
                .body(
                        containsString("value=\"148\""),
                        containsString("<option value=\"BLAKER\" selected>"),
                        containsString("Blaker (exact), 90 %"));
    }

    @Test
    void theSampleSizePageSaysWhatItsNumberDoesNotRuleOut() {
        anybody()
                .get("/calculators/sample-size?population=100000&designPrevalence=0.01&sensitivity=1&confidence=0.95")
                .then()
                .statusCode(200)
                .body(containsString("298 tested rules out 1 % only for one well-mixed unit sampled at random"));
    }

    @Test
    void thePageOfEvidenceOverYearsNeverSaysFree() {
        anybody()
                .get("/calculators/freedom?prior=0.5&introduction=0.02&periods=2024%2C0.8")
                .then()
                .statusCode(200)
                .body(
                        containsString(
                                "Probability that prevalence is below the design prevalence after 1 period: 83.3 %."),
                        not(containsString("free of")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "proportion?detected=21&tested=20 | Detected = 21: must not exceed tested (20)",
                "proportion?detected=&tested=20 | Detected must be given",
                "proportion?detected=x&tested=20 | is not a whole number",
                "standardised?strata=a%2C1%2C10%2C1%0Ab%2C0%2C0%2C2 | row 2 weight = 2.0: this stratum has weight but nothing tested",
                "standardised?strata=a%2C1%2C10 | line 1, weight is missing",
                "freedom?prior=0.5&introduction=0.1&periods=2024%2C0.8%2Cmaybe | is not yes or no",
                "agreement?counts=1%2C2%0A3 | must have as many columns",
            })
    void aRefusedFormComesBackWithWhatIsWrong(String question, String words) {
        anybody()
                .get("/calculators/" + question)
                .then()
                .statusCode(422)
                .body(containsString("role=\"alert\""), containsString(words), containsString("<form"));
    }

    @Test
    void noneDetectedShowsBothLimitsApart() {
        anybody()
                .get("/calculators/proportion?detected=0&tested=300")
                .then()
                .statusCode(200)
                .body(containsString("One-sided"), containsString("Two-sided"), containsString("0 of 300 detected"));
    }

    @Test
    void nothingTestedIsNotSampledAndStillDrawn() {
        anybody()
                .get("/calculators/proportion?detected=0&tested=0")
                .then()
                .statusCode(200)
                .body(containsString("Not sampled."));
        anybody()
                .accept("*/*")
                .get("/calculators/proportion.svg?detected=0&tested=0")
                .then()
                .statusCode(200);
        anybody()
                .accept("*/*")
                .get("/calculators/two-proportions.svg?detected1=3&tested1=3&detected2=0&tested2=0")
                .then()
                .statusCode(200);
        anybody()
                .accept("*/*")
                .get("/calculators/stratified.svg?strata=a%2C3%2C0%2C0%2C4")
                .then()
                .statusCode(200);
        anybody()
                .accept("*/*")
                .get("/calculators/trend.svg?groups=a%2C1%2C0%2C0")
                .then()
                .statusCode(200);
    }

    @Test
    void aTableOfTwoHundredUnitsStillFitsTheAddress() {
        String units = IntStream.rangeClosed(1, 200)
                .mapToObj(i -> "Unit+number+" + i + "%2C+" + i % 7 + "%2C+" + (40 + i))
                .collect(Collectors.joining("%0D%0A"));
        String address = "/calculators/smoothing?units=" + units + "&confidence=0.95";
        anybody().get(address).then().statusCode(200).body(containsString("in 200 units"));
        anybody()
                .header("Referer", "http://localhost" + address)
                .accept("*/*")
                .get(address.replace("?", ".svg?"))
                .then()
                .statusCode(200);
    }

    @Test
    void unknownCalculatorsAndTablesAreNotFound() {
        anybody().get("/calculators/horoscope").then().statusCode(404);
        anybody()
                .accept("*/*")
                .get("/calculators/proportion.csv?detected=1&tested=20&table=9")
                .then()
                .statusCode(404)
                .body("code", equalTo("TABLE_UNKNOWN"));
    }

    @Test
    void nobodyWithoutAnAccountOpensAPage() {
        given().redirects()
                .follow(false)
                .accept("text/html")
                .get("/calculators")
                .then()
                .statusCode(303);
    }
}
