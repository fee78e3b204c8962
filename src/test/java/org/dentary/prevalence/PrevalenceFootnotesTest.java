package org.dentary.prevalence;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.detection.ChanceFixture;
import org.junit.jupiter.api.Test;

/** What a report says beside its figures, counted over the animals it counts and no others. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PrevalenceFootnotesTest {
    @Inject
    LineFixture lines;

    @Inject
    ChanceFixture chances;

    private static JsonPath report(String season, String more) {
        return given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .get("/api/v1/prevalence?season=" + season + more)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    @Test
    void footnotesAreSentencesAboutCountedAnimalsAlone() {
        String season = lines.season();
        ALine adult = ALine.of("ADULT", "FEMALE", "NOT_DETECTED");
        lines.add(season, 10, adult);
        lines.footnote(lines.add(season, 3, adult), "POOL", false, "READ", "");
        lines.footnote(lines.add(season, 4, adult.from("VEHICLE")), "POOL", false, "READ", "");
        lines.footnote(
                lines.add(season, 1, ALine.of("ADULT", "MALE", "DETECTED")), "POOL SCREENING_ALONE", false, "READ", "");
        JsonPath report = report(season, "");
        assertEquals(List.of("POOL", "SCREENING_ALONE"), report.getList("footnotes.code"));
        assertEquals(List.of(4, 1), report.getList("footnotes.animals"));
        assertTrue(report.getString("footnotes[1].text").startsWith("1 counted animal: detected by screening alone"));
        assertFalse(report.getString("footnotes.text").contains("POOL"), "no bare code");
        // HEAD_ONLY evidence of the three pooled and the one screened; the roadkill is not counted.
        assertEquals(4, report.getInt("sexWithoutBodilyEvidence.animals"));
        assertEquals(14, report.getInt("sexWithoutBodilyEvidence.of"));
        assertEquals(4 / 14.0, report.getDouble("sexWithoutBodilyEvidence.share"), 1e-6);
        JsonPath withVehicles = report(season, "&mortalitySource=HUNTER_HARVEST,VEHICLE");
        assertEquals(List.of(8, 1), withVehicles.getList("footnotes.animals"));
    }

    @Test
    void unknownAgesAreToldBySexSourceAndReasonWithANoteAboveThePlansShare() {
        String season = lines.season();
        lines.add(season, 93, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        lines.footnote(
                lines.add(season, 4, ALine.of("UNKNOWN", "FEMALE", "NOT_DETECTED")),
                "",
                false,
                "NOT_EXAMINED",
                "Head not brought");
        lines.footnote(lines.add(season, 1, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED")), "", true, "READ", "");
        lines.footnote(lines.add(season, 2, ALine.of("UNKNOWN", "MALE", "PENDING")), "", false, "READ", "");
        // 5 of 98 counted: above the plan's 5 %, and the two pending are not counted.
        JsonPath report = report(season, "");
        assertEquals(true, report.getBoolean("unknownAge.aboveThreshold"));
        assertEquals(5, report.getInt("unknownAge.total.animals"));
        assertEquals(98, report.getInt("unknownAge.total.of"));
        assertEquals(List.of("NOT_EXAMINED", "DISPUTED"), report.getList("unknownAge.rows.reason"));
        assertEquals(List.of("FEMALE", "MALE"), report.getList("unknownAge.rows.sex"));
        assertEquals(List.of("Head not brought", ""), report.getList("unknownAge.rows.words"));
        assertTrue(report.getList("notes").toString().contains("above the share at which the plan asks for this note"));
        lines.add(season, 10, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        JsonPath below = report(season, "");
        assertEquals(false, below.getBoolean("unknownAge.aboveThreshold"));
        assertFalse(below.getList("notes").toString().contains("above the share"));
    }

    /** By what, by how many readers and how firmly ages were told: asked under every table by age (common practice, no source). */
    @Test
    void whatTheAgesRestOnIsToldAndStaysAsItWasAtTheCut() {
        String season = lines.season();
        List<String> adults = lines.add(season, 5, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        List<String> yearlings = lines.add(season, 2, ALine.of("YEARLING", "MALE", "DETECTED"));
        lines.add(season, 1, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED"));
        List<String> roadkill =
                lines.add(season, 3, ALine.of("ADULT", "MALE", "NOT_DETECTED").from("VEHICLE"));
        adults.subList(0, 3).forEach(kit -> lines.read(kit, "R1", "TOOTH_REPLACEMENT", "ADULT"));
        roadkill.forEach(kit -> lines.read(kit, "R9", "TOOTH_REPLACEMENT", "ADULT"));
        lines.read(adults.get(3), "R2", "TOOTH_WEAR", "ADULT");
        lines.read(adults.get(3), "R3", "TOOTH_WEAR", "ADULT"); // the second to say so: the first stands
        lines.read(yearlings.get(0), "R1", "TOOTH_REPLACEMENT", "FAWN");
        lines.decide(yearlings.get(0), lines.read(yearlings.get(0), "LAB", "CEMENTUM", "YEARLING"), "YEARLING");
        lines.read(yearlings.get(1), "R1", "REPORTED_BY_HUNTER", "YEARLING"); // hearsay never stands undecided
        lines.footnote(adults.subList(4, 5), "", true, "READ", "");
        String told =
                "What the 7 known ages of counted animals rest on: 4 from a reading of the jaw by 2 readers (3 by tooth"
                        + " replacement, 1 by tooth wear); 1 decided by somebody who gave none of the readings (1 by cementum); 2 without"
                        + " a reading on record. Readers differ in 1 and nobody has decided; the first clear or probable reading stands.";
        String notes = String.join("\n", report(season, "").<String>getList("notes"));
        assertTrue(notes.contains(told), notes);
        String cut = UUID.randomUUID().toString();
        given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .contentType("application/json")
                .body(Map.of("season", season, "name", "Ages"))
                .put("/api/v1/data-cuts/" + cut)
                .then()
                .statusCode(201);
        lines.read(adults.get(4), "R4", "TOOTH_REPLACEMENT", "ADULT");
        assertTrue(report(season, "&by=sex")
                .getList("notes")
                .toString()
                .contains("5 from a reading of the jaw by 3 readers"));
        assertTrue(report(season, "&cut=" + cut).getList("notes").toString().contains(told), "as it was at the cut");
    }

    /** A binomial interval ignores what part of the herd was sampled; beyond a tenth that is said (common practice, no source). */
    @Test
    void whereMoreThanATenthOfAKnownHerdIsCountedTheReportSaysSo() {
        String unit = chances.unit();
        chances.set(PlanSetting.HERD_SIZE, "140", unit);
        String season = lines.season();
        lines.add(season, 14, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(unit));
        assertFalse(report(season, "&unit=" + unit).getList("notes").toString().contains("a tenth of the herd"));
        lines.add(season, 1, ALine.of("ADULT", "MALE", "NOT_DETECTED").in(unit));
        String notes = report(season, "&unit=" + unit).getList("notes").toString();
        assertTrue(notes.contains("15 of about 140 animals of"), notes);
        assertTrue(notes.contains("more than a tenth of the herd: the intervals are wider than they need be"), notes);
        assertFalse(report(season, "").getList("notes").toString().contains("a tenth of the herd"), "several units");
    }

    @Test
    void smallCellsAreFlaggedAndEachCellTellsItsPendingShare() {
        String season = lines.season();
        lines.add(season, 30, ALine.of("ADULT", "FEMALE", "NOT_DETECTED"));
        lines.add(season, 10, ALine.of("ADULT", "FEMALE", "PENDING"));
        lines.add(season, 29, ALine.of("YEARLING", "FEMALE", "NOT_DETECTED"));
        lines.add(season, 4, ALine.of("FAWN", "FEMALE", "DETECTED"));
        JsonPath report = report(season, "&by=ageClass");
        assertEquals(List.of(), flags(report, "ADULT"));
        assertEquals(List.of("FEW_COUNTED"), flags(report, "YEARLING"));
        assertEquals(List.of("VERY_FEW_COUNTED", "FEW_DETECTED"), flags(report, "FAWN"));
        assertEquals(List.of("NOT_SAMPLED"), flags(report, "UNKNOWN"));
        assertEquals(0.25, report.getDouble("cells.find { it.ageClass == 'ADULT' }.pendingShare"), 1e-9);
        assertEquals(null, report.<Object>get("cells.find { it.ageClass == 'UNKNOWN' }.pendingShare"));
        // Four fawns of one place could be told apart; four fawns of the whole state could not.
        JsonPath byUnit = report(season, "&by=managementUnit,ageClass");
        assertTrue(byUnit.<List<String>>get("cells.find { it.ageClass == 'FAWN' && it.counted == 4 }.flags")
                .contains("MAY_IDENTIFY"));
    }

    private static List<String> flags(JsonPath report, String age) {
        return report.getList("cells.find { it.ageClass == '" + age + "' }.flags");
    }

    @Test
    void cautionsAreTheReviewedSetAndMethodsNameTheirSource() {
        String season = lines.season();
        JsonPath report = report(season, "&interval=CLOPPER_PEARSON");
        String cautions = report.getList("cautions").toString();
        assertTrue(cautions.contains("surveillance, not inspection of food"), cautions);
        assertTrue(cautions.contains("no ground for a prize"), cautions);
        assertTrue(cautions.contains("Who decides: The state health department"), cautions);
        assertFalse(report(season, "&by=sex").getList("cautions").toString().contains("no ground for a prize"));
        String ofChance = given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .get("/api/v1/chance-of-detection?season=" + season)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getList("cautions")
                .toString();
        assertTrue(ofChance.contains("None detected is not proof"), ofChance);
        assertTrue(ofChance.contains("surveillance, not inspection of food"), ofChance);
        assertTrue(ofChance.contains("Who decides: The state health department"), ofChance);
        List<Map<String, String>> methods = report.getList("methods");
        assertTrue(methods.get(0).get("source").contains("Biometrika 26:404-413"), methods.toString());
        methods.forEach(method -> assertFalse(method.get("source").isBlank()));
    }

    @Test
    void thePageShowsThemInWords() {
        String season = lines.season();
        lines.footnote(
                lines.add(season, 4, ALine.of("UNKNOWN", "FEMALE", "NOT_DETECTED")),
                "POOL",
                false,
                "COLLECTED_TO_READ",
                "");
        String page = given().auth()
                .preemptive()
                .basic("epidemiologist", SeasonFixture.PASSWORD)
                .accept("text/html")
                .get("/prevalence?season=" + season)
                .asString();
        assertTrue(page.contains("Jaw collected, no class from it yet"), page);
        assertTrue(page.contains("tested only together with other animals"), page);
        assertTrue(page.contains("†† fewer than 5 counted"), page);
        assertTrue(page.contains("/api/v1/prevalence.pdf?"), page);
        assertTrue(page.contains("/api/v1/prevalence.xlsx?"), page);
    }

    /** What an epidemiologist looks for under a table before quoting it (common practice, no source). */
    @Test
    void everythingThatAQuotedFigureNeedsStandsUnderIt() {
        String season = lines.season();
        lines.add(season, 40, ALine.of("ADULT", "MALE", "NOT_DETECTED"));
        lines.add(season, 3, ALine.of("ADULT", "UNKNOWN", "NOT_DETECTED"));
        lines.footnote(
                lines.add(season, 2, ALine.of("UNKNOWN", "MALE", "NOT_DETECTED")), "", false, "NOT_EXAMINED", "Late");
        JsonPath report = report(season, "&by=managementUnit");
        String notes = String.join("\n", report.getList("notes"));
        for (String needed : List.of(
                "Tests and the tissue on which they count, by the plan:",
                "Detected: a final confirmatory detection",
                "Inconclusive, unsuitable, untested and pending animals are not counted; from taken to counted lists",
                "The unit is the animal",
                "Sampling: origin wild; source hunter harvest",
                "Every other animal is out of scope and in no figure",
                "fawn under 1 year, yearling from 1 to under 2, adult 2 and over, from tooth replacement and wear",
                "How readers agree is shown for each reader",
                "Sex is unknown in 3 of 45 counted animals",
                "Age class is unknown in 2 of 45 counted animals",
                "The intervals (Wilson score, 95 %)",
                "No correction is made for the size of the herd",
                "no p-value stands behind it, and none is adjusted",
                " runs from Jan 1, " + season.substring(1) + " to Dec 31, " + season.substring(1),
                "management unit",
                "A figure over several units is of the deer tested, not of the herd",
                // R 4.2.2: 1.959964^2 / (45 + 1.959964^2) = .0786512, Wilson's upper limit at 0 of 45.
                "None detected does not show absence: the upper limit of the 95 % interval is 7.9 %",
                "The lines as they are now; rules of reports, version ")) {
            assertTrue(notes.contains(needed), needed + " is not in\n" + notes);
        }
        String methods = report.getList("methods.what").toString();
        assertTrue(methods.contains("crude (not standardized to a herd), apparent (not corrected for tests"), methods);
        assertFalse(
                report(season, "&unit=" + SeasonFixture.UNIT)
                        .getList("notes")
                        .toString()
                        .contains("A figure over several units"),
                "one unit is no several");
    }
}
