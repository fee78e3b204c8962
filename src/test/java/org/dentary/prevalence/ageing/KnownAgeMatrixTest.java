package org.dentary.prevalence.ageing;

import static org.dentary.prevalence.comparison.ClassFixture.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.LineFixture;
import org.dentary.prevalence.LineFixture.ALine;
import org.dentary.prevalence.comparison.ClassFixture;
import org.junit.jupiter.api.Test;

/** The matrix counted from jaws of known age, and nothing but them. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class KnownAgeMatrixTest {
    @Inject
    LineFixture lines;

    @Inject
    ClassFixture classes;

    @Inject
    AgeingFixture ageing;

    private final List<String> kits = new ArrayList<>();

    /** In one test, as the second half needs the readings that the first must not have. */
    @Test
    void blindReadingsOfKnownAgeJawsMakeTheMatrixAndNothingElseDoes() throws IOException {
        String season = classes.season(AgeingFixture.HERE);
        String jaws = lines.season();
        kits.addAll(
                lines.add(jaws, 30, ALine.of("UNKNOWN", "MALE", "NOT_TESTED").without()));
        ageing.ofItsOwnSpecies(season);
        ageing.ofItsOwnSpecies(jaws);
        String address =
                "/api/v1/ageing-error?season=" + season + "&species=" + AgeingFixture.SPECIES + "&matrix=KNOWN_AGE";
        whatTellsNothing();
        known("YEARLING", "ADULT");
        known("YEARLING", "YEARLING", "YEARLING");
        refused(address, "fawn 0, yearling 3 (2 jaws), adult 0.");
        known("FAWN", "FAWN");
        known("FAWN", "FAWN", "YEARLING", "UNKNOWN");
        known("ADULT", "ADULT", "ADULT", "ADULT", "YEARLING");
        practice();
        JsonPath answer = as("epidemiologist")
                .get(address)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertEquals("KNOWN_AGE", answer.getString("matrix.kind"));
        assertEquals(List.of(4, 5, 10), answer.getList("matrix.tables[0].rows.readings"));
        assertEquals(List.of(List.of(3, 1, 0), List.of(0, 4, 1), List.of(0, 1, 9)), counts(answer));
        assertEquals(List.of(3, 4, 4), answer.getList("matrix.tables[0].rows.jaws"));
        assertEquals(List.of(1, 0, 0), answer.getList("matrix.tables[0].rows.withoutClass"));
        assertTrue(answer.getString("warnings").contains("Few: how fawns are read rests on 4 readings of 3 jaws."));
        assertTrue(answer.getString("matrix.source").endsWith("Never one reader against another."));
        AgeingResourceTest.asR("KNOWN", answer);
        onACut(season, address);
    }

    private static List<List<Integer>> counts(JsonPath answer) {
        List<List<Integer>> counts = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            counts.add(answer.getList("matrix.tables[0].rows[" + i + "].reads.readings"));
        }
        return counts;
    }

    /** The cut's matrix is that of its own day, whatever is read later. */
    private void onACut(String season, String address) {
        String cut = classes.cut(season, "With known ages");
        String first = as("auditor")
                .get(address + "&cut=" + cut)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        String kit = kits.remove(0);
        ageing.sql(
                "insert into jaw_reading (id, kit, read_at, examiner, method, observation, age_class, certainty, disputed,"
                        + " needs_second_reader, drawn, blind, rule_set_version, received_by, received_at) select gen_random_uuid(), '"
                        + kit
                        + "', now(), who, method, '{}', age_class, 'CLEAR', false, false, false, true, 't', who, now()"
                        + " from (values ('mark', 'KNOWN_AGE_MARK', 'FAWN'), ('R1', 'TOOTH_WEAR', 'ADULT')) as v(who, method, age_class)");
        assertEquals(first, as("auditor").get(address + "&cut=" + cut).asString());
        // Another matrix code is another question, computed now: still without the reading of after the cut.
        as("auditor")
                .get(address + "&cut=" + cut + "&sex=MALE")
                .then()
                .body("matrix.tables[0].rows[0].readings", equalTo(4));
        as("auditor").get(address).then().body("matrix.tables[0].rows[0].readings", equalTo(5));
    }

    /** A jaw of known age and what readers who did not know it called it, each another person. */
    private void known(String ageClass, String... reads) {
        String kit = kits.remove(0);
        for (int i = 0; i < reads.length; i++) {
            ageing.reading(kit, "R" + i, i % 2 == 0 ? "TOOTH_REPLACEMENT" : "TOOTH_WEAR", reads[i], i > 0, i);
        }
        ageing.reading(kit, "mark", "KNOWN_AGE_MARK", ageClass, false, 40);
    }

    /** Readings that must not count, all of them as wrong as can be. */
    private void whatTellsNothing() {
        String told = kits.remove(0);
        ageing.reading(told, "mark", "KNOWN_AGE_MARK", "ADULT", false, 1);
        ageing.reading(told, "R1", "TOOTH_WEAR", "FAWN", false, 2);
        String own = kits.remove(0);
        ageing.reading(own, "R1", "TOOTH_WEAR", "FAWN", false, 1);
        ageing.reading(own, "R1", "KNOWN_AGE_MARK", "ADULT", false, 2);
        String twoMarks = kits.remove(0);
        ageing.reading(twoMarks, "R1", "TOOTH_WEAR", "FAWN", true, 1);
        ageing.reading(twoMarks, "mark", "KNOWN_AGE_MARK", "ADULT", false, 2);
        ageing.reading(twoMarks, "mark2", "KNOWN_AGE_MARK", "YEARLING", false, 3);
        // Readers against readers, cementum, looks: no known age.
        String agreeing = kits.remove(0);
        ageing.reading(agreeing, "R1", "TOOTH_WEAR", "FAWN", false, 1);
        ageing.reading(agreeing, "R2", "TOOTH_WEAR", "ADULT", true, 2);
        ageing.reading(agreeing, "R3", "CEMENTUM", "ADULT", true, 3);
        String looks = kits.remove(0);
        ageing.reading(looks, "R1", "BODY_FEATURES", "FAWN", true, 1);
        ageing.reading(looks, "mark", "KNOWN_AGE_MARK", "ADULT", false, 2);
        String error = kits.remove(0);
        ageing.reading(error, "R1", "TOOTH_WEAR", "FAWN", true, 1);
        ageing.reading(error, "mark", "KNOWN_AGE_MARK", "ADULT", false, 2);
        ageing.sql("update animal set entered_in_error = true where kit = '" + error + "'");
        // Of one reader and jaw the first alone.
        ageing.practiced(kits.remove(0), "AGREED", "ADULT", "R7", "FAWN");
    }

    /** Answers in practice: of one person and jaw the first counts. */
    private void practice() {
        ageing.practiced(kits.remove(0), "KNOWN_AGE", "FAWN", "R8", "FAWN", "ADULT");
        ageing.practiced(kits.remove(0), "KNOWN_AGE", "YEARLING", "R8", "YEARLING");
        ageing.practiced(kits.get(0), "KNOWN_AGE", "ADULT", "R8", "ADULT", "FAWN");
        String jaw = kits.remove(0);
        for (String who : List.of("R9", "R10", "R11")) {
            ageing.reading(jaw, who, "TOOTH_WEAR", "ADULT", true, 3);
        }
        ageing.reading(jaw, "R9", "TOOTH_WEAR", "FAWN", true, 4);
        ageing.reading(jaw, "mark", "KNOWN_AGE_MARK", "ADULT", false, 9);
        known("ADULT", "ADULT");
        known("ADULT", "ADULT");
        known("YEARLING", "YEARLING");
    }

    private static void refused(String address, String counts) {
        as("epidemiologist")
                .get(address)
                .then()
                .statusCode(422)
                .body("code", equalTo("KNOWN_AGE_MISSING"))
                .body("detail", containsString(counts))
                .body("detail", containsString("Have jaws of known age read blind"));
    }
}
