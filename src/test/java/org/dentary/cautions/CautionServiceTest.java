package org.dentary.cautions;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.qute.Engine;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.dentary.SeasonFixture;
import org.dentary.platform.DatabaseTestResource;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.platform.problem.NotFound;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(DatabaseTestResource.class)
class CautionServiceTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    @Inject
    SeasonFixture season;

    @Inject
    CautionService cautions;

    @Inject
    EntityManager entities;

    @Inject
    Engine templates;

    private final String code = "C_"
            + UUID.randomUUID()
                    .toString()
                    .substring(0, 8)
                    .toUpperCase(Locale.ROOT)
                    .replace('-', '_');

    @BeforeEach
    void setUp() {
        season.ensure();
    }

    @Test
    void theNewestVersionIsInForce() {
        write("9", null, "PACKING", "old");
        write("10", null, "PACKING REPORT", "new");
        assertEquals(List.of("new"), texts(Hazard.PACKING));
        assertEquals(List.of("new"), texts(Hazard.REPORT));
        assertEquals(List.of(), texts(Hazard.CONTACT));
    }

    @Test
    void aDiseasesOwnCautionIsShownOnlyOnceReviewed() {
        write("1", SeasonFixture.DISEASE, "RESULT", "about it");
        assertEquals(List.of(), texts(Hazard.RESULT));
        assertTrue(cautions.unreviewed().stream().anyMatch(c -> c.code().equals(code)));
        cautions.review(code, "1", "T_COORDINATOR", TODAY, TODAY.plusYears(1));
        assertEquals(List.of("about it"), texts(Hazard.RESULT));
        assertTrue(cautions.at(Hazard.RESULT, SeasonFixture.DISEASE).stream()
                .anyMatch(c -> c.code().equals(code)));
        assertFalse(cautions.at(Hazard.RESULT, "ANOTHER").stream()
                .anyMatch(c -> c.code().equals(code)));
        assertFalse(cautions.unreviewed().stream().anyMatch(c -> c.code().equals(code)));
    }

    @Test
    void aReviewLooksForwardAndNamesWhatExists() {
        write("1", null, "PACKING", "text");
        assertThrows(InvalidInput.class, () -> cautions.review(code, "1", "T_COORDINATOR", TODAY, TODAY));
        assertThrows(NotFound.class, () -> cautions.review(code, "2", "T_COORDINATOR", TODAY, TODAY.plusDays(1)));
    }

    @Test
    void aReviewThatIsPastItsDayIsOverdue() {
        write("1", null, "PACKING", "text");
        cautions.review(code, "1", "T_COORDINATOR", LocalDate.of(2001, 1, 1), LocalDate.of(2002, 1, 1));
        assertTrue(cautions.at(Hazard.PACKING).stream()
                .filter(c -> c.code().equals(code))
                .findFirst()
                .orElseThrow()
                .overdue());
    }

    @Test
    void theTagShowsTextAuthorityAndThatNobodyReviewedIt() {
        write("1", null, "LABELING", "Mind the <label>.");
        String html = templates.parse("{#cautions hazard=\"LABELING\" /}").render();
        assertTrue(html.contains("Mind the"), html);
        assertTrue(html.contains("Who decides: Someone; not reviewed locally"), html);
        cautions.review(code, "1", "T_COORDINATOR", TODAY, LocalDate.of(2999, 1, 1));
        html = templates.parse("{#cautions hazard=\"LABELING\" /}").render();
        assertTrue(html.contains("Who decides: Someone."), html);
    }

    @Test
    void theListIsForEveryAccountAndCanBeNarrowed() {
        write("1", null, "CONTACT", "Names are confidential.");
        given().auth()
                .preemptive()
                .basic("notifier", SeasonFixture.PASSWORD)
                .get("/api/v1/cautions")
                .then()
                .statusCode(200)
                .body("items[0].code", notNullValue())
                .body("items[0].name", notNullValue())
                .body("items.find { it.code == '" + code + "' }.reviewed", equalTo(false))
                .body("items.find { it.code == '" + code + "' }.hazards", equalTo(List.of("CONTACT")));
        given().auth()
                .preemptive()
                .basic("notifier", SeasonFixture.PASSWORD)
                .get("/api/v1/cautions?hazard=FORMALIN")
                .then()
                .statusCode(200)
                .body("items.findAll { !it.hazards.contains('FORMALIN') }", equalTo(List.of()));
        given().get("/api/v1/cautions").then().statusCode(401);
    }

    @Test
    void theFirstCautionsCoverEveryHazardAndNameWhoDecides() {
        for (Hazard hazard : Hazard.values()) {
            assertFalse(cautions.at(hazard).isEmpty(), hazard.name());
        }
        for (CautionView caution : cautions.inForce()) {
            assertFalse(caution.authority().isBlank(), caution.code());
        }
    }

    @Test
    void firstStepsOpenWithoutAnAccountAndMayBeKept() {
        given().accept("text/html")
                .get("/first-steps")
                .then()
                .statusCode(200)
                .header("Cache-Control", containsString("stale-if-error"))
                .body(containsString("Cut or needle stick"))
                .body(containsString("Splash in eye"))
                .body(containsString("Formalin on skin"))
                .body(containsString("Gas from bleach"))
                .body(containsString("Vehicle accident"))
                .body(containsString("Poison center"))
                .body(containsString("Supervisor"));
    }

    private List<String> texts(Hazard hazard) {
        return cautions.at(hazard).stream()
                .filter(c -> c.code().equals(code))
                .map(CautionView::text)
                .toList();
    }

    private void write(String version, String disease, String hazard, String text) {
        QuarkusTransaction.requiringNew()
                .run(() -> entities.createNativeQuery(
                                "insert into caution (code, version, disease, hazard, text, authority, position)"
                                        + " values (:code, :version, :disease, :hazard, :text, 'Someone', 999)")
                        .setParameter("code", code)
                        .setParameter("version", version)
                        .setParameter("disease", disease)
                        .setParameter("hazard", hazard)
                        .setParameter("text", text)
                        .executeUpdate());
    }
}
