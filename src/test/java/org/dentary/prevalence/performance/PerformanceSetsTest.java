package org.dentary.prevalence.performance;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.prevalence.comparison.ClassFixture;
import org.dentary.prevalence.truth.TruthFixture;
import org.junit.jupiter.api.Test;

/** Sets of test performance come in by file, whole, and never change. */
@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class PerformanceSetsTest {
    private static final String LEVEL = "ANIMAL_LEVEL";

    @Inject
    TruthFixture truths;

    @Inject
    ClassFixture classes;

    @Inject
    EntityManager entities;

    @Test
    void aSetMayBeRepeatedAndNeverChanges() {
        String code = truths.code();
        post(TruthFixture.row(code, LEVEL, "0.92,0.99,,,,")).statusCode(200).body("adds", equalTo(1));
        post(TruthFixture.row(code, LEVEL, "0.920,0.99,,,,")).statusCode(200).body("changes", equalTo(0));
        post(TruthFixture.row(code, LEVEL, "0.93,0.99,,,,"))
                .statusCode(409)
                .body("errors[0].rule", equalTo("CODE_FIXED"))
                .body("errors[0].message", containsString("a code of their own"));
        post(TruthFixture.row(code, "RELATIVE", "0.92,0.99,,,,")).statusCode(409);
    }

    @Test
    void figuresAreFractionsOrCountsAndBetterThanChance() {
        for (String parts : List.of(
                ",,,,,", "0.9,,,,,", "0.9,0.9,100,90,100,90", ",,100,90,,", "0.9,,100,90,,", ",0.9,100,90,100,99")) {
            faulty(parts, "FRACTIONS_OR_COUNTS", "all four counts");
        }
        faulty(",,100,101,100,99", "MORE_THAN_ALL", "'detected_of_infected' 101 is more than 'infected' 100");
        faulty(",,100,90,100,101", "MORE_THAN_ALL", "'not_detected_of_uninfected' 101 is more than 'uninfected' 100");
        faulty("0.4,0.6,,,,", "NO_BETTER_THAN_CHANCE", "Sensitivity 0.400 and specificity 0.600");
        faulty(",,10,4,10,6", "NO_BETTER_THAN_CHANCE", "are not above 1");
        faulty("1.2,0.6,,,,", "INVALID_VALUE", "a number from 0 to 1");
        faulty(",,0,0,10,6", "INVALID_VALUE", "a whole number from 1");
    }

    @Test
    void whatASetNamesHasToBeThere() {
        String good = TruthFixture.row(truths.code(), LEVEL, "0.9,1,,,,");
        problem(good.replace("T_SCREEN T_CONFIRM", "T_SCREEN NO_SUCH"), "codes of the list test-methods");
        problem(good.replace("WHITE_TAILED_DEER", "UNICORN"), "codes of the list species");
        problem(good.replace(TruthFixture.NODE, "HOOF"), "MEDIAL_RETROPHARYNGEAL_NODE");
        problem(good.replace(LEVEL, "USUAL"), "one of ANIMAL_LEVEL, RELATIVE");
        problem(good.replace(",READ,", ",HEARD,"), "one of READ, FROM_MEMORY, INVENTED");
        problem(good.replace("\"Nobody 2026, table 1\"", ""), "'source' is empty");
    }

    @Test
    void theDatabaseHoldsTheSameAndKeepsTheHistory() {
        for (String figures : List.of(
                "null, null, null, null, null, null",
                "0.9, null, null, null, null, null",
                "0.9, 0.9, 10, 9, 10, 9",
                "null, null, 10, null, 10, 9",
                "null, null, 10, 11, 10, 9")) {
            Exception fault = assertThrows(Exception.class, () -> insert(figures));
            assertTrue(all(fault).contains("test_performance_fractions_or_counts"), figures + ": " + all(fault));
        }
        String code = truths.stated("0.9", "1");
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery("update test_performance set name = 'Other' where code = :code")
                        .setParameter("code", code)
                        .executeUpdate());
        assertEquals(
                1,
                entities.createNativeQuery(
                                "select old->>'name' from history where table_name = 'test_performance' and key = :code")
                        .setParameter("code", code)
                        .getResultList()
                        .size());
    }

    private void insert(String figures) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "insert into test_performance (code, name, disease, species, methods,"
                                        + " tissues, kind, reference, sensitivity, specificity, infected, detected_of_infected,"
                                        + " uninfected, not_detected_of_uninfected, population, source, source_seen, as_of)"
                                        + " values ('" + truths.code()
                                        + "', 'x', 'CWD', array['x'], array['x'], array['x'],"
                                        + " 'RELATIVE', 'x', " + figures + ", 'x', 'x', 'READ', date '2026-01-01')")
                        .executeUpdate());
    }

    private static String all(Throwable fault) {
        StringBuilder text = new StringBuilder();
        for (Throwable at = fault; at != null; at = at.getCause()) {
            text.append(at.getMessage()).append('\n');
        }
        return text.toString();
    }

    private void faulty(String figures, String rule, String words) {
        post(TruthFixture.row(truths.code(), LEVEL, figures))
                .statusCode(409)
                .body("errors[0].rule", equalTo(rule))
                .body("errors[0].message", containsString(words));
    }

    private void problem(String row, String words) {
        post(row).statusCode(409).body("errors[0].message", containsString(words));
    }

    private ValidatableResponse post(String row) {
        return classes.post("test-performance", TruthFixture.HEAD + row);
    }
}
