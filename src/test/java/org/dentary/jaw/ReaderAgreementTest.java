package org.dentary.jaw;

import static org.dentary.intake.IntakeFixture.as;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

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
    void agreementComesFromBlindPairsOfUnreferredJawsAlone() {
        String person = reader();
        String other = reader();
        String[] classes = {"FAWN", "YEARLING", "ADULT"};
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (int n = 0; n < FLEISS_1981[i][j]; n++) {
                    String kit = animal();
                    reading(kit, person, classes[i], "TOOTH_REPLACEMENT", false, false, 1);
                    reading(kit, other, classes[j], "TOOTH_REPLACEMENT", true, false, 2);
                }
            }
        }
        String known = animal();
        reading(known, person, "FAWN", "TOOTH_REPLACEMENT", false, false, 1);
        reading(known, "mark", "YEARLING", "KNOWN_AGE_MARK", false, false, 2);
        String seen = animal();
        reading(seen, person, "FAWN", "TOOTH_REPLACEMENT", false, false, 1);
        reading(seen, other, "ADULT", "TOOTH_REPLACEMENT", false, false, 2);
        String referred = animal();
        reading(referred, person, "YEARLING", "TOOTH_REPLACEMENT", false, true, 1);
        reading(referred, other, "ADULT", "TOOTH_REPLACEMENT", true, false, 2);
        as("auditor")
                .get("/api/v1/readers/" + person + "/agreement")
                .then()
                .statusCode(200)
                .body("drawn.counts", equalTo(List.of(List.of(75, 1, 4), List.of(5, 4, 1), List.of(0, 0, 10))))
                .body("drawn.agreement.animals", equalTo(100))
                .body("drawn.agreement.kappa.estimate.toDouble()", closeTo(KAPPA, 5e-5))
                .body("referred.agreement.animals", equalTo(1))
                .body("knownAge.counts[0][1]", equalTo(1))
                .body("knownAge.agreement.bias", equalTo(1.0f));
        as("auditor")
                .get("/api/v1/readers/" + person + "/agreement.csv")
                .then()
                .statusCode(200)
                .body(containsString("DRAWN,YEARLING,FAWN,5"));
    }

    @Test
    void aSamplerReadsTheirOwnAndAnUnknownReaderIs404() {
        deer.aDeer();
        as("sampler").get("/api/v1/readers/T_SAMPLER/agreement").then().statusCode(200);
        as("sampler").get("/api/v1/readers/T_COORDINATOR/agreement").then().statusCode(403);
        as("epidemiologist").get("/api/v1/readers/T_NOBODY/agreement").then().statusCode(404);
        as("notifier").get("/api/v1/readers/T_SAMPLER/agreement").then().statusCode(403);
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

    private void reading(
            String kit, String who, String ageClass, String method, boolean blind, boolean asked, int order) {
        sql("insert into jaw_reading (id, kit, read_at, examiner, method, observation, age_class, certainty, disputed,"
                + " needs_second_reader, blind, rule_set_version, received_by, received_at) values (gen_random_uuid(), '"
                + kit + "', '2025-11-14T15:00:00Z', '" + who + "', '" + method + "', '{}', '" + ageClass
                + "', 'CLEAR', false, " + asked + ", " + blind + ", 't', '" + who
                + "', timestamptz '2025-11-14' + interval '"
                + order + " hours')");
    }

    private void sql(String statement) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(statement).executeUpdate());
    }
}
