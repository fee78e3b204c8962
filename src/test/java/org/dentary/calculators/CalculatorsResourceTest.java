package org.dentary.calculators;

import static io.restassured.RestAssured.given;
import static io.restassured.config.JsonConfig.jsonConfig;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.account.AccountService;
import org.dentary.platform.account.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CalculatorsResourceTest {
    private static final String NAME = "calculators-test";
    private static final String PASSWORD = "for the calculators only";

    @Inject
    AccountService accounts;

    @BeforeEach
    void account() {
        accounts.put(NAME, null, Role.SAMPLER, List.of("*"), PASSWORD);
    }

    private static RequestSpecification anybody() {
        return given().config(RestAssured.config().jsonConfig(jsonConfig().numberReturnType(NumberReturnType.DOUBLE)))
                .auth()
                .preemptive()
                .basic(NAME, PASSWORD)
                .accept("application/json");
    }

    private static ValidatableResponse get(String question) {
        return anybody().get("/api/v1/statistics/" + question).then();
    }

    private static ValidatableResponse post(String function, String body) {
        return anybody()
                .contentType("application/json")
                .body(body)
                .post("/api/v1/statistics/" + function)
                .then();
    }

    /** Newcombe 1998, Stat Med 17:857-872, Table I, 15 of 148. */
    @ParameterizedTest
    @CsvSource({
        "WILSON, .0624, .1605",
        "WILSON_CORRECTED, .0598, .1644",
        "CLOPPER_PEARSON, .0578, .1617",
        "MID_P, .0601, .1581",
    })
    void proportion(String interval, double lower, double upper) {
        get("proportion?detected=15&tested=148&interval=" + interval + "&confidence=0.95")
                .statusCode(200)
                .body("estimate", closeTo(15.0 / 148, 1e-12))
                .body("lower", closeTo(lower, 0.00005))
                .body("upper", closeTo(upper, 0.00005))
                .body("interval", equalTo(interval))
                .body("confidence", equalTo(0.95))
                .body("source", notNullValue())
                .body("warnings", empty());
    }

    @Test
    void proportionTakesWilsonAtNinetyFivePercentUnlessAsked() {
        get("proportion?detected=0&tested=20")
                .statusCode(200)
                .body("interval", equalTo("WILSON"))
                .body("confidence", equalTo(0.95))
                .body("lower", equalTo(0.0))
                .body("upper", closeTo(0.1611, 0.00005)) // Newcombe 1998, Table I
                .body("warnings", hasItem("None detected does not show absence: the upper limit is 16 %."));
    }

    @Test
    void nothingTestedIsAnAnswerWithAReason() {
        get("proportion?detected=0&tested=0")
                .statusCode(200)
                .body("estimate", nullValue())
                .body("lower", nullValue())
                .body("warnings[0]", startsWith("Not sampled"));
    }

    /** Newcombe 1998, Stat Med 17:873-890, Table II: 5/56 - 0/29. */
    @Test
    void twoProportions() {
        get("two-proportions?detected1=5&tested1=56&detected2=0&tested2=29")
                .statusCode(200)
                .body("difference.estimate", closeTo(.0893, 0.00005))
                .body("difference.lower", closeTo(-.0381, 0.00005))
                .body("difference.upper", closeTo(.1926, 0.00005))
                .body("oddsRatio.estimate", equalTo("Infinity"))
                .body("oddsRatio.woolf.lower", nullValue())
                .body("oddsRatio.conditional.upper", equalTo("Infinity"))
                .body("riskRatio.estimate", nullValue())
                .body("riskRatio.warnings", hasSize(1));
    }

    /** Fisher's tea tasting; R 4.2.2: fisher.test, chisq.test(correct = FALSE). */
    @Test
    void twoProportionsTests() {
        get("two-proportions?detected1=3&tested1=4&detected2=1&tested2=4&confidence=0.95")
                .statusCode(200)
                .body("fisher.twoSided", closeTo(.4857, 0.00005))
                .body("fisher.greater", closeTo(.2429, 0.00005))
                .body("fisher.less", closeTo(.9857, 0.00005))
                .body("fisher.midP", closeTo(.3714, 0.00005))
                .body("oddsRatio.conditional.estimate", closeTo(6.4083, 0.00005))
                .body("chiSquare.statistic", closeTo(2, 1e-9))
                .body("chiSquare.p", closeTo(.1573, 0.00005))
                .body("chiSquare.statisticN1", closeTo(1.75, 1e-9))
                .body("chiSquare.pN1", closeTo(.1859, 0.00005));
    }

    /** Le 2003, Introductory Biostatistics, Example 1.19; R 4.2.2: mantelhaen.test. */
    @Test
    void stratified() {
        post("stratified", """
                {"confidence":0.95,"strata":[
                  {"label":"smokers","detected1":25,"notDetected1":171,"detected2":83,"notDetected2":853},
                  {"label":"others","detected1":4,"notDetected1":34,"detected2":52,"notDetected2":754}]}""")
                .statusCode(200)
                .body("oddsRatio.estimate", closeTo(1.53, 0.005))
                .body("oddsRatio.standardErrorLog", closeTo(.2225, 0.00005))
                .body("oddsRatio.lower", closeTo(.990, 0.0005))
                .body("oddsRatio.upper", closeTo(2.369, 0.0005))
                .body("crudeOddsRatio", closeTo(1.684, 0.0005))
                .body("riskRatio.estimate", closeTo(1.465, 0.0005))
                .body("riskDifference.standardError", closeTo(.0228, 0.00005))
                .body("cochranMantelHaenszel.statistic", closeTo(3.724, 0.0005))
                .body("breslowDayTarone.degreesOfFreedom", equalTo(1))
                .body("breslowDayTarone.p", closeTo(.832, 0.0005));
    }

    /** Fleiss 1981, smokers; R 4.2.2: prop.trend.test, slope coef(lm(x / n ~ score, weights = n)). */
    @Test
    void trend() {
        post("trend", """
                {"groups":[{"label":"a","score":1,"detected":83,"tested":86},{"label":"b","score":2,"detected":90,"tested":93},
                  {"label":"c","score":3,"detected":129,"tested":136},{"score":4,"detected":70,"tested":82}]}""")
                .statusCode(200)
                .body("trend.statistic", closeTo(8.2249, 0.00005))
                .body("trend.p", closeTo(.004132, 0.0000005))
                .body("heterogeneity.degreesOfFreedom", equalTo(3))
                .body("departure.degreesOfFreedom", equalTo(2))
                .body("slope", closeTo(-0.03341562641260132, 1e-9));
    }

    /** Reiczigel, Foldi & Ozsvari 2010, brucellosis. */
    @Test
    void truePrevalenceWithKnownErrors() {
        get("true-prevalence?detected=23&tested=150&sensitivity=0.96&specificity=0.89")
                .statusCode(200)
                .body("apparent", closeTo(23.0 / 150, 1e-12))
                .body("estimate", closeTo(.051, 0.0005))
                .body("lower", equalTo(0.0))
                .body("upper", closeTo(.1275, 0.00005))
                .body("truncated", equalTo(false))
                .body("method", containsString("Reiczigel"));
    }

    /** R 4.2.2 only: Lang and Reiczigel's formula, true_prevalence.R. */
    @Test
    void truePrevalenceWithEstimatedErrors() {
        get("true-prevalence?detected=12&tested=200&truePositives=90&infected=100&trueNegatives=196&uninfected=200")
                .statusCode(200)
                .body("estimate", closeTo(.04545, 0.000005))
                .body("lower", closeTo(.00325, 0.000005))
                .body("upper", closeTo(.09612, 0.000005))
                .body("method", containsString("Lang-Reiczigel"));
    }

    @Test
    void specificityIsOneUnlessGiven() {
        get("true-prevalence?detected=6&tested=100&sensitivity=0.5")
                .statusCode(200)
                .body("estimate", closeTo(0.12, 1e-12))
                .body("specificity", equalTo(1.0));
    }

    /** Fay & Feuer 1997, Stat Med 16:791-801, Table II. */
    @Test
    void standardised() {
        post("standardised", """
                {"strata":[{"detected":0,"tested":327,"weight":319933},{"detected":8,"tested":30666,"weight":931318},
                  {"detected":63,"tested":123419,"weight":786511},{"detected":112,"tested":149919,"weight":488235},
                  {"detected":262,"tested":104088,"weight":237863},{"detected":295,"tested":34392,"weight":61313}]}""")
                .statusCode(200)
                .body("estimate", closeTo(75.52901e-5, 5e-11))
                .body("gamma.lower", closeTo(67.70212e-5, 5e-11))
                .body("gamma.upper", closeTo(188.30017e-5, 5e-11))
                .body("tiwari.upper", closeTo(112.858e-5, 5e-9))
                .body("effectiveN", equalTo(442811.0))
                .body("crude", closeTo(740.0 / 442811, 1e-12))
                .body("stratifiedWilson.upper", notNullValue())
                .body("confidence", equalTo(0.95));
    }

    /** R 4.2.2: dhyper, detection.R; Cannon & Roe 1982 print 45. */
    @Test
    void sampleSize() {
        get("sample-size?population=100&designPrevalence=0.05&sensitivity=1&confidence=0.95")
                .statusCode(200)
                .body("required", equalTo(45))
                .body("infected", equalTo(5))
                .body("achieved", closeTo(.9538, 0.00005))
                .body("cannonRoe", equalTo(45))
                .body("infinitePopulation", equalTo(59));
        get("sample-size?population=50&infected=3&sensitivity=1")
                .statusCode(200)
                .body("required", equalTo(31));
    }

    @Test
    void unattainableIsSaid() {
        get("sample-size?population=40&infected=1&sensitivity=0.7")
                .statusCode(200)
                .body("required", nullValue())
                .body("achieved", closeTo(0.7, 1e-12))
                .body("warnings[0]", containsString("a census of this herd with this test cannot reach 95 %"));
    }

    /** R 4.2.2: 1 - dhyper(0, 5, 95, 45), dhyper(0:2, 5, 95, 45). */
    @Test
    void detectionProbability() {
        get("detection-probability?population=100&infected=5&tested=45&sensitivity=1")
                .statusCode(200)
                .body("probability", closeTo(.9538, 0.00005))
                .body("byDetected", hasSize(46))
                .body("byDetected[0]", closeTo(1 - .9538, 0.00005));
        get("detection-probability?population=10&infected=0&tested=0&sensitivity=0.9")
                .statusCode(200)
                .body("probability", equalTo(0.0));
    }

    /** Martin, Cameron & Greiner 2007: Bayes' rule, worked by hand: .5 / (1 - .8 x .5) = .8333; x .98 = .8167. */
    @Test
    void freedom() {
        post(
                        "freedom",
                        "{\"prior\":0.5,\"introduction\":0.02,\"periods\":[{\"sensitivity\":0.8},{\"sensitivity\":0.8}]}")
                .statusCode(200)
                .body("periods[0].prior", equalTo(0.5))
                .body("periods[0].posterior", closeTo(5.0 / 6, 1e-12))
                .body("periods[1].prior", closeTo(0.98 * 5 / 6, 1e-12));
    }

    /** R 4.2.2: -log(.05) / (.01 * .92) = 325.6. */
    @Test
    void weightedPoints() {
        post("weighted-points", """
                {"designPrevalence":0.01,"sensitivity":0.92,"confidence":0.95,"classes":[
                  {"label":"A","tested":100,"relativeRisk":1},{"label":"B","tested":10,"relativeRisk":4.5},
                  {"label":"C","tested":7}]}""")
                .statusCode(200)
                .body("points", closeTo(145, 1e-9))
                .body("required", closeTo(325.6, 0.05))
                .body("probability", closeTo(1 - Math.pow(1 - 0.0092, 100) * Math.pow(1 - 0.0414, 10), 1e-12))
                .body("convention", equalTo("REFERENCE_CLASS"))
                .body("populationMean", nullValue())
                .body("unweighted", equalTo(7))
                .body("warnings", hasItem("7 tested have no relative risk and earn no points."));
    }

    /** Cohen 1968, Psychol Bull 70:213-220, Table 1. */
    @Test
    void agreement() {
        post("agreement", "{\"counts\":[[88,14,18],[10,40,10],[2,6,12]]}")
                .statusCode(200)
                .body("exact", closeTo(0.7, 1e-12))
                .body("withinOne", closeTo(0.9, 1e-12))
                .body("kappa.estimate", closeTo(.492, 0.0005))
                .body("kappa.standardError", closeTo(.0510, 0.00005))
                .body("kappa.nullStandardError", closeTo(.0520, 0.00005))
                .body("linear.estimate", notNullValue())
                .body("quadratic.estimate", notNullValue())
                .body("prevalenceAdjusted", closeTo(0.55, 1e-12))
                .body("ac1", notNullValue());
    }

    /** R 4.2.2: smoothing.R, units (1, 4), (0, 0), (9, 30). */
    @Test
    void smoothing() {
        post("smoothing", """
                {"units":[{"label":"North","detected":1,"tested":4},{"label":"Nobody","detected":0,"tested":0},
                  {"label":"South","detected":9,"tested":30}]}""")
                .statusCode(200)
                .body("pooled", closeTo(10.0 / 34, 1e-12))
                .body("units[0].label", equalTo("North"))
                .body("units[0].raw", closeTo(0.25, 1e-12))
                .body("units[1].raw", nullValue())
                .body("units[1].smoothed", closeTo(10.0 / 34, 1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "proportion?detected=21&tested=20 | detected | must not exceed tested (20)",
                "proportion?detected=-1&tested=20 | detected | must be 0 or more",
                "proportion?detected=1&tested=20&confidence=95 | confidence | a fraction above 0 and below 1",
                "two-proportions?detected1=5&tested1=4&detected2=0&tested2=1 | detected1 | must not exceed tested1 (4)",
                "true-prevalence?detected=5&tested=50&sensitivity=0.4&specificity=0.5 | sensitivity | no better than chance",
                "sample-size?population=50&infected=51&sensitivity=1 | infected | must not exceed population (50)",
                "detection-probability?population=50&infected=5&tested=51&sensitivity=1 | tested | must not exceed population",
            })
    void outOfDomainNamesFieldAndReason(String question, String field, String reason) {
        get(question)
                .statusCode(422)
                .contentType("application/problem+json")
                .body("code", equalTo("OUT_OF_DOMAIN"))
                .body("errors[0].field", equalTo(field))
                .body("errors[0].rule", equalTo("OUT_OF_DOMAIN"))
                .body("errors[0].message", containsString(reason));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "standardised | {\"strata\":[{\"detected\":0,\"tested\":0,\"weight\":2}]} | strata[0].weight",
                "stratified | {\"strata\":[{\"detected1\":-1,\"notDetected1\":0,\"detected2\":1,\"notDetected2\":1}]} | strata[0].detected1",
                "trend | {\"groups\":[{\"score\":1,\"detected\":3,\"tested\":2}]} | groups[0].detected",
                "freedom | {\"prior\":1.5,\"introduction\":0,\"periods\":[{\"sensitivity\":0.5}]} | prior",
                "weighted-points | {\"designPrevalence\":0,\"sensitivity\":1,\"classes\":[{\"tested\":3,\"relativeRisk\":1}]} | designPrevalence",
                "agreement | {\"counts\":[[1,2],[3]]} | counts[1]",
                "smoothing | {\"units\":[{\"detected\":3,\"tested\":2}]} | units[0].detected",
            })
    void outOfDomainBodiesNameTheField(String function, String body, String field) {
        post(function, body)
                .statusCode(422)
                .contentType("application/problem+json")
                .body("code", equalTo("OUT_OF_DOMAIN"))
                .body("errors[0].field", equalTo(field));
    }

    @Test
    void missingAndMalformedParametersAreAllNamedAtOnce() {
        get("proportion?tested=twenty&interval=WALD")
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors.field", hasItems("detected", "tested", "interval"))
                .body("errors.find { it.field == 'detected' }.rule", equalTo("REQUIRED"))
                .body("errors.find { it.field == 'interval' }.message", containsString("BLAKER"));
        get("proportion?detected=1&detected=2&tested=20").statusCode(422).body("errors[0].field", equalTo("detected"));
        get("proportion?detected=1.5&tested=20").statusCode(422).body("errors[0].field", equalTo("detected"));
        get("proportion?detected=1&tested=20&confidence=NaN")
                .statusCode(422)
                .body("errors[0].field", equalTo("confidence"));
        get("sample-size?population=50&sensitivity=1").statusCode(422).body("errors[0].field", equalTo("infected"));
        get("sample-size?population=50&infected=1&designPrevalence=0.1&sensitivity=1")
                .statusCode(422)
                .body("errors[0].field", equalTo("infected"));
        get("true-prevalence?detected=1&tested=20&sensitivity=0.9&truePositives=9")
                .statusCode(422)
                .body("errors.field", hasItems("sensitivity", "infected", "trueNegatives", "uninfected"));
    }

    @Test
    void missingAndMalformedBodiesAreProblems() {
        post("freedom", "{\"prior\":0.5,\"periods\":[{}]}")
                .statusCode(422)
                .contentType("application/problem+json")
                .body("errors.field", hasItems("introduction", "periods[0].sensitivity"));
        post("stratified", "{\"strata\":[]}").statusCode(422).body("errors[0].field", equalTo("strata"));
        post("smoothing", "{\"units\":[{\"detected\":\"one\",\"tested\":2}]}")
                .statusCode(422)
                .body("errors[0].field", equalTo("units[0].detected"));
        post("trend", "{\"groups\":").statusCode(400).contentType("application/problem+json");
        post("agreement", "{\"counts\":[[1,null],[3,4]]}").statusCode(422);
    }

    @Test
    void nobodyWithoutAnAccountCalculates() {
        given().get("/api/v1/statistics/proportion?detected=1&tested=2").then().statusCode(401);
        given().contentType("application/json")
                .body("{\"counts\":[[1,2],[3,4]]}")
                .post("/api/v1/statistics/agreement")
                .then()
                .statusCode(401);
    }

    @Test
    void everyParameterAndFieldIsDocumented() {
        JsonPath openapi = given().accept("application/json")
                .get("/q/openapi?format=json")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        for (String function :
                List.of("proportion", "two-proportions", "true-prevalence", "sample-size", "detection-probability")) {
            List<Map<String, Object>> parameters =
                    openapi.getList("paths.'/api/v1/statistics/" + function + "'.get.parameters");
            assertTrue(parameters.size() >= 4, function);
            parameters.forEach(
                    p -> assertTrue(p.containsKey("description") && p.containsKey("example"), () -> function + p));
        }
        for (String schema : SCHEMAS) {
            Map<String, Map<String, Object>> properties =
                    openapi.getMap("components.schemas." + schema + ".properties");
            assertNotNull(properties, schema);
            properties.forEach((name, property) -> {
                boolean nested =
                        property.containsKey("$ref") || property.containsKey("anyOf") || property.containsKey("items");
                boolean sentence = Set.of("method", "source", "warnings").contains(name);
                assertTrue(property.containsKey("description"), () -> schema + "." + name + " " + property);
                assertTrue(
                        nested || sentence || property.containsKey("examples"),
                        () -> schema + "." + name + " " + property);
            });
        }
    }

    private static final List<String> SCHEMAS = List.of(
            "Proportion",
            "TruePrevalence",
            "Standardise",
            "StandardiseStratum",
            "Standardised",
            "Smooth",
            "SmoothUnit",
            "Smoothing",
            "SmoothedUnit",
            "TwoProportions",
            "OddsRatio",
            "FisherExact",
            "TwoChiSquares",
            "PoolStrata",
            "PoolStratum",
            "Stratified",
            "CommonOddsRatio",
            "CommonDifference",
            "FindTrend",
            "TrendGroup",
            "Trend",
            "CompareReaders",
            "Agreement",
            "Kappa",
            "SampleSize",
            "DetectionProbability",
            "FollowPeriods",
            "FollowPeriod",
            "Freedom",
            "FreedomPeriod",
            "CountPoints",
            "CountPointsClass",
            "WeightedPoints",
            "PointsTally",
            "Estimate",
            "Limits",
            "ChiSquareTest");
}
