package org.dentary.jaw;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

/** Readings of animals' jaws as they are kept: what else is known of the animal, and what the plan says there and then. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class JawReadingTest {
    @Inject
    IntakeFixture deer;

    @Inject
    EntityManager entities;

    /** J19: uneven chewing is real, so the classes of both sides are kept and a second reader asked. */
    @Test
    void theOtherSideReadOtherwiseIsQuestioned() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        read("sampler", one.kit(), deer.yearling(UUID.randomUUID()).put("side", "LEFT"))
                .statusCode(201);
        read("coordinator", one.kit(), deer.adult(UUID.randomUUID()).put("side", "RIGHT"))
                .statusCode(201)
                .body("jawReadings[1].ageClass", equalTo("ADULT"))
                .body("jawReadings[1].contradictions.rule", hasItem("J19"))
                .body("jawReadings[1].needsSecondReader", equalTo(true));
        Deer same = deer.aDeer();
        deer.take(same, deer.facts());
        read("sampler", same.kit(), deer.yearling(UUID.randomUUID()).put("side", "LEFT"));
        read("coordinator", same.kit(), deer.adult(UUID.randomUUID()).put("side", "LEFT"))
                .body("jawReadings[1].contradictions.rule", not(hasItem("J19")));
    }

    /** J25, whichever comes first: both are kept, and neither replaces the other. */
    @Test
    void cementumFarFromTheTeethIsFlaggedWhicheverComesFirst() {
        Deer later = deer.aDeer();
        deer.take(later, deer.facts());
        read("sampler", later.kit(), fawn()).statusCode(201);
        read("coordinator", later.kit(), cementum("ADULT", "3.5"))
                .statusCode(201)
                .body("ageClass", equalTo("FAWN"))
                .body("jawReadings[1].contradictions.rule", equalTo(java.util.List.of("J25")))
                .body("jawReadings[1].contradictions[0].severity", equalTo("FLAG"));
        as("auditor").get("/api/v1/jaws/queue?task=DECIDE").then().body("items.kit", hasItem(later.kit()));

        Deer first = deer.aDeer();
        deer.take(first, deer.facts());
        read("coordinator", first.kit(), cementum("ADULT", "5.5")).statusCode(201);
        read("sampler", first.kit(), deer.adult(UUID.randomUUID()).put("examinersYearClass", "2.5"))
                .body("jawReadings[1].contradictions.rule", hasItem("J25"));

        Deer near = deer.aDeer();
        deer.take(near, deer.facts());
        read("sampler", near.kit(), deer.yearling(UUID.randomUUID()));
        read("coordinator", near.kit(), cementum("ADULT", "2.5")).body("jawReadings[1].contradictions", hasSize(0));
    }

    @Test
    void anOutsideNotAFawnIsABoundAndNeverAClass() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts());
        ObjectNode told = deer.knownAge(UUID.randomUUID(), "YEARLING").put("method", "REPORTED_BY_HUNTER");
        told.remove("examinersClass");
        read("sampler", one.kit(), told.deepCopy()).statusCode(422).body("errors[0].field", equalTo("examinersClass"));
        read("sampler", one.kit(), told.deepCopy().put("atLeast", "FAWN"))
                .statusCode(422)
                .body("errors[0].field", equalTo("atLeast"));
        read("sampler", one.kit(), told.deepCopy().put("atLeast", "YEARLING").put("examinersClass", "ADULT"))
                .statusCode(422);
        read("sampler", one.kit(), deer.adult(UUID.randomUUID()).put("atLeast", "YEARLING"))
                .statusCode(422)
                .body("errors[0].rule", equalTo("OTHER_METHODS_ONLY"));
        read("sampler", one.kit(), told.deepCopy().put("atLeast", "YEARLING"))
                .statusCode(201)
                .body("ageClass", equalTo("UNKNOWN"))
                .body("ageDisputed", equalTo(false))
                .body("jawReadings[0].certainty", equalTo("UNRESOLVED"));
        as("auditor").accept("text/html").get("/animals/" + one.kit()).then().body(containsString("At least yearling"));
        read("coordinator", one.kit(), fawn()).statusCode(201).body("ageClass", equalTo("FAWN"));
    }

    /** J23 by the plan's dated bands: the same mass is ordinary in one unit and flagged in another. */
    @Test
    void theMassThatIsExpectedIsThePlansWhereAndWhenTheDeerDied() {
        ObjectNode body = deer.facts().put("jawStatus", "READ").put("fieldDressedKilograms", 60);
        body.set("jawReading", deer.yearling(UUID.randomUUID()));
        Deer ordinary = deer.aDeer();
        deer.take(ordinary, body.deepCopy()).body("jawReadings[0].contradictions", hasSize(0));
        setting(
                "FIELD_DRESSED_KILOGRAMS_YEARLING_MALE",
                "20-55",
                SeasonFixture.EARLIER_SEASON,
                SeasonFixture.OTHER_UNIT);
        setting("FIELD_DRESSED_KILOGRAMS_YEARLING_MALE", "20-59", SeasonFixture.SEASON, SeasonFixture.UNIT);
        try {
            ObjectNode there = body.deepCopy().put("managementUnit", SeasonFixture.OTHER_UNIT);
            there.set("jawReading", deer.yearling(UUID.randomUUID()));
            Deer heavy = deer.aDeer();
            deer.take(heavy, there)
                    .body("jawReadings[0].contradictions.rule", hasItem("J23"))
                    .body("ageClass", equalTo("YEARLING"));
            ObjectNode here = body.deepCopy();
            here.set("jawReading", deer.yearling(UUID.randomUUID()));
            deer.take(deer.aDeer(), here).body("jawReadings[0].contradictions", hasSize(0));
        } finally {
            sql("delete from plan_setting where name = 'FIELD_DRESSED_KILOGRAMS_YEARLING_MALE'");
        }
    }

    /** J17 by the region of the station: a full new third tooth is early in the north until October, elsewhere as set. */
    @Test
    void datesAreThoseOfTheStationsRegionOnTheReadingThePageAndThePrintedKey() throws IOException {
        deer.aDeer();
        sql(
                "insert into plan_setting (name, value, region) values ('FULL_THIRD_TOOTH_UNUSUAL_BEFORE', '12-01', 'T_SOUTH'),"
                        + " ('BIRTH_PULSE_PEAK', '07-20', 'T_SOUTH')");
        try {
            ObjectNode newThird = deer.yearling(UUID.randomUUID());
            ((ObjectNode) newThird.get("thirdTooth")).put("cusps", 2).put("dentine", "NOT_EXPOSED");
            Deer north = deer.aDeer();
            ObjectNode body = deer.facts().put("jawStatus", "READ");
            body.set("jawReading", newThird);
            deer.take(north, body.deepCopy()).body("jawReadings[0].contradictions", hasSize(0));
            ObjectNode southern = body.deepCopy()
                    .put("station", SeasonFixture.WESTERN_STATION)
                    .put("managementUnit", SeasonFixture.SOUTHERN_UNIT);
            ((ObjectNode) southern.get("jawReading"))
                    .put("id", UUID.randomUUID().toString());
            deer.take(deer.aDeer(), southern)
                    .body("jawReadings[0].contradictions.rule", hasItem("J17"))
                    .body("jawReadings[0].ageClass", equalTo("YEARLING"));
            String asked = "/jaw-key?rowSeen=WHOLE&cheekTeeth=6&thirdTooth.cusps=2&thirdTooth.eruption=FULL"
                    + "&thirdTooth.dentine=NOT_EXPOSED&sixthTooth.dentine=NOT_EXPOSED&diedOn=2025-11-14";
            as("sampler").accept("text/html").get(asked).then().body(not(containsString("J17")));
            as("sampler")
                    .accept("text/html")
                    .get(asked + "&region=T_SOUTH")
                    .then()
                    .body(containsString("J17"));
            as("sampler")
                    .accept("text/html")
                    .get(asked + "&region=ATLANTIS")
                    .then()
                    .statusCode(422);
            assertTrue(printed("?region=T_SOUTH").contains("July 20 (May 10 to August 15)"));
            assertFalse(printed("").contains("July 20"));
        } finally {
            sql("delete from plan_setting where region = 'T_SOUTH'");
        }
    }

    /** The share of the lot is the season's and unit's; what was drawn stays drawn when the share changes. */
    @Test
    void theLotIsSettledWithTheFirstReading() {
        setting("BLIND_SECOND_READING_SHARE", "1", SeasonFixture.EARLIER_SEASON, SeasonFixture.OTHER_UNIT);
        String drawn;
        try {
            drawn = yearlingIn(SeasonFixture.OTHER_UNIT);
        } finally {
            sql("delete from plan_setting where name = 'BLIND_SECOND_READING_SHARE'");
        }
        setting("BLIND_SECOND_READING_SHARE", "0", SeasonFixture.EARLIER_SEASON, SeasonFixture.OTHER_UNIT);
        String left;
        try {
            left = yearlingIn(SeasonFixture.OTHER_UNIT);
            as("auditor")
                    .get("/api/v1/jaws/queue?task=READ_AGAIN")
                    .then()
                    .body("items.kit", hasItem(drawn))
                    .body("items.kit", not(hasItem(left)))
                    .body("items.find { it.kit == '" + drawn + "' }.why", equalTo("DRAWN"));
        } finally {
            sql("delete from plan_setting where name = 'BLIND_SECOND_READING_SHARE'");
        }
        as("coordinator").get("/api/v1/animals/" + drawn).then().body("readingsHidden", equalTo(true));
        setting("BLIND_SECOND_READING_SHARE", "1", SeasonFixture.EARLIER_SEASON, SeasonFixture.OTHER_UNIT);
        ValidatableResponse again;
        try {
            again = read("coordinator", drawn, deer.yearling(UUID.randomUUID()));
        } finally {
            sql("delete from plan_setting where name = 'BLIND_SECOND_READING_SHARE'");
        }
        again.body("jawReadings[0].drawn", equalTo(true))
                .body("jawReadings[1].drawn", equalTo(false))
                .body("jawReadings[1].blind", equalTo(true));
    }

    /** Whether a probable age needs a second reader is the plan's, and how many wait for that alone stands beside it. */
    @Test
    void theQueueSaysHowManyWaitOnlyBecauseTheirAgeIsProbable() {
        deer.aDeer();
        int before = waiting();
        setting("PROBABLE_NEEDS_SECOND_READER", "false", SeasonFixture.EARLIER_SEASON, SeasonFixture.OTHER_UNIT);
        setting("BLIND_SECOND_READING_SHARE", "0", SeasonFixture.EARLIER_SEASON, SeasonFixture.UNIT);
        try {
            for (String unit : new String[] {SeasonFixture.UNIT, SeasonFixture.OTHER_UNIT}) {
                Deer one = deer.aDeer();
                ObjectNode body = deer.facts().put("managementUnit", unit);
                ObjectNode probable = deer.adult(UUID.randomUUID());
                ((ObjectNode) probable.get("sixthTooth")).put("dentine", "TRACE");
                body.set("jawReading", probable);
                deer.take(one, body)
                        .body("jawReadings[0].certainty", equalTo("PROBABLE"))
                        .body("jawReadings[0].needsSecondReader", equalTo(unit.equals(SeasonFixture.UNIT)));
            }
        } finally {
            sql(
                    "delete from plan_setting where name in ('PROBABLE_NEEDS_SECOND_READER', 'BLIND_SECOND_READING_SHARE')");
        }
        assertEquals(before + 1, waiting());
        as("sampler")
                .accept("text/html")
                .get("/jaws")
                .then()
                .body(containsString((before + 1) + " of these wait for that alone"));
    }

    private static int waiting() {
        return as("auditor")
                .get("/api/v1/jaws/queue/sizes")
                .then()
                .statusCode(200)
                .body("items.task", equalTo(java.util.List.of("READ", "READ_AGAIN", "DECIDE")))
                .extract()
                .path("items[1].probable");
    }

    @Test
    void theFormKeepsSideStateAndWhereaboutsAndTheQueueSaysWhereTheJawIs() {
        Deer one = deer.aDeer();
        deer.take(one, deer.facts().put("jawStatus", "PHOTO_TO_READ"));
        as("sampler")
                .accept("text/html")
                .get("/animals/" + one.kit() + "/jaw")
                .then()
                .body(containsString("<option value=\"PHOTO_ONLY\" selected>From a photo"));
        as("sampler")
                .accept("text/html")
                .redirects()
                .follow(false)
                .contentType("application/x-www-form-urlencoded")
                .formParam("readingId", UUID.randomUUID().toString())
                .formParam("at", "2025-11-14T09:10")
                .formParam("jaw.rowSeen", "FRONT_ONLY")
                .formParam("jawSide", "LEFT")
                .formParam("jawState", "PHOTO_ONLY")
                .formParam("jawWhereabouts", "GONE")
                .post("/animals/" + one.kit() + "/jaw")
                .then()
                .statusCode(303);
        as("auditor")
                .get("/api/v1/animals/" + one.kit())
                .then()
                .body("jawReadings[0].side", equalTo("LEFT"))
                .body("jawReadings[0].jawState", equalTo("PHOTO_ONLY"))
                .body("jawReadings[0].whereabouts", equalTo("GONE"));
        as("auditor")
                .get("/api/v1/jaws/queue?task=READ_AGAIN")
                .then()
                .body("items.find { it.kit == '" + one.kit() + "' }.whereabouts", equalTo("GONE"));
    }

    @Test
    void whatBelongsToNothingIsRefusedAndNothingIsStored() {
        Deer one = deer.aDeer();
        read("sampler", one.kit(), deer.adult(UUID.randomUUID()))
                .statusCode(404)
                .body("code", equalTo("ANIMAL_UNKNOWN"));
        deer.take(one, deer.facts());
        read("sampler", one.kit(), deer.adult(UUID.randomUUID()).put("readAt", "2025-11-13T09:00:00-06:00"))
                .statusCode(422)
                .body("errors[0].field", equalTo("readAt"))
                .body("errors[0].rule", equalTo("J28"));
        read("sampler", one.kit(), deer.adult(UUID.randomUUID()).put("readAt", "2999-01-01T00:00:00Z"))
                .statusCode(422)
                .body("errors[0].rule", equalTo("J28"));
        read("sampler", one.kit(), deer.adult(UUID.randomUUID()).put("jawState", "STALE"))
                .statusCode(422)
                .body("errors[0].field", equalTo("jawState"))
                .body("errors[0].message", containsString("FRESH"));
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body("jawReadings", hasSize(0));
        read("sampler", one.kit(), deer.adult(UUID.randomUUID())).statusCode(201);
        read("sampler", one.kit(), deer.adult(UUID.randomUUID()))
                .statusCode(409)
                .body("code", equalTo("SAME_READER"));
        as("auditor").get("/api/v1/animals/" + one.kit()).then().body("jawReadings", hasSize(1));
    }

    private String yearlingIn(String unit) {
        Deer one = deer.aDeer();
        deer.take(one, deer.yearlingWithLeftNode(one).put("managementUnit", unit));
        return one.kit();
    }

    private ObjectNode fawn() {
        ObjectNode reading = deer.yearling(UUID.randomUUID()).put("cheekTeeth", 5);
        reading.remove("sixthTooth");
        return reading;
    }

    private ObjectNode cementum(String ageClass, String yearClass) {
        return deer.knownAge(UUID.randomUUID(), ageClass)
                .put("method", "CEMENTUM")
                .put("examinersYearClass", yearClass);
    }

    private static String printed(String query) throws IOException {
        byte[] pdf = as("sampler").get("/jaw-key.pdf" + query).then().extract().asByteArray();
        String words =
                new PdfTextExtractor(new PdfReader(pdf)).getTextFromPage(1).replaceAll("\\s+", " ");
        assertEquals(1, new PdfReader(pdf).getNumberOfPages());
        return words;
    }

    private ValidatableResponse read(String account, String kit, ObjectNode reading) {
        return deer.put(
                account,
                "/animals/" + kit + "/jaw-readings/" + reading.get("id").textValue(),
                reading);
    }

    private void setting(String name, String value, String season, String unit) {
        deer.aDeer();
        sql("insert into plan_setting (name, value, season, unit) values ('" + name + "', '" + value + "', '" + season
                + "', '" + unit + "')");
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
