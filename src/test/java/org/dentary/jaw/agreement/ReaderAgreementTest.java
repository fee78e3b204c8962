package org.dentary.jaw.agreement;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.UUID;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.platform.DatabaseTestResource;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class ReaderAgreementTest {
    @Inject
    IntakeFixture deer;

    @Inject
    EntityManager entities;

    /** Fleiss (1981), Statistical Methods for Rates and Proportions, table 13.1: 100 cases, kappa .68 (.6765 by R). */
    private static final int[][] FLEISS_1981 = {{75, 1, 4}, {5, 4, 1}, {0, 0, 10}};

    private static final double KAPPA = 0.6765;

    @Test
    void agreementComesFromBlindPairsOfJawsDrawnByLotAlone() {
        String person = reader();
        String other = reader();
        String[] classes = {"FAWN", "YEARLING", "ADULT"};
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (int n = 0; n < FLEISS_1981[i][j]; n++) {
                    String kit = animal();
                    drawnReading(kit, person, classes[i], false, 1);
                    drawnReading(kit, other, classes[j], true, 2);
                }
            }
        }
        String known = animal();
        reading(known, person, "FAWN", "TOOTH_REPLACEMENT", false, false, 1);
        reading(known, "mark", "YEARLING", "KNOWN_AGE_MARK", false, false, 2);
        // A mark read before the teeth, by a reader who knew it: no pair.
        String told = animal();
        reading(told, "mark", "ADULT", "KNOWN_AGE_MARK", false, false, 1);
        reading(told, person, "ADULT", "TOOTH_REPLACEMENT", false, false, 2);
        // Not blind, though drawn: no pair.
        String seen = animal();
        drawnReading(seen, person, "FAWN", false, 1);
        drawnReading(seen, other, "ADULT", false, 2);
        // Blind, but sent on by a rule: apart.
        String referred = animal();
        reading(referred, person, "YEARLING", "TOOTH_REPLACEMENT", false, true, 1);
        reading(referred, other, "ADULT", "TOOTH_REPLACEMENT", true, false, 2);
        // Unknown classes make no pair.
        String unknown = animal();
        drawnReading(unknown, person, "UNKNOWN", false, 1);
        drawnReading(unknown, other, "ADULT", true, 2);
        practice(person, new String[] {"FAWN", "FAWN", "YEARLING", "UNKNOWN"}, new String[] {
            "FAWN", "FAWN", "ADULT", "FAWN"
        });
        practice(person, new String[] {"ADULT"}, new String[] {"FAWN"});
        as("auditor")
                .get("/api/v1/readers/" + person + "/agreement")
                .then()
                .statusCode(200)
                .body("drawn.counts", equalTo(List.of(List.of(75, 1, 4), List.of(5, 4, 1), List.of(0, 0, 10))))
                .body("drawn.agreement.animals", equalTo(100))
                .body("drawn.agreement.kappa.estimate.toDouble()", closeTo(KAPPA, 5e-5))
                .body("referred.agreement.animals", equalTo(1))
                .body("panel.counts", equalTo(List.of(List.of(2, 0, 0), List.of(0, 0, 1), List.of(0, 0, 0))))
                .body("knownAge.agreement.animals", equalTo(1))
                .body("knownAge.counts[0][1]", equalTo(1))
                .body("knownAge.agreement.bias", equalTo(1.0f))
                .body("seasons.season", everyItem(equalTo("T2025")))
                .body("seasons.compared", equalTo(List.of("DRAWN", "PANEL", "KNOWN_AGE", "REFERRED")));
        as("auditor")
                .get("/api/v1/readers/" + person + "/agreement?season=T2026")
                .then()
                .body("drawn.agreement.animals", equalTo(0))
                .body("drawn.agreement.kappa.estimate", nullValue());
        as("auditor")
                .get("/api/v1/readers/" + person + "/agreement.csv")
                .then()
                .statusCode(200)
                .body(containsString("DRAWN,YEARLING,FAWN,5"));
        as("auditor")
                .get("/api/v1/readers/" + person + "/agreement-by-season.csv")
                .then()
                .statusCode(200)
                .body(containsString("T2025,DRAWN,100,0.89,0.96,"));
        as("auditor").get("/api/v1/readers/readers.csv").then().body(containsString(person + ",Reader,105,DRAWN,100,"));
        as("auditor")
                .accept("text/html")
                .get("/readers/" + person)
                .then()
                .statusCode(200)
                .body(containsString("0.68 (error 0.09)"))
                .body(containsString("undefined"));
    }

    @Test
    void aSamplerReadsTheirOwnAndAnUnknownReaderIs404() {
        deer.aDeer();
        as("sampler").get("/api/v1/readers/T_SAMPLER/agreement").then().statusCode(200);
        as("sampler").get("/api/v1/readers/T_COORDINATOR/agreement").then().statusCode(403);
        as("epidemiologist").get("/api/v1/readers/T_NOBODY/agreement").then().statusCode(404);
        as("notifier").get("/api/v1/readers/T_SAMPLER/agreement").then().statusCode(403);
        as("sampler").accept("text/html").get("/readers/T_COORDINATOR").then().statusCode(403);
        as("liaison").accept("text/html").get("/readers").then().statusCode(403);
        as("sampler")
                .get("/api/v1/readers")
                .then()
                .statusCode(200)
                .body("items.person", everyItem(equalTo("T_SAMPLER")));
    }

    private String reader() {
        deer.aDeer();
        String code = "R_" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(java.util.Locale.ROOT);
        sql("insert into person (code, name, position) values ('" + code + "', 'Reader', 99)");
        return code;
    }

    private String animal() {
        Deer one = deer.aDeer();
        sql("insert into animal (kit, species, origin, sex, sex_evidence, died_on, station, season, mortality_source,"
                + " collection_route, clinical_signs, sampling_basis, jaw_status, recorded_by, recorded_at) values ('"
                + one.kit() + "', 'WHITE_TAILED_DEER', 'WILD', 'MALE', 'UNKNOWN', '2025-11-14', 'T_STATION_1', 'T2025',"
                + " 'HUNTER_HARVEST', 'STATION', 'NONE_SEEN', 'MANDATORY', 'READ', 'test', now())");
        return one.kit();
    }

    private void drawnReading(String kit, String who, String ageClass, boolean blind, int order) {
        reading(kit, who, ageClass, "TOOTH_REPLACEMENT", blind, false, order, true);
    }

    /** A finished round on the same jaws of the panel each time, numbered. */
    private void practice(String person, String[] said, String[] right) {
        UUID round = UUID.randomUUID();
        sql(
                "insert into practice_round (id, person, season, rule_set_version, jaws, begun_at, finished_at, right_answers)"
                        + " values ('" + round + "', '" + person + "', 'T2025', 't', " + said.length
                        + ", now(), now(), 0)");
        for (int i = 0; i < said.length; i++) {
            sql("insert into practice_jaw (round, position, jaw, kind, right_class, given_class, given_at) values ('"
                    + round + "', " + (i + 1) + ", 'jaw-" + i + "', 'DRAWN', '" + right[i] + "', '" + said[i]
                    + "', clock_timestamp())");
        }
    }

    private void reading(
            String kit, String who, String ageClass, String method, boolean blind, boolean asked, int order) {
        reading(kit, who, ageClass, method, blind, asked, order, false);
    }

    private void reading(
            String kit,
            String who,
            String ageClass,
            String method,
            boolean blind,
            boolean asked,
            int order,
            boolean drawn) {
        sql("insert into jaw_reading (id, kit, read_at, examiner, method, observation, age_class, certainty, disputed,"
                + " needs_second_reader, drawn, blind, rule_set_version, received_by, received_at) values (gen_random_uuid(), '"
                + kit + "', '2025-11-14T15:00:00Z', '" + who + "', '" + method + "', '{}', '" + ageClass
                + "', 'CLEAR', false, " + asked + ", " + drawn + ", " + blind + ", 't', '" + who
                + "', timestamptz '2025-11-14' + interval '"
                + order + " hours')");
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
